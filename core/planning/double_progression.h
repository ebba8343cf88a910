// What to do next on one lift line: more repetitions until the band is full, then the next load.
//
//   const NextStep step = *doubleProgression({exposures, {8, 12}, 2.0, 3}, stepper);
//   step.kind == StepKind::AddLoad;   step.targetReps == {8, 8, 8};
//
// Double progression is a convention of the trade without one author. The rule here:
//   every planned set reached the band's top with the planned reserve (or the reserve is unknown)
//                                                        -> the next load, aim at the band's low end
//   most sets under the band's low end, twice running at this load -> offer one step down
//   otherwise                                            -> same load, one more repetition where reserve allows
// Only counted repetitions count. A set that ended in a failed repetition has 0 in reserve.
// Exposures are comparable ones of one line, oldest first. Failures: nullopt when the last has no sets.
#pragma once

#include "core/domain/logbook.h"
#include "core/planning/loadable.h"

#include <functional>
#include <vector>

namespace steelyard {

struct DoneSet {
    Load load;
    int countedReps = 0;
    bool failed = false;
    std::optional<double> repsInReserve;
    friend bool operator==(const DoneSet&, const DoneSet&) = default;
};
using DoneExposure = std::vector<DoneSet>;  // the working sets of one session, in order

enum class StepKind { AddReps, AddLoad, Hold, Reduce };

// Gives the next load that can be set, or nullopt at the end of what there is.
using LoadStepper = std::function<std::optional<Load>(const Load& current, LoadChange change)>;

struct ProgressionInput {
    std::vector<DoneExposure> exposures;
    RepBand band;
    std::optional<double> plannedRir;
    std::optional<int> plannedSets;  // absent: as many as were done
};

struct NextStep {
    Load load;
    std::vector<int> targetReps;  // by set
    StepKind kind = StepKind::Hold;
    QString why;  // for people
};

[[nodiscard]] std::optional<NextStep> doubleProgression(const ProgressionInput& input, const LoadStepper& stepper);

// The load that most of the sets used; of two equally used the heavier. nullopt for no sets.
[[nodiscard]] std::optional<Load> workingLoad(const DoneExposure& exposure);

// Two or more repetitions over the goal in the last set of two consecutive sessions at one load: add load.
// Source: the 2-for-2 rule of Graves & Baechle, as in Baechle & Earle, Essentials.
[[nodiscard]] bool twoForTwo(const DoneExposure& previous, const DoneExposure& latest, int goalReps);

// Repetitions that a rise from one load to another costs at an unchanged maximum; arithmetic on Epley's equation:
// (30 + reps) s / (1 + s) with s the rise as a fraction. 12 repetitions and 5 % cost 2.0.
[[nodiscard]] double repCostOfStep(Mass from, Mass to, double reps);

struct PublishedLoadStep {
    bool moreTrained;  // larger, stronger, more trained
    bool lowerBody;
    double leastKg, mostKg;
    double leastLb, mostLb;
    bool orMore;  // the source adds "or more"
};

// Source: NSCA Essentials of Strength Training and Conditioning, ch. 17, load increases of the 2-for-2 rule.
// The figures are from memory; only the upper-body rows were seen repeated elsewhere.
inline constexpr std::array<PublishedLoadStep, 4> kPublishedLoadSteps{{
    {false, false, 1, 2, 2.5, 5, false},
    {false, true, 2, 4, 5, 10, false},
    {true, false, 2, 4, 5, 10, true},
    {true, true, 4, 7, 10, 15, true},
}};

[[nodiscard]] const PublishedLoadStep& publishedLoadStep(bool moreTrained, bool lowerBody);

}  // namespace steelyard
