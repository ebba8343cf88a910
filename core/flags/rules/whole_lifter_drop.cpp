// Most lines of the lifter fall together, likely for one reason.
#include "core/flags/rule_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct WholeLifterText {
    Q_DECLARE_TR_FUNCTIONS(WholeLifterText)
};

class WholeLifterDropRule final : public FlagRule {
public:
    QString id() const override { return QStringLiteral("whole_lifter_drop"); }
    QString title() const override { return WholeLifterText::tr("Falling together"); }
    QString explanation() const override
    {
        return WholeLifterText::tr(
            "Most lifts fall at once, and one reason behind all of them is likelier than one for each. Sleep, food, "
            "illness and too much work are the usual questions. The program can't see the reason; it takes the place "
            "of "
            "the single flags of the lifts it covers.");
    }
    Concern concern() const override { return Concern::Falling; }
    std::vector<RuleParameter> parameters() const override
    {
        return {
            {QStringLiteral("percent"), WholeLifterText::tr("Speaks when"), WholeLifterText::tr("% sure of one reason"),
             80, 50, 99,
             WholeLifterText::tr(
                 "Our convention, the same as the reading's; beforehand one reason is taken to be at work in one week "
                 "of fifty.")},
            {QStringLiteral("percent_to_high"), WholeLifterText::tr("Is urgent from a fall of"),
             WholeLifterText::tr("% a week"), 0.6, 0.1, 10,
             WholeLifterText::tr("Our convention, the same as for a single lift that is slipping.")},
            worseParameter(WholeLifterText::tr("% a week"), 0.4, 0.1, 5)};
    }
    void check(const ReviewSnapshot& snapshot, const RuleParameters& limits, std::vector<Flag>& flags) const override
    {
        Flag flag{id(),
                  {},
                  Severity::Medium,
                  {},
                  {},
                  {QStringLiteral("contact_lifter"), QStringLiteral("deload"), QStringLiteral("drop_set"),
                   QStringLiteral("hold_load"), QStringLiteral("refer_out")}};
        double rates = 0;
        for (const SnapshotLine& line : snapshot.lines) {
            if (!line.reading.commonFall || !line.reading.rate) continue;
            const double rate = 100 * line.reading.rate->perWeek;
            rates += rate;
            flag.evidence.push_back({line.lastTrained.value_or(snapshot.asOf),
                                     WholeLifterText::tr("change in % a week: %1").arg(lineName(*line.record)), rate});
        }
        if (flag.evidence.empty()) return;
        const double fall = -rates / static_cast<double>(flag.evidence.size());
        flag.measure = measured(fall, limits);
        if (fall >= limits.value(u"percent_to_high")) flag.severity = Severity::High;
        flag.sentence = sentenceFor(static_cast<int>(flag.evidence.size()), fall, snapshot.wording);
        std::ranges::stable_sort(flag.evidence, {}, &Evidence::date);
        flags.push_back(std::move(flag));
    }

private:
    static QString sentenceFor(int lines, double fall, const Wording& wording)
    {
        return WholeLifterText::tr(
                   "%n lift(s) are falling together, by about %1 % a week, which points to one reason behind all of "
                   "them: "
                   "sleep, food, illness, stress or too much work.",
                   nullptr, lines)
                   .arg(wording.number(fall))
               + u' '
               + WholeLifterText::tr(
                   "If you are ill or in pain, see a licensed professional before you train hard again.");
    }
};

}  // namespace

const FlagRule& wholeLifterDropRule();
const FlagRule& wholeLifterDropRule()
{
    static const WholeLifterDropRule rule;
    return rule;
}

}  // namespace steelyard
