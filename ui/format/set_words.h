// A set in words.
//
//   setWords(set)                      "42.5 kg × 9, 1 off standard (body swing 1), RIR 2"
//   setWords(set, SetWords::Whole)     also what goes without saying in a list: "watched, all to the standard", "lowered in 3 s"
//   marksWords(set.marks)              "body swing 1"
//   effortWords(set.effort)            "2", "RPE 8", empty
//
// Numbers and units by locale. No failures.
#pragma once

#include "core/domain/logbook.h"

#include <QtCore/QString>

namespace steelyard {

enum class SetWords { Short, Whole };

[[nodiscard]] QString setWords(const SetEntry& set, SetWords how = SetWords::Short);
[[nodiscard]] QString marksWords(const MarkCounts& marks);
[[nodiscard]] QString effortWords(const std::optional<Effort>& effort);

}  // namespace steelyard
