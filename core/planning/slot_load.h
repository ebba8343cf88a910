// The load and the repetitions of a slot on a day to come, with how likely they are and why.
//
//   SlotLoads loads(input);
//   const SlotLoad planned = loads.plan({slot, day, WeekKind::Normal, block.easing, place, {}});
//   planned.load == 42.5 kg;   planned.targetReps == {9, 9, 8};   planned.chance == 0.74
//   planned.why  == "Same load; likely enough in the first set: 9 counted repetitions, more than last time. About 74 of ..."
//
// The slot's progression rule decides between one more repetition and the next load, by what the forecast makes of either. A
// target is the whole number that is reached about as often as slotLoadNumbers() says: three times in four, unless the coach
// wants otherwise. The reserve is taken as this lifter reports it when so much is planned (reserve_habit.h). Loads can be set in this gym. A rise is at most a tenth of what is moved, unless the smallest step is larger,
// which `why` says. A locked slot keeps its load and gets targets and chances for it.
// A deload week takes the block's share of the last working load; its sets and reserve stand in the slot. The share and the rest
// of an easing: volume and load down, reserve up, as 246 competing lifters report it (Rogerson et al. 2024, Sports Med Open
// 10:26) and a panel of coaches agrees (Bell et al. 2023, Sports Med Open 9:87); by how much is common practice.
// A line without a record starts from a related one (lifter_outlook.h), else with a set to build up to.
//
// Units: kilograms inside; counted repetitions. Pure. Failures: none; what can't be said is absent, and `why` says so.
#pragma once

#include "core/base/wording.h"
#include "core/planning/lifter_outlook.h"
#include "core/planning/progression_registry.h"

namespace steelyard {

// The coach's number for all slots: how often a target is to be reached.
[[nodiscard]] const AdjustableRule& slotLoadNumbers();

struct PlanningInput {
    const AthleteLog& log;
    const Library& library;
    const Gym* gym = nullptr;  // null: usual steps
    const LifterTracker& tracker;
    QDate today;  // up to which the tracker has gone
    RuleSettings settings = {};
    Wording wording = {};
};

struct SlotOnDay {
    const Slot& slot;
    QDate day;
    WeekKind week = WeekKind::Normal;
    Easing easing = {};
    PlannedPlace place = {};
    std::span<const DoneExposure> before = {};  // planned between today and that day, as if it were done
};

struct SlotLoad {
    LoadBasis basis = LoadBasis::Nothing;
    StepKind kind = StepKind::Hold;
    std::optional<Load> load;             // absent: build up to it
    std::vector<int> targetReps;          // by set; empty: anywhere in the band
    std::optional<double> reserve;        // planned
    std::optional<double> chance;         // that the first set reaches its target
    std::optional<RepInterval> within80;  // counted repetitions of the first set
    QString why;                          // for people
    friend bool operator==(const SlotLoad&, const SlotLoad&) = default;
};

class SlotLoads {
public:
    explicit SlotLoads(const PlanningInput& input);

    [[nodiscard]] SlotLoad plan(const SlotOnDay& asked);
    // The same at the load that stands in the slot, as if the coach had locked it.
    [[nodiscard]] SlotLoad atPlannedLoad(const SlotOnDay& asked);

private:
    [[nodiscard]] ProgressionInput progressionInput(const SlotOnDay&, const Variant&, const LineBasis&,
                                                    std::optional<double> reserve) const;
    [[nodiscard]] std::vector<DoneExposure> exposuresBefore(const SlotOnDay&, const LineBasis&);
    [[nodiscard]] LikelySets likelySets(const SlotOnDay&, const LineBasis&, std::optional<double> reserve) const;
    void planStart(SlotLoad&, const ProgressionInput&, const Variant&, const LineBasis&) const;
    void planDeload(SlotLoad&, const ProgressionInput&, const SlotOnDay&, const Variant&) const;
    void planStep(SlotLoad&, const ProgressionInput&, const ProgressionRule&, const Variant&, double bodyKg) const;
    void keepLoad(SlotLoad&, const ProgressionInput&, const SlotOnDay&) const;
    [[nodiscard]] SlotLoad planAt(const SlotOnDay&, bool keepsLoad);
    // As the lifter will report what is planned.
    [[nodiscard]] PlannedSet setOn(QDate day, std::optional<double> reserve, int number) const;
    void addChances(SlotLoad&, const SlotOnDay&, const LineBasis&) const;

    PlanningInput m_input;
    LoadFinder m_loads;
    LifterOutlook m_lifter;
    double m_wanted;
    double m_habit;                                            // reported above the planned reserve
    std::map<Id<LiftLine>, std::vector<DoneExposure>> m_done;  // the last two of each line
};

}  // namespace steelyard
