// How soon the review calls a lift stalled: sooner with more false alarms, or surer with more waiting. One setting of the
// book, chosen in the Roster menu; an edit like any other.
//
//   chosenCaution(book)             == Caution::Usual
//   chooseCaution(book, Caution::Surer)
#pragma once

#include "core/analysis/verdict_thresholds.h"
#include "core/book/book.h"

#include <array>

namespace steelyard {

struct CautionAction {
    const char* id;
    Caution caution;
};

inline constexpr std::array<CautionAction, 3> kCautionActions{
    {{"roster.sooner", Caution::Sooner}, {"roster.usual", Caution::Usual}, {"roster.surer", Caution::Surer}}};

// What the book says; the usual one where it says nothing or can't be read.
[[nodiscard]] Caution chosenCaution(const Book&);
// The sentence that says what was chosen.
[[nodiscard]] Result<QString> chooseCaution(Book&, Caution);

}  // namespace steelyard
