// How a lift goes on from one session to the next, as an object that describes itself. One file a rule in progressions/, one
// line in progression_registry.cpp, one test.
//
//   const ProgressionRule& rule = progressionFor(slot.progression);
//   const auto step = rule.next(input, RuleParameters(rule, settings));
//   step->kind == StepKind::AddLoad;   step->targetReps == {8, 8, 8}
//
// A rule looks at comparable exposures of one line, oldest first, and at counted repetitions alone. A set that ended in a failed
// repetition has 0 in reserve. Where a forecast can be asked (`likely`), targets are what it says is reached so often as the
// coach wants; where it can't, the record alone decides.
// Invariants: next() is pure; a load comes from the record or from the stepper, so it can be set; there are as many targets as
// planned sets, each at least 1. Failures: nullopt when the last exposure has no sets.
#pragma once

#include "core/domain/adjustable_rule.h"
#include "core/planning/loadable.h"

#include <functional>

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

// The load that can be set nearest to one that is `wish` harder or easier, and at least the next one; nullopt at the end of
// what there is. A wish of nothing is the smallest step.
using LoadStepper = std::function<std::optional<Load>(const Load& current, LoadChange change, Mass wish)>;

struct LikelySet {
    int reps = 1;       // counted repetitions that are reached about as often as is wanted
    double chance = 1;  // of at least so many
    friend bool operator==(const LikelySet&, const LikelySet&) = default;
};
// Of the n-th working set (from 1) at that load and the planned reserve; nullopt where nothing would be moved.
using LikelySets = std::function<std::optional<LikelySet>(const Load& load, int number)>;

struct ProgressionInput {
    std::vector<DoneExposure> exposures;  // the last two are enough
    RepBand band;
    std::optional<double> plannedRir;
    std::optional<int> plannedSets;  // absent: as many as were done
    LoadStepper stepper;
    LikelySets likely = {};    // empty: nothing is forecast
    bool moreTrained = false;  // larger, stronger or more trained, as the published steps tell lifters apart
    bool lowerBody = false;
};

struct NextStep {
    Load load;
    std::vector<int> targetReps;  // by set
    StepKind kind = StepKind::Hold;
    QString why;  // for people
};

// Where a slot stands in its block, for rules that plan the reserve.
struct PlannedPlace {
    std::optional<double> reserve;  // as the slot says
    bool differs = false;           // the block's weeks already say different reserves for this line
    int weeksToGo = 0;              // ordinary weeks of the block after this one
};

class ProgressionRule : public AdjustableRule {
public:
    [[nodiscard]] virtual QString title() const = 0;        // for people, two to four words
    [[nodiscard]] virtual QString description() const = 0;  // for people: when what goes up
    // The reserve to plan; absent: none is.
    [[nodiscard]] virtual std::optional<double> reserve(const PlannedPlace& place, const RuleParameters&) const
    {
        return place.reserve;
    }
    [[nodiscard]] virtual std::optional<NextStep> next(const ProgressionInput&, const RuleParameters&) const = 0;
};

}  // namespace steelyard
