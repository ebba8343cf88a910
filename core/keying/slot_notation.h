// A lift's dose in a plan on one line, in the trade's "sets x reps": typed in place in a block, written back where it is edited.
//
//   readDose(u"3x8-12 rir2 42.5 120s", slot, MassUnit::kg)     3 sets of 8-12, 2 in reserve, 42.5 kg, two minutes of rest
//   writeDose(slot, MassUnit::kg)                              what readDose() reads back as the same dose
//
// In any order, each at most once, with spaces between:
//   3x8-12   sets and band; 3x10 for a band of one number; 8-12 alone keeps the sets, 3x alone keeps the band
//   rir2     repetitions in reserve                 42.5kg   the coach's load; without a unit it is the one given here
//   120s 2min   rest after a set                    "        the rest of the line is the note (\n a line break, \\ a backslash)
// What isn't named is left to the record: no reserve, no load, no rest, no note. Sets and band stay as they were.
//
// Failure: the place in the line and what to type there (NotationProblem). Whether a number can be is core/planning's business.
#pragma once

#include "core/domain/block.h"
#include "core/keying/set_notation.h"

namespace steelyard {

using DoseReading = tl::expected<Slot, NotationProblem>;

// The slot given, with the dose that was typed.
[[nodiscard]] DoseReading readDose(QStringView line, const Slot& slot, MassUnit unit);
[[nodiscard]] QString writeDose(const Slot& slot, MassUnit usual);
// Of the parts that are also typed alone: "8-12" or "10", "120s" or "2min"; nullopt: it is none.
[[nodiscard]] std::optional<RepBand> readBand(QStringView text);
[[nodiscard]] std::optional<int> readRest(QStringView text);
[[nodiscard]] QString writeBand(const RepBand& band);
// A load as it is typed by itself, its unit only where it isn't the usual one.
[[nodiscard]] QString writePlainLoad(const Load& load, MassUnit usual);

}  // namespace steelyard
