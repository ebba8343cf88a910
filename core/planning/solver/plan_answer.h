// What a plan problem is answered with: sets by candidate and day, what they cost by wish, what pins overstep, and which
// wishes stay open with the limits that stand in their way.
//
//   for (const PlanSlot& slot : answer.placed) ...            // slot.sets of slot.candidate on slot.day
//   answer.cost.of(PlanWish::Under);   answer.cost.total();
//   answer.unmet[0].inTheWay[0].limit == PlanLimit::Minutes    // plan_obstacles.h: without that limit the wish is met
//
// Invariants: no limit is overstepped that pins alone keep (plan_problem.h). Slots stand by day, then candidate.
// Units: points of cost; what a wish misses is in sets, for continuity 1.
#pragma once

#include "core/base/enum_text.h"
#include "core/planning/solver/plan_problem.h"

#include <numeric>

namespace steelyard {

enum class PlanWish { Under, Over, Crowding, Joints, Rating, Continuity, Thin, Exercises };
inline constexpr std::size_t kPlanWishes = 8;

enum class PlanLimit {
    Minutes,
    BackADay,
    BackBesideHigh,
    ExercisesADay,
    OneOfAGroup,  // two ways of one exercise not on one day
    DaysApart,    // of days that train a muscle as a target
    DaysAWeek,    // of one candidate
    SetsADay,     // of one candidate
    SparedJoint,
    Equipment,
    Pins,
    TrainingDays,  // one more day would do
    OtherWishes,   // met only at the cost of wishes that weigh more
    NoCandidate,   // nothing to choose from serves the wish
};

struct PlanSlot {
    int candidate = 0;
    int day = 0;
    int sets = 0;
    bool pinned = false;
    friend bool operator==(const PlanSlot&, const PlanSlot&) = default;
};

struct PlanCost {
    std::array<double, kPlanWishes> byWish{};
    [[nodiscard]] double of(PlanWish wish) const { return byWish[static_cast<std::size_t>(wish)]; }
    [[nodiscard]] double total() const { return std::accumulate(byWish.begin(), byWish.end(), 0.0); }
    friend bool operator==(const PlanCost&, const PlanCost&) = default;
};

// A limit that pinned slots overstep by themselves.
struct OversteppedLimit {
    PlanLimit limit = PlanLimit::Minutes;
    int day = 0;                   // the (first) day
    std::optional<int> muscle;     // DaysApart
    std::optional<int> candidate;  // DaysAWeek, SetsADay, SparedJoint, Equipment
    friend bool operator==(const OversteppedLimit&, const OversteppedLimit&) = default;
};

struct PlanObstacle {
    PlanLimit limit = PlanLimit::Minutes;
    double missingWithout = 0;  // what the wish still misses when that limit alone is lifted
    friend bool operator==(const PlanObstacle&, const PlanObstacle&) = default;
};

struct UnmetWish {
    PlanWish wish = PlanWish::Under;
    int index = 0;  // of the muscle (Under, Over, Crowding), joint (Joints), candidate (Continuity) or day (Thin)
    double missing = 0;
    std::vector<PlanObstacle> inTheWay;  // those that help most first; empty before plan_obstacles.h was asked
    friend bool operator==(const UnmetWish&, const UnmetWish&) = default;
};

struct PlanAnswer {
    std::vector<PlanSlot> placed;
    PlanCost cost;
    std::vector<OversteppedLimit> oversteppedByPins;
    std::vector<UnmetWish> unmet;
    friend bool operator==(const PlanAnswer&, const PlanAnswer&) = default;
};

template <>
struct EnumText<PlanWish> {
    static constexpr auto table = std::to_array<EnumKey<PlanWish>>({{PlanWish::Under, "under"},
                                                                    {PlanWish::Over, "over"},
                                                                    {PlanWish::Crowding, "crowding"},
                                                                    {PlanWish::Joints, "joints"},
                                                                    {PlanWish::Rating, "rating"},
                                                                    {PlanWish::Continuity, "continuity"},
                                                                    {PlanWish::Thin, "thin"},
                                                                    {PlanWish::Exercises, "exercises"}});
};
template <>
struct EnumText<PlanLimit> {
    static constexpr auto table = std::to_array<EnumKey<PlanLimit>>({{PlanLimit::Minutes, "minutes"},
                                                                     {PlanLimit::BackADay, "back_a_day"},
                                                                     {PlanLimit::BackBesideHigh, "back_beside_high"},
                                                                     {PlanLimit::ExercisesADay, "exercises_a_day"},
                                                                     {PlanLimit::OneOfAGroup, "one_of_a_group"},
                                                                     {PlanLimit::DaysApart, "days_apart"},
                                                                     {PlanLimit::DaysAWeek, "days_a_week"},
                                                                     {PlanLimit::SetsADay, "sets_a_day"},
                                                                     {PlanLimit::SparedJoint, "spared_joint"},
                                                                     {PlanLimit::Equipment, "equipment"},
                                                                     {PlanLimit::Pins, "pins"},
                                                                     {PlanLimit::TrainingDays, "training_days"},
                                                                     {PlanLimit::OtherWishes, "other_wishes"},
                                                                     {PlanLimit::NoCandidate, "no_candidate"}});
};

}  // namespace steelyard
