// The cautions that head a sheet: calm, usual, and never a diagnosis.
//
// Discomfort: the latest rating of a joint within kDiscomfortDays before the day, when it is kDiscomfortRating or more
// of ten. HeavyBar: a bar of kHeavyBar or more, or a test week; common practice, no source. Under18: only from a known
// date of birth. AfterBreak: no session at all for kLayoffDays.
#pragma once

#include "core/sheets/session_sheet.h"

namespace steelyard {

inline constexpr int kDiscomfortDays = 14;
inline constexpr int kDiscomfortRating = 4;
inline constexpr Mass kHeavyBar = massFromGrams(60'000);

// `sheet` has its exercises, date and week already.
[[nodiscard]] std::vector<SheetCaution> cautionsFor(const SessionSheet& sheet, const AthleteLog& log);

}  // namespace steelyard
