// What a coach does to a trial on screen, from what was typed to the edit that stores it, together with what it changes in the plan.
//
//   const TrialAt at{shown, reading.record, today};
//   STEELYARD_TRY(auto edit, concludeTrial(at, u"b"));      history.perform(std::move(edit));
//
// Sentences of failures are for the coach. Pure but for the edits, which are performed elsewhere. Failures: Invalid.
#pragma once

#include "ui/pages/lifter/trials_reading.h"

namespace steelyard {

struct TrialAt {
    const ShownTrial& shown;
    const LifterTrials& record;
    QDate today;
};

using TrialDeed = Result<std::unique_ptr<Edit>>;

// A letter, or nothing for what the log says.
[[nodiscard]] TrialDeed setArmDone(const TrialAt&, std::size_t day, QStringView letter);
// Missed, and when it was said already, not missed after all.
[[nodiscard]] TrialDeed turnMissed(const TrialAt&, std::size_t day);
[[nodiscard]] TrialDeed setTrialNote(const TrialAt&, std::size_t day, const QString& note);
// A day in the locale's way or as 2027-03-01.
[[nodiscard]] TrialDeed moveTrialDay(const TrialAt&, std::size_t day, const QString& date);
// The letter of the arm to go on with, or nothing for none. The choice becomes the lift of the weeks that remain.
[[nodiscard]] TrialDeed concludeTrial(const TrialAt&, QStringView letter);
// Stopped, or ended for discomfort. The weeks that remain go on with the first arm that isn't out.
[[nodiscard]] TrialDeed breakOffTrial(const TrialAt&, TrialEnd kind, const QString& reason);
// The look at results before the end; null: one of today stands there already.
[[nodiscard]] std::unique_ptr<Edit> lookOfToday(const TrialAt&);

}  // namespace steelyard
