// Too many repetitions off standard for the numbers to be compared.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct MixedRecordText {
    Q_DECLARE_TR_FUNCTIONS(MixedRecordText)
};

QString offWord(Mark mark)
{
    switch (mark) {
    case Mark::ShortBottom:
        return MixedRecordText::tr("short at the bottom");
    case Mark::ShortTop:
        return MixedRecordText::tr("short at the top");
    case Mark::Swing:
        return MixedRecordText::tr("body swing");
    case Mark::Dropped:
        return MixedRecordText::tr("dropped lowering");
    case Mark::Lean:
        return MixedRecordText::tr("lean changed");
    case Mark::Assisted:
        return MixedRecordText::tr("assisted");
    }
    return {};
}

// What was marked most often in the last exposures; empty when nothing was.
QString commonestMark(const SnapshotLine& line, QDate from)
{
    std::array<int, kMarkCount> counts{};
    for (const Exposure& exposure : line.record->exposures)
        for (const LoggedSet& logged : exposure.sets)
            if (exposure.date >= from && isWorkingSet(logged.set))
                for (const auto& row : EnumText<Mark>::table)
                    counts[static_cast<std::size_t>(row.value)] += logged.set.marks.of(row.value);
    const auto most = std::ranges::max_element(counts);
    return *most > 0 ? offWord(static_cast<Mark>(most - counts.begin())) : QString();
}

class MixedRecordRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("mixed_record"); }
    QString title() const override { return MixedRecordText::tr("Mixed record"); }
    QString explanation() const override
    {
        return MixedRecordText::tr(
            "So many of the watched repetitions were off standard that more load or more repetitions "
            "need not mean more strength. Agree on the standard again before reading a trend.");
    }
    Concern concern() const override { return Concern::Unreadable; }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("percent_to_high"), MixedRecordText::tr("Is urgent from"),
                 MixedRecordText::tr("% off standard"), 60, 34, 100,
                 MixedRecordText::tr("Our convention: well over half of the repetitions.")},
                worseParameter(MixedRecordText::tr("% off standard"), 20, 5, 60)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines)
            if (line.recent && line.reading.verdict == Verdict::CantTell && line.reading.reason == u"mixed_record")
                flags.push_back(flagFor(line, limits));
    }

private:
    Flag flagFor(const SnapshotLine& line, const RuleParameters& limits) const
    {
        Flag flag{id(),
                  line.record->id,
                  Severity::Medium,
                  {},
                  {},
                  {QStringLiteral("retest_standard"), QStringLiteral("hold_load"), QStringLiteral("film_check"),
                   QStringLiteral("change_band")}};
        int off = 0;
        int watched = 0;
        for (const CountedExposure* exposure : line.lastWorking(4)) {
            const auto share = exposure->offShare();
            if (!share) continue;
            off += exposure->point.offReps;
            watched += exposure->watchedReps;
            flag.evidence.push_back(
                {exposure->point.date, MixedRecordText::tr("% of watched repetitions off standard"), 100 * *share});
        }
        const double percent = watched > 0 ? 100.0 * off / watched : 0;
        if (watched > 0 && percent >= limits.value(u"percent_to_high")) flag.severity = Severity::High;
        flag.measure = measured(percent, limits);
        flag.sentence = MixedRecordText::tr(
                            "%1: %2 of the last %3 watched repetitions were off standard, so the numbers "
                            "can't be compared.")
                            .arg(lineName(*line.record), QString::number(off), QString::number(watched));
        const QString mark = flag.evidence.empty() ? QString() : commonestMark(line, flag.evidence.front().date);
        if (!mark.isEmpty()) flag.sentence += u' ' + MixedRecordText::tr("Most often: %1.").arg(mark);
        return flag;
    }
};

}  // namespace

const FlagRule& mixedRecordRule();
const FlagRule& mixedRecordRule()
{
    static const MixedRecordRule rule;
    return rule;
}

}  // namespace steelyard
