// One lifter of the review on paper, as pieces that are laid out on their own and then put on pages: the heading, every flag
// with boxes to tick and a line to write on, the table of the lift lines, room for notes.
//
//   for (const ReviewPiece& piece : reviewPieces(entry, 190)) ...
//
// Every text's ink fits its cell. A piece that must not be the last of a page says so.
#pragma once

#include "core/flags/review_sheet.h"
#include "ui/print/sheet_layout.h"

namespace steelyard {

inline constexpr double kReviewNamePoints = 13;
inline constexpr double kReviewPoints = 10;
inline constexpr double kReviewTablePoints = 9;

struct ReviewPiece {
    SheetPage items;  // from (0, 0)
    double height = 0;
    bool keepsWithNext = false;
};

// The first is the heading.
[[nodiscard]] std::vector<ReviewPiece> reviewPieces(const ReviewSheetEntry& entry, double width);
// Above what is left of a lifter on a further page.
[[nodiscard]] ReviewPiece continuedHeading(const ReviewSheetEntry& entry, double width);

}  // namespace steelyard
