// Which trial has a session on a day, and what its sheet says of it.
//
//   for (const TrialSession& session : trialSessionsOn(log, date))
//       session.trial->value.arms[session.day->arm];            // the arm that was drawn
//   sheetTrialOf(log, library, lift, date)                      // absent: the lift is in no trial that day
//
// A trial that has ended by that day, and a session that is said to have been missed, are none. Of two trials on one day both count.
// Pure; no failures. The pointers live as long as the log.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

struct TrialSession {
    const Row<Trial>* trial = nullptr;
    const TrialDay* day = nullptr;
};

[[nodiscard]] std::vector<TrialSession> trialSessionsOn(const AthleteLog&, QDate);
// The drawn arm where it has this lift, else the first arm that has, with the drawn one named beside it.
[[nodiscard]] std::optional<SheetTrial> sheetTrialOf(const AthleteLog&, const Library&, const LiftLine&, QDate);

}  // namespace steelyard
