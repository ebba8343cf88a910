#include "core/flags/rule_support.h"

#include "core/base/decimal.h"

#include <algorithm>

namespace steelyard {

QString plainNumber(double value, int decimals)
{
    return Decimal::nearest(value, decimals).trimmed().toString();
}

QString plainDay(QDate date)
{
    return date.toString(Qt::ISODate);
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
        if (!finding.flag.evidence.empty()) whole.evidence.push_back(finding.flag.evidence.back());
    }
    std::ranges::stable_sort(whole.evidence, {}, &Evidence::date);
    flags.push_back(std::move(whole));
}

}  // namespace steelyard
