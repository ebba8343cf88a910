#include "core/planning/progression_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct ProgressionSupportText {
    Q_DECLARE_TR_FUNCTIONS(ProgressionSupportText)
};

constexpr int kMostStepsDown = 60;

bool mostlyUnder(const DoneExposure& exposure, Mass mass, RepBand band)
{
    const DoneExposure sets = setsAt(exposure, mass);
    const auto under =
        std::count_if(sets.begin(), sets.end(), [&](const DoneSet& set) { return set.countedReps < band.low; });
    return 2 * static_cast<std::size_t>(under) > sets.size();
}

constexpr const char16_t* kStepNames[] = {u"step_upper", u"step_lower", u"step_upper_trained", u"step_lower_trained"};

QStringView stepName(bool moreTrained, bool lowerBody)
{
    return kStepNames[(moreTrained ? 2U : 0U) + (lowerBody ? 1U : 0U)];
}

QString stepLabel(const PublishedLoadStep& step)
{
    if (step.moreTrained)
        return step.lowerBody ? ProgressionSupportText::tr("Step of load, legs and hips, experienced")
                              : ProgressionSupportText::tr("Step of load, upper body, experienced");
    return step.lowerBody ? ProgressionSupportText::tr("Step of load, legs and hips, new to training")
                          : ProgressionSupportText::tr("Step of load, upper body, new to training");
}

}  // namespace

bool reserveKept(const DoneSet& set, const ProgressionInput& input)
{
    const auto reserve = set.failed ? std::optional(0.0) : set.repsInReserve;
    return !input.plannedRir || !reserve || *reserve >= *input.plannedRir;
}

std::vector<int> fittedTo(std::vector<int> targets, std::size_t count)
{
    const int last = targets.back();
    targets.resize(count, last);
    return targets;
}

std::optional<LastDone> lastDone(const ProgressionInput& input)
{
    const auto load = input.exposures.empty() ? std::nullopt : workingLoad(input.exposures.back());
    if (!load) return std::nullopt;
    LastDone last{*load, setsAt(input.exposures.back(), load->mass())};
    last.planned = input.plannedSets ? static_cast<std::size_t>(std::max(1, *input.plannedSets)) : last.sets.size();
    const std::size_t exposures = input.exposures.size();
    last.underTwice = exposures >= 2 && mostlyUnder(input.exposures[exposures - 1], load->mass(), input.band)
                      && mostlyUnder(input.exposures[exposures - 2], load->mass(), input.band);
    last.bandFull = last.sets.size() >= last.planned && std::ranges::all_of(last.sets, [&](const DoneSet& set) {
                        return set.countedReps >= input.band.high && reserveKept(set, input);
                    });
    return last;
}

std::vector<RuleParameter> stepParameters()
{
    constexpr int kStepDecimals = 2;  // the smallest pair of plates may make 1.25
    std::vector<RuleParameter> all;
    all.reserve(kPublishedLoadSteps.size());
    for (const PublishedLoadStep& step : kPublishedLoadSteps)
        all.push_back({stepName(step.moreTrained, step.lowerBody).toString(), stepLabel(step),
                       ProgressionSupportText::tr("kg"), step.leastKg, 0, 20,
                       ProgressionSupportText::tr("Handbook of the trade: the smaller of its steps, from memory. The "
                                                  "gym's nearest load is taken, never more than 10 % at once."),
                       kStepDecimals});
    return all;
}

Mass wishedStep(const ProgressionInput& input, const RuleParameters& numbers)
{
    const double kg = numbers.value(stepName(input.moreTrained, input.lowerBody));
    return massFromGrams(std::llround(kg * 1000));
}

std::optional<int> likelyFirst(const ProgressionInput& input, const Load& load)
{
    const auto likely = input.likely ? input.likely(load, 1) : std::nullopt;
    return likely ? std::optional(likely->reps) : std::nullopt;
}

std::optional<int> likelyMiddle(const ProgressionInput& input, const Load& load, std::size_t planned)
{
    const auto likely = input.likely ? input.likely(load, static_cast<int>(planned + 1) / 2) : std::nullopt;
    return likely ? std::optional(likely->reps) : std::nullopt;
}

std::vector<int> likelyTargets(const ProgressionInput& input, const Load& load, std::size_t planned)
{
    std::vector<int> targets;
    for (std::size_t set = 1; set <= planned; ++set) {
        const auto likely = input.likely(load, static_cast<int>(set));
        targets.push_back(std::max(1, likely ? likely->reps : 1));
    }
    return targets;
}

NextStep sameLoadByForecast(const ProgressionInput& input, const LastDone& last)
{
    NextStep step{last.load, likelyTargets(input, last.load, last.planned), StepKind::Hold, {}};
    const int first = step.targetReps.front();
    if (first > last.sets.front().countedReps) {
        step.kind = StepKind::AddReps;
        step.why = ProgressionSupportText::tr(
            "Same load; likely enough in the first set: %n counted repetition(s), more than last time.", nullptr,
            first);
    } else {
        step.why = ProgressionSupportText::tr("Same load; likely enough in the first set: %n counted repetition(s).",
                                              nullptr, first);
    }
    return step;
}

NextStep harderByForecast(const ProgressionInput& input, const LastDone& last, const Load& harder)
{
    NextStep step{harder, likelyTargets(input, harder, last.planned), StepKind::AddLoad, {}};
    step.why = ProgressionSupportText::tr(
        "Take the next load; likely enough there in the first set: %n counted repetition(s).", nullptr,
        step.targetReps.front());
    return step;
}

std::optional<NextStep> easierByForecast(const ProgressionInput& input, const LastDone& last, int goal)
{
    Load load = last.load;
    for (int down = 0; down < kMostStepsDown; ++down) {
        const auto easier = input.stepper(load, LoadChange::Easier, Mass());
        if (!easier) break;
        load = *easier;
        if (likelyMiddle(input, load, last.planned).value_or(0) >= goal) break;
    }
    if (load == last.load) return std::nullopt;
    return NextStep{load, likelyTargets(input, load, last.planned), StepKind::Reduce,
                    ProgressionSupportText::tr(
                        "The last load would likely bring fewer than %n counted repetition(s): a lighter one fits.",
                        nullptr, goal)};
}

std::optional<LoadQuestion> loadQuestion(const ProgressionInput& input, const RuleParameters& numbers)
{
    auto last = lastDone(input);
    if (!last) return std::nullopt;
    const auto harder = input.stepper(last->load, LoadChange::Harder, wishedStep(input, numbers));
    const auto now = likelyFirst(input, last->load);
    return LoadQuestion{*std::move(last), harder, now};
}

}  // namespace steelyard
