// The words of the Block place: a slot, a week, a broken limit, what an edit is called in the menu, and what is typed in a line.
//
//   doseWords(slot)                                   "3 × 8–12 · RIR 2 · 42.5 kg"
//   editWords(tr("a set more on %1"), block, …)       "a set more on Arm curl, 3 weeks"
//   readDaysOff(u"2027-03-08 – 2027-03-14 holiday")   one stretch of days off
//
// Numbers, dates and units by locale; dates are read as they are written, and in ISO 8601.
#pragma once

#include "core/base/result.h"
#include "core/domain/library.h"
#include "core/planning/block_totals.h"

namespace steelyard {

[[nodiscard]] QString doseWords(const Slot&);
// "Arm curl"; and "straight bar, upright · supinated, medium", empty where nothing special is said.
[[nodiscard]] QString exerciseWords(const Slot&, const Library&);
[[nodiscard]] QString wayWords(const Slot&, const Library&);
// What was done on the line of a slot that day: "40 kg: 9, 9, 8"; empty: nothing.
[[nodiscard]] QString doneWords(const Slot&, QDate date, const AthleteLog&);
// How the slot goes on, where it isn't the usual way; and always.
[[nodiscard]] QString otherProgressionWords(const Slot&);
[[nodiscard]] QString progressionTitle(const Slot&);
[[nodiscard]] QString weekKindWord(WeekKind);
// "Week 2 of 5, 8 Mar to 14 Mar, easier week"
[[nodiscard]] QString weekWords(const Block&, std::size_t week);
[[nodiscard]] QString blockWords(const Block&);
[[nodiscard]] QString limitWord(LimitKind);  // "long", "few sets": short, for where it happens
// Where and what: "Thu 11 Mar, Arm curl: The elbow was …"
[[nodiscard]] QString limitWords(const BrokenLimit&, const Block&, const Library&);
[[nodiscard]] QString editWords(const QString& deed, const Block&, const PlanPlaces&, const Library&);

[[nodiscard]] std::optional<QDate> readDate(const QString& text);
// Stretches parted by semicolons; empty: none.
[[nodiscard]] Result<std::vector<DaysOff>> readDaysOff(const QString& text);
[[nodiscard]] QString daysOffText(const std::vector<DaysOff>&);
// "Chest 8-16; Back 10-18": the beginning of a muscle's name is enough where only one begins so.
[[nodiscard]] Result<std::vector<MuscleAim>> readAims(const QString& text, const Library&);
[[nodiscard]] QString aimsText(const std::vector<MuscleAim>&, const Library&);
// "mon thu", "1 4", "Mo, Do": beginnings of the locale's names of the days, or numbers from Monday.
[[nodiscard]] std::optional<std::vector<int>> readWeekdays(const QString& text);
[[nodiscard]] QString weekdaysText(const std::vector<int>&);
// The training weekdays of a week.
[[nodiscard]] std::vector<int> weekdaysOf(const PlannedWeek&);

inline constexpr QChar kLimitShape(0x25B2);  // before the word of a broken limit
inline constexpr QChar kPinShape(0x25C6);    // before what is fixed for the next proposal

}  // namespace steelyard
