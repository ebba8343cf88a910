// Effort by plan: the reserve falls from week to week to what the slot says, repetitions stay near the middle of the band, and
// the load follows what the forecast allows at that reserve.
#include "core/planning/progression_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct EffortRampText {
    Q_DECLARE_TR_FUNCTIONS(EffortRampText)
};

constexpr double kReserveAtTheEnd = 1;  // where the slot says none

// One repetition less in reserve is one more done.
NextStep byReserve(const ProgressionInput& input, const LastDone& last)
{
    std::vector<int> targets;
    for (const DoneSet& set : last.sets) {
        const auto reserve = set.failed ? std::optional(0.0) : set.repsInReserve;
        const double spare = reserve && input.plannedRir ? *reserve - *input.plannedRir : 0;
        targets.push_back(std::max(1, set.countedReps + static_cast<int>(std::floor(spare))));
    }
    return {last.load, fittedTo(std::move(targets), last.planned), StepKind::Hold,
            EffortRampText::tr("Same load: the repetitions follow from the planned reserve.")};
}

class EffortRamp final : public ProgressionRule {
public:
    QString id() const override { return QStringLiteral("effort_ramp"); }
    QString title() const override { return EffortRampText::tr("Effort by week"); }
    QString description() const override
    {
        return EffortRampText::tr(
            "The planned reserve falls from week to week and ends the block where the slot says. The load follows what "
            "is "
            "likely at that reserve, with repetitions near the middle of the band.");
    }
    std::vector<RuleParameter> parameters() const override
    {
        std::vector<RuleParameter> all{
            {QStringLiteral("fall"), EffortRampText::tr("Reserve falls by"), EffortRampText::tr("repetitions a week"),
             0.5, 0, 2, EffortRampText::tr("Our convention.")},
            {QStringLiteral("most"), EffortRampText::tr("Begins with at most"), EffortRampText::tr("in reserve"), 4, 1,
             5,
             EffortRampText::tr(
                 "With more than four left lifters misjudge what is left by two and more (Hackett et al. 2017).")}};
        std::ranges::copy(stepParameters(), std::back_inserter(all));
        return all;
    }
    // In halves, as it is written on sheets.
    std::optional<double> reserve(const PlannedPlace& place, const RuleParameters& numbers) const override
    {
        if (place.differs && place.reserve) return place.reserve;
        const double end = place.reserve.value_or(kReserveAtTheEnd);
        const double most = std::max(end, numbers.value(u"most"));
        const double wanted = std::min(most, end + numbers.value(u"fall") * place.weeksToGo);
        return std::round(2 * wanted) / 2;
    }
    std::optional<NextStep> next(const ProgressionInput& input, const RuleParameters& numbers) const override
    {
        const auto last = lastDone(input);
        if (!last) return std::nullopt;
        const auto now = likelyFirst(input, last->load);
        if (!now) return byReserve(input, *last);
        if (*now < input.band.low)
            if (auto easier = easierByForecast(input, *last, input.band.low)) return easier;
        const auto harder = input.stepper(last->load, LoadChange::Harder, wishedStep(input, numbers));
        const int goal = (input.band.low + input.band.high) / 2;
        if (harder && likelyMiddle(input, *harder, last->planned).value_or(0) >= goal)
            return harderByForecast(input, *last, *harder);
        return sameLoadByForecast(input, *last);
    }
};

}  // namespace

const ProgressionRule& effortRampRule();
const ProgressionRule& effortRampRule()
{
    static const EffortRamp rule;
    return rule;
}

}  // namespace steelyard
