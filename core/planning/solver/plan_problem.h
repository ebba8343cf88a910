// One training week as a question: which exercises on which days with how many sets. It knows nothing of a book: candidates,
// days, muscles and joints are numbers from 0, and whoever asks knows what they stand for.
//
//   PlanProblem problem;
//   problem.days = {{.weekday = 1, .minutes = 60}, {.weekday = 4, .minutes = 60}};
//   problem.muscles = {{.low = 8, .high = 14}};
//   problem.candidates = {{.shares = {{0, 1.0}}, .minutesASet = 3, .setUpMinutes = 2}};
//   validate(problem).empty()
//   const auto answer = searchPlan(problem, {}, progress);          // plan_search.h
//
// Limits are kept, wishes cost. Limits: the minutes of a day; the back loading of a day, and of the days beside one that
// holds high back loading; exercises a day; days a week and sets a day of a candidate; two candidates of one group never on one day;
// days between two that train a muscle as a target; joints to be spared; what the equipment allows. The week repeats itself,
// so the day after Sunday is Monday. Pins stand whatever the limits say: a limit that pins alone overstep holds for everything
// else at what the pins use.
//
// Cost, by wish (weights in PlanWishes), to be made as small as possible:
//   under       sets that a muscle is short of its low end; those under half of it count twice, so that no muscle is left
//               out for the good of others
//   over        sets above the high end
//   crowding    sets of a muscle on one day above its mostADay
//   joints      sets that strain a joint with a complaint, times the complaint (0..1)
//   rating      sets, times (1 - rating)
//   continuity  candidates that should stay and don't, times their continuity
//   thin        sets that a day is short of its leastSets: a day is worth coming for
//   exercises   every exercise of every day: fewer, longer ones where nothing else decides
//
// Units: sets a week, minutes, points of cost. Shares, sets, minutes and weights are taken to three decimals, so that costs
// are whole numbers inside and equal plans cost exactly the same.
// Sources: helpers counted as fractions: see analysis/weekly_sets.h. The weights are our convention.
#pragma once

#include "core/domain/problem.h"

#include <vector>

namespace steelyard {

inline constexpr int kMostBackLoading = 2;
inline constexpr int kMostPlanDays = 7;
inline constexpr int kMostPlanCandidates = 400;
// A candidate trains a muscle as a target from this share on.
inline constexpr double kTargetShare = 0.999;

struct PlanShare {
    int muscle = 0;
    double share = 1;  // (0, 1]: 1 is a target
    friend bool operator==(const PlanShare&, const PlanShare&) = default;
};

struct PlanPin {
    int day = 0;
    int sets = 0;  // exactly; 0: kept off this day
    friend bool operator==(const PlanPin&, const PlanPin&) = default;
};

struct PlanCandidate {
    std::vector<PlanShare> shares = {};
    int group = 0;        // candidates of one group are ways to do one exercise
    int backLoading = 0;  // 0 none, 1 some, 2 high
    double minutesASet = 3;
    double setUpMinutes = 2;
    std::vector<int> joints = {};  // that it strains
    double rating = 0.5;           // 0..1, how well it has served this lifter
    double continuity = 0;         // 0..1, how much it matters that it stays in the week
    int leastSets = 2;             // a day
    int mostSets = 5;
    int mostDays = 2;      // a week
    bool possible = true;  // with the equipment there is
    std::vector<PlanPin> pins = {};
    friend bool operator==(const PlanCandidate&, const PlanCandidate&) = default;
};

struct PlanDay {
    int weekday = 1;  // 1 Monday .. 7 Sunday
    double minutes = 60;
    int leastSets = 0;  // of all exercises together, wished for
    friend bool operator==(const PlanDay&, const PlanDay&) = default;
};

struct PlanMuscle {
    double low = 8;  // weekly sets
    double high = 16;
    double mostADay = 8;
    int leastDaysApart = 2;  // of days that train it as a target; 2: never on two days running
    double weight = 1;       // of this muscle among the others
    friend bool operator==(const PlanMuscle&, const PlanMuscle&) = default;
};

struct PlanJoint {
    double complaint = 0;  // 0..1
    bool spared = false;   // nothing that strains it may be planned
    friend bool operator==(const PlanJoint&, const PlanJoint&) = default;
};

struct PlanLimits {
    int backADay = 3;        // sum of back loading over the exercises of a day
    int backBesideHigh = 1;  // the same on the day before or after one that holds high back loading
    int exercisesADay = 8;
    friend bool operator==(const PlanLimits&, const PlanLimits&) = default;
};

struct PlanWishes {
    double under = 1;
    double over = 0.5;
    double crowding = 0.3;
    double joints = 0.5;
    double rating = 0.1;
    double continuity = 1.5;
    double thin = 0.2;
    double exercises = 0.1;
    friend bool operator==(const PlanWishes&, const PlanWishes&) = default;
};

struct PlanProblem {
    std::vector<PlanCandidate> candidates;
    std::vector<PlanDay> days;  // by weekday
    std::vector<PlanMuscle> muscles;
    std::vector<PlanJoint> joints;
    PlanLimits limits;
    PlanWishes wishes;
    friend bool operator==(const PlanProblem&, const PlanProblem&) = default;
};

// What keeps the problem from being asked; empty when it can be.
[[nodiscard]] Problems validate(const PlanProblem&);

}  // namespace steelyard
