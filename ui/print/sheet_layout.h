// Where everything of a sheet stands, in millimetres from the paper's top left corner. Data, so that it can be tested
// and painted alike on a screen, a printer and into a PDF.
//
//   const SheetLayout layout = layOutSheet(sheet, PaperSize::A4);     // after loadBundledFonts()
//   layout.pages.size() == 1
//
// A day takes as few pages as it can. Where it goes on one page with every reason in words, it has them; where it doesn't, the
// reasons go first, then the cues lose their headings and the labels of the boxes stand once a page, and at last the longest
// cues are cut: eight usual exercises of three sets are one page of A4.
//
// Invariants: no exercise is split between pages (but one that is taller than a page goes on in a further block), and exercises done
// in turns stay together where a page can hold them; every text's ink fits its cell; type is kSmallestPoints or more, names, loads
// and repetitions kLargePoints; greys are kDarkestGrey or lighter, and no text stands on a colour; lines kHairline or wider;
// write-in boxes kWriteInHeight by kWriteInWidth or more; nothing stands in the clip margin at the top but the page's edge. Every
// page has the name, the date, its number, the sheet's id and its code.
#pragma once

#include "core/sheets/session_sheet.h"
#include "ui/print/disc_colours.h"
#include "ui/print/scan_code.h"

#include <QtCore/QLineF>
#include <QtCore/QRectF>

#include <optional>
#include <span>
#include <string_view>

namespace steelyard {

enum class PaperSize { A4, Letter };

inline constexpr double kClipMargin = 12;
inline constexpr double kSideMargin = 10;
inline constexpr double kBottomMargin = 8;
inline constexpr double kHairline = 0.18;
inline constexpr double kSmallestPoints = 10;
inline constexpr double kLargePoints = 14;
inline constexpr double kDarkestGrey = 0.15;
inline constexpr double kWriteInHeight = 8;
inline constexpr double kWriteInWidth = 14;

enum class TextSide { Left, Right, Centre };

struct TextItem {
    QRectF cell;
    QString text;  // one line
    double points = kSmallestPoints;
    bool bold = false;
    TextSide side = TextSide::Left;
    bool upright = false;  // turned a quarter to the left, for plates; the cell is as it stands on the paper
};

struct BoxItem {
    QRectF rect;
    double line = kHairline;
    double grey = 0;  // fill: 0 is white, 1 would be black
    bool writeIn = false;
    std::optional<DiscColour> band = {};  // fill of a disc's coloured edge
};

struct CodeItem {
    QRectF rect;  // without the quiet zone
    ScanCode code;
};

struct LineItem {
    QLineF line;
    double width = kHairline;
};

// What belongs to one exercise, for tests and for a page's picture.
struct PlacedExercise {
    int index = 0;
    QRectF area;
};

struct SheetPage {
    std::vector<TextItem> texts;
    std::vector<BoxItem> boxes;
    std::vector<LineItem> lines;
    std::vector<CodeItem> codes;
    std::vector<PlacedExercise> exercises;

    // Texts, boxes, lines and codes of `items`, which begin at (0, 0), moved to `at`.
    void place(const SheetPage& items, QPointF at);
};

struct SheetLayout {
    QSizeF paper;  // mm
    std::vector<SheetPage> pages;
};

[[nodiscard]] QSizeF paperMillimetres(PaperSize paper);
[[nodiscard]] std::optional<PaperSize> paperSizeFrom(QStringView name);  // "A4", "Letter", in any case
[[nodiscard]] SheetLayout layOutSheet(const SessionSheet& sheet, PaperSize paper);
// All pages, one sheet after the other.
[[nodiscard]] std::vector<SheetPage> layOutSheets(std::span<const SessionSheet> sheets, PaperSize paper);

}  // namespace steelyard
