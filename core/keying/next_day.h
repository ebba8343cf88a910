// What is asked on the day after: how sore and how weak the muscle was. It can't be known when the session is keyed, so it is
// asked when the lifter's next session is.
//
//   if (const auto asked = nextDayQuestions(log, sheetDay))
//       for (const NextDayQuestion& question : asked->questions) ...     // one for each lift of that session
//
// Only the latest session before the day, and only for kNextDayDays days: later nobody remembers, and nobody is nagged. A lift
// that has either answer isn't asked about again. Pure; absent when there is nothing to ask.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

inline constexpr int kNextDayDays = 4;

struct NextDayQuestion {
    LiftLine lift;
    QString exercise;
    ExerciseRating rating;  // as it is in the book
};

struct NextDayQuestions {
    QDate session;
    std::vector<NextDayQuestion> questions;  // in the order of that session
};

[[nodiscard]] std::optional<NextDayQuestions> nextDayQuestions(const AthleteLog&, QDate day);

}  // namespace steelyard
