// Which arms are out because they hurt. Never averaged away by anything good about them.
//
//   for (const VetoedArm& out : vetoedArms(trial, record)) ...
//
// An arm is out when, in its own sessions (those to get used to it too), some joint was rated at the limit or above in as many
// sessions running as the trial says; a session without a rating neither counts nor breaks the run. And when, after three
// sessions of it and of another arm, it is 80 % likely to hurt more than that one by over a point of ten.
//
// Of simulated arms that hurt 0, 1, 2, 3 points more (baseline 1, SD 1), 0, 4, 42, 91 % are out after four blocks and 0, 12,
// 78, 100 % after eight. The program doesn't diagnose; it says what was rated, and that it is for a professional to judge.
//
// Units: ratings 0-10. Pure; no failures.
#pragma once

#include "core/trials/trial_record.h"

namespace steelyard {

struct VetoedArm {
    std::size_t arm = 0;
    QDate since;                   // the day on which the rule was met, or the last one looked at
    bool sessionsRunning = false;  // by the limit in sessions running; else by comparison
    int rating = 0;                // the highest of that run, or the arm's highest
    std::optional<Joint> joint;    // that it was rated for
    double chanceWorse = 0;        // by comparison: by over a point than the best other
    friend bool operator==(const VetoedArm&, const VetoedArm&) = default;
};

// By place of the arm. Also while results are hidden: a veto is always shown.
[[nodiscard]] std::vector<VetoedArm> vetoedArms(const Trial&, const TrialRecord&);

}  // namespace steelyard
