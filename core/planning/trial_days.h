// What happens to the sessions of a running trial: moved, missed, done otherwise, noted.
//
//   STEELYARD_TRY(const Trial after, moveTrialSession(trial, 3, thursday, {blocks, weekdays}));
//   after.days[4].date                  // moved on too, where it came too near; the drawn order is the same
//
// A session goes to any day after the one before it; those behind it keep their date while `daysBetween` days lie between, else they
// go to the next training day that has them. What is done stays: a session that lies behind can only be marked. Sentences are for
// the coach. Pure. Failures: Invalid.
#pragma once

#include "core/base/result.h"
#include "core/domain/trial.h"

namespace steelyard {

struct TrainingCalendar {
    const std::vector<Row<Block>>& blocks;
    std::vector<int> weekdays;  // 1 is Monday; where no block says otherwise. Empty: every day
};

// A planned day of a normal week, else one of the weekdays; never a day off, an easier or a test week.
[[nodiscard]] bool isTrialDay(const TrainingCalendar&, QDate);

[[nodiscard]] Result<Trial> moveTrialSession(Trial, std::size_t session, QDate to, const TrainingCalendar&);
[[nodiscard]] Result<Trial> markTrialSessionMissed(Trial, std::size_t session, bool missed);
// Absent: what the log says.
[[nodiscard]] Result<Trial> markTrialSessionDone(Trial, std::size_t session, std::optional<std::size_t> arm);
[[nodiscard]] Result<Trial> noteTrialSession(Trial, std::size_t session, const QString& note);

}  // namespace steelyard
