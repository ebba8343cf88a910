// Load first: a step more as soon as the band's low end stands at it. Without a forecast the 2-for-2 rule decides.
#include "core/planning/progression_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct LoadByStepText {
    Q_DECLARE_TR_FUNCTIONS(LoadByStepText)
};

// Repetitions of the last session, at least the goal.
std::vector<int> targetsOf(const LastDone& last, int goal)
{
    std::vector<int> targets;
    for (const DoneSet& set : last.sets) targets.push_back(std::max(set.countedReps, goal));
    return fittedTo(std::move(targets), last.planned);
}

NextStep byTwoForTwo(const ProgressionInput& input, const LastDone& last, const std::optional<Load>& harder)
{
    const int goal = input.band.low;
    const std::size_t count = input.exposures.size();
    if (count >= 2 && harder && twoForTwo(input.exposures[count - 2], input.exposures[count - 1], goal))
        return {
            *harder, std::vector<int>(last.planned, goal), StepKind::AddLoad,
            LoadByStepText::tr("Two repetitions and more over %1 in the last set, twice running: take the next load.")
                .arg(goal)};
    if (last.underTwice)
        if (const auto easier = input.stepper(last.load, LoadChange::Easier, Mass()))
            return {*easier, std::vector<int>(last.planned, goal), StepKind::Reduce,
                    LoadByStepText::tr("Most sets stayed under %n counted repetition(s) twice running: one step down.",
                                       nullptr, goal)};
    return {last.load, targetsOf(last, goal), StepKind::Hold,
            LoadByStepText::tr("Same load until the last set is two repetitions over %n in two sessions running.",
                               nullptr, goal)};
}

class LoadByStep final : public ProgressionRule {
public:
    QString id() const override { return QStringLiteral("load_by_step"); }
    QString title() const override { return LoadByStepText::tr("Load by steps"); }
    QString description() const override
    {
        return LoadByStepText::tr(
            "The load goes up by a step as soon as the low end of the band is likely enough at it. While nothing can "
            "be forecast, it goes up when the last set was two repetitions over the low end in two sessions running.");
    }
    std::vector<RuleParameter> parameters() const override { return stepParameters(); }
    std::optional<NextStep> next(const ProgressionInput& input, const RuleParameters& numbers) const override
    {
        const auto asked = loadQuestion(input, numbers);
        if (!asked) return std::nullopt;
        const auto& [last, harder, now] = *asked;
        if (!now) return byTwoForTwo(input, last, harder);
        if (harder && likelyMiddle(input, *harder, last.planned).value_or(0) >= input.band.low)
            return harderByForecast(input, last, *harder);
        if (*now < input.band.low)
            if (auto easier = easierByForecast(input, last, input.band.low)) return easier;
        return sameLoadByForecast(input, last);
    }
};

}  // namespace

const ProgressionRule& loadByStepRule();
const ProgressionRule& loadByStepRule()
{
    static const LoadByStep rule;
    return rule;
}

}  // namespace steelyard
