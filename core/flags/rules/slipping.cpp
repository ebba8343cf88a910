// Capacity on a line is credibly falling.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct SlippingText {
    Q_DECLARE_TR_FUNCTIONS(SlippingText)
};

class SlippingRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("slipping"); }
    QString title() const override { return SlippingText::tr("Slipping"); }
    QString explanation() const override
    {
        return SlippingText::tr(
            "Capacity on this lift is falling, and chance alone would hardly do that. Sleep, food, illness "
            "and too much work are the usual questions; pain is another.");
    }
    Concern concern() const override { return Concern::Falling; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("percent_to_high"), SlippingText::tr("Is urgent from a fall of"),
             SlippingText::tr("% a week"), 0.6, 0.1, 10,
             SlippingText::tr("Our convention: a fall that a month makes larger than what sessions differ by anyway.")},
            worseParameter(SlippingText::tr("% a week"), 0.4, 0.1, 5)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        for (const SnapshotLine& line : snapshot.lines) {
            const LineReading& reading = line.reading;
            if (reading.commonFall) continue;  // whole_lifter_drop speaks for it
            if (!line.recent || reading.verdict != Verdict::Slipping || !reading.rate) continue;
            const double fall = -100 * reading.rate->perWeek;
            flags.push_back({id(),
                             line.record->id,
                             fall >= limits.value(u"percent_to_high") ? Severity::High : Severity::Medium,
                             SlippingText::tr("%1: falling by about %2 % a week.")
                                 .arg(lineName(*line.record), snapshot.wording.number(fall)),
                             capacityEvidence(snapshot, reading),
                             {QStringLiteral("deload"), QStringLiteral("drop_set"), QStringLiteral("hold_load"),
                              QStringLiteral("contact_lifter"), QStringLiteral("retest_standard")},
                             measured(fall, limits)});
        }
    }
};

}  // namespace

const FlagRule& slippingRule();
const FlagRule& slippingRule()
{
    static const SlippingRule rule;
    return rule;
}

}  // namespace steelyard
