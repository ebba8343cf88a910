// No rise for weeks on a line whose record can be read.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct StalledText {
    Q_DECLARE_TR_FUNCTIONS(StalledText)
};

class StalledRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("stalled"); }
    QString title() const override { return StalledText::tr("Stalled"); }
    QString explanation() const override
    {
        return StalledText::tr(
            "The lift was trained lately, its record can be compared, and yet there is no rise beyond "
            "the noise. No publication settles when that is a stall; the reading's thresholds are shown "
            "with it.");
    }
    Concern concern() const override { return Concern::NotMoving; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("caution"), StalledText::tr("How soon"), StalledText::tr("0 sooner, 1 usual, 2 surer"), 1,
             0, 2,
             StalledText::tr(
                 "Our convention: \"usual\" takes a false alarm to cost twice what a week of waiting does, about 0.6 "
                 "false alarms a lift and year on simulated lifters; \"sooner\" brings about one, \"surer\" about "
                 "0.4.")},
            {QStringLiteral("weeks_to_high"), StalledText::tr("Is urgent after"), StalledText::tr("weeks"), 16, 6, 52,
             StalledText::tr("Our convention: two planned blocks of eight weeks without an improvement.")},
            worseParameter(StalledText::tr("weeks"), 8, 1, 52)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            const LineReading& reading = line.reading;
            if (reading.commonFall) continue;  // whole_lifter_drop speaks for it
            if (!line.recent || reading.verdict != Verdict::Stalled || !reading.since) continue;
            const qint64 weeks = reading.since->daysTo(snapshot.asOf) / 7;
            flags.push_back(
                {id(),
                 line.record->id,
                 weeks >= limits.whole(u"weeks_to_high") ? Severity::High : Severity::Medium,
                 StalledText::tr("%1: no clear improvement for %n week(s).", nullptr, static_cast<int>(weeks))
                     .arg(lineName(*line.record)),
                 capacityEvidence(snapshot, reading),
                 {QStringLiteral("change_band"), QStringLiteral("deload"), QStringLiteral("change_variant"),
                  QStringLiteral("change_grip"), QStringLiteral("start_trial"), QStringLiteral("drop_set")},
                 measured(static_cast<double>(weeks), limits)});
        }
    }
};

}  // namespace

const FlagRule& stalledRule();
const FlagRule& stalledRule()
{
    static const StalledRule rule;
    return rule;
}

}  // namespace steelyard
