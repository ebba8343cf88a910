// A trial as it is proposed before the coach touches it, and what can be chosen for its arms.
//
//   Trial trial = draftTrial(record, lift, TrialFactor::Grip, today, seed);      // two arms: as trained, and another grip
//   for (const TrialArm& arm : armsToChoose(record, trial.arms[0], TrialFactor::Grip)) ...
//   draftQuestion(trial, library)                                               // "Arm curl: supinated or neutral?"
//
// The first arm is the lift as it is trained; the second one what the lifter knows best of what differs in the factor alone, else the
// library's first. Sets, band and reserve come from the plan ahead, else the variant's band. Bands and lowering are typed, so nothing is
// offered for them. Pure; no failures.
#pragma once

#include "core/book/trial_reading.h"

namespace steelyard {

[[nodiscard]] Trial draftTrial(const LifterTrials&, const LiftLine& lift, TrialFactor, QDate today, std::uint64_t seed);
// Others that differ in the factor alone, the lifter's own lines first; where there are none, those of the exercise that differ in more.
// `base` itself is the first. Empty for factors that are typed.
[[nodiscard]] std::vector<TrialArm> armsToChoose(const LifterTrials&, const TrialArm& base, TrialFactor);
// What tells an arm from another in a list of choices: its grip, or its variant.
[[nodiscard]] QString armChoiceName(const TrialArm&, TrialFactor, const Library&);
[[nodiscard]] bool isTyped(TrialFactor);
// What all arms have alike, for people: "Arm curl, straight bar · strict · 8-12 repetitions".
[[nodiscard]] QString pinnedWords(const Trial&, const Library&);
[[nodiscard]] QString draftQuestion(const Trial&, const Library&);
// Weekdays that fit a trial: those of the plan, else the usual ones, else those of the lift's last sessions.
[[nodiscard]] std::vector<int> draftWeekdays(const LifterTrials&, const Trial&, QDate today);
// The factor that a flag's rule asks about.
[[nodiscard]] TrialFactor factorOfRule(QStringView rule);

}  // namespace steelyard
