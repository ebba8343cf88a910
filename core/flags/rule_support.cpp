#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RuleSupportText {
    Q_DECLARE_TR_FUNCTIONS(RuleSupportText)
};

}  // namespace

std::vector<Evidence> capacityEvidence(const ReviewSnapshot& snapshot, const LineReading& reading)
{
    constexpr std::size_t kMostRows = 6;
    std::vector<Evidence> rows;
    for (const ReadingPoint& point : reading.points)
        if (point.capacityKg && !point.offStandard && (!reading.since || point.date >= *reading.since))
            rows.push_back({point.date, RuleSupportText::tr("capacity in %1").arg(snapshot.unitText()),
                            snapshot.massIn(*point.capacityKg)});
    if (rows.size() > kMostRows) rows.erase(rows.begin() + 1, rows.end() - (kMostRows - 1));
    return rows;
}

RuleParameter worseParameter(const QString& unit, double usual, double low, double high)
{
    return {QStringLiteral("worse"),
            RuleSupportText::tr("Dismissed, comes back when worse by"),
            unit,
            usual,
            low,
            high,
            RuleSupportText::tr("Our convention: a difference that the coach would want to hear of.")};
}

FlagMeasure measured(double value, const RuleParameters& limits)
{
    return {value, limits.value(u"worse")};
}

void addByLineOrLifter(std::vector<LineFinding> findings, const ReviewSnapshot& snapshot, const QString& sentence,
                       std::vector<Flag>& flags)
{
    const auto recent = static_cast<std::size_t>(std::ranges::count_if(snapshot.lines, &SnapshotLine::recent));
    if (findings.size() < 2 || findings.size() * 2 <= recent) {
        for (LineFinding& finding : findings) flags.push_back(std::move(finding.flag));
        return;
    }
    Flag whole = findings.front().flag;
    whole.line.reset();
    whole.sentence = sentence;
    whole.evidence.clear();
    for (const LineFinding& finding : findings) {
        whole.severity = std::max(whole.severity, finding.flag.severity);
        if (finding.flag.measure && (!whole.measure || finding.flag.measure->value > whole.measure->value))
            whole.measure = finding.flag.measure;
        if (!finding.flag.evidence.empty()) whole.evidence.push_back(finding.flag.evidence.back());
    }
    std::ranges::stable_sort(whole.evidence, {}, &Evidence::date);
    flags.push_back(std::move(whole));
}

}  // namespace steelyard
