// Decisions of the review that stand on the next sheet as the coach's note, because the plan doesn't carry them: actions
// that are no change of the plan (film a set), and changes that found no planned slot, which say in their reason what to
// do. A decision that landed in the plan has no reason and needs no note: the slot says it.
//
//   exercise.coachNotes = notesOnLine(log, line, date);
//   sheet.coachNotes = notesOnSheet(log, date);
//
// A note stands from the day of the decision until the line (or for a decision about the lifter: anything) was trained on
// a later day, or the coach answered the same flag anew. Sending somebody to a professional is for the head of the sheet,
// whichever line it is about, so that it can't be missed on a day without that exercise. Pure; no failures.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

[[nodiscard]] std::vector<CoachNote> notesOnLine(const AthleteLog& log, const LineRecord& line, QDate date);
[[nodiscard]] std::vector<CoachNote> notesOnSheet(const AthleteLog& log, QDate date);

}  // namespace steelyard
