// What several progression rules share: what the last exposure showed, targets by set, and the size of a step of load.
#pragma once

#include "core/planning/load_steps.h"

namespace steelyard {

// The last exposure at its working load.
struct LastDone {
    Load load;
    DoneExposure sets;        // at that load, in order; at least one
    std::size_t planned = 1;  // sets to plan
    bool underTwice = false;  // most sets under the band's low end, twice running at this load
    bool bandFull = false;    // every planned set reached the band's top with the planned reserve, where that is known
};
[[nodiscard]] std::optional<LastDone> lastDone(const ProgressionInput& input);
// 0 when a repetition failed, else as reported; whether it is at least the planned one, or can't be told.
[[nodiscard]] bool reserveKept(const DoneSet& set, const ProgressionInput& input);
// Targets for `count` sets: sets beyond the given ones take the last one's.
[[nodiscard]] std::vector<int> fittedTo(std::vector<int> targets, std::size_t count);

// The step's load in kilograms that the coach wishes for, by the published table; shared parameters of the rules that add load.
[[nodiscard]] std::vector<RuleParameter> stepParameters();
[[nodiscard]] Mass wishedStep(const ProgressionInput& input, const RuleParameters& numbers);

// What the forecast says of a load: asked of the first set, and of the middle one when a load is to fit the whole exercise.
// Absent where nothing is forecast.
[[nodiscard]] std::optional<int> likelyFirst(const ProgressionInput& input, const Load& load);
[[nodiscard]] std::optional<int> likelyMiddle(const ProgressionInput& input, const Load& load, std::size_t planned);
// What a rule that adds load weighs: the last exposure, the next load by the wished step, and what is likely at the present one.
struct LoadQuestion {
    LastDone last;
    std::optional<Load> harder;  // absent: nothing harder can be set
    std::optional<int> now;      // counted repetitions of the first set; absent: nothing is forecast
};
[[nodiscard]] std::optional<LoadQuestion> loadQuestion(const ProgressionInput& input, const RuleParameters& numbers);
// By set. Needs a forecast.
[[nodiscard]] std::vector<int> likelyTargets(const ProgressionInput& input, const Load& load, std::size_t planned);

// The steps of a forecast, worded alike by every rule.
[[nodiscard]] NextStep sameLoadByForecast(const ProgressionInput& input, const LastDone& last);
[[nodiscard]] NextStep harderByForecast(const ProgressionInput& input, const LastDone& last, const Load& harder);
// The nearest lighter load at which `goal` repetitions are likely; nullopt: none is, or nothing lighter can be set.
[[nodiscard]] std::optional<NextStep> easierByForecast(const ProgressionInput& input, const LastDone& last, int goal);

}  // namespace steelyard
