#include "ui/print/review_pieces.h"

#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ReviewPaperText {
    Q_DECLARE_TR_FUNCTIONS(ReviewPaperText)
};

constexpr double kIndent = 4;
constexpr double kTickSide = 3.4;
constexpr double kPenLine = 8.5;  // of a line to write on
constexpr double kPieceGap = 1.6;

void write(ReviewPiece& piece, const QRectF& cell, const QString& text, double points, bool bold = false,
           TextSide side = TextSide::Left)
{
    piece.items.texts.push_back({cell, shortenText(text, cell.width(), points, bold), points, bold, side, false});
}

// As many lines as it takes, below what the piece has so far.
void writeBelow(ReviewPiece& piece, double left, double width, const QString& text, double points, bool bold = false)
{
    const double high = lineHeightMm(points);
    for (const QString& line : wrapText(text, width, points, bold)) {
        write(piece, {left, piece.height, width, high}, line, points, bold);
        piece.height += high;
    }
}

void rule(ReviewPiece& piece, double left, double right, double y, double line = kHairline)
{
    piece.items.lines.push_back({{left, y, right, y}, line});
}

QString besideName(const ReviewSheetEntry& entry)
{
    QStringList parts{entry.group};
    parts << (entry.lastSession ? ReviewPaperText::tr("last session %1").arg(sheetShortDate(*entry.lastSession))
                                : ReviewPaperText::tr("nothing logged yet"));
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

ReviewPiece heading(const QString& name, const QString& beside, double width)
{
    ReviewPiece piece;
    piece.keepsWithNext = true;
    const double high = lineHeightMm(kReviewNamePoints);
    const double besideWidth = std::min(width / 2, textWidthMm(beside, kReviewPoints, false) + 0.5);
    write(piece, {0, 0, width - besideWidth - 3, high}, name, kReviewNamePoints, true);
    write(piece, {width - besideWidth, 0, besideWidth, high}, beside, kReviewPoints, false, TextSide::Right);
    rule(piece, 0, width, high + 0.4, 0.5);
    piece.height = high + 0.4 + kPieceGap;
    return piece;
}

// What could be done, each with a box to tick, in rows that fit.
void writeChoices(ReviewPiece& piece, const QStringList& choices, double width)
{
    const double high = lineHeightMm(kReviewPoints) + 1;
    double x = kIndent;
    for (const QString& choice : choices) {
        const double room = width - kIndent - kTickSide - 1.5;
        const double wide = std::min(room, textWidthMm(choice, kReviewPoints, false) + 0.5);
        if (x > kIndent && x + kTickSide + 1.5 + wide > width) {
            x = kIndent;
            piece.height += high;
        }
        piece.items.boxes.push_back({{x, piece.height + (high - kTickSide) / 2, kTickSide, kTickSide}, 0.3, 0, false});
        write(piece, {x + kTickSide + 1.5, piece.height, wide, high}, choice, kReviewPoints);
        x += kTickSide + 1.5 + wide + 5;
    }
    piece.height += high;
}

ReviewPiece flagPiece(const ReviewSheetFlag& flag, double width)
{
    ReviewPiece piece;
    if (flag.answer) {
        writeBelow(piece, 0, width, QStringLiteral("✓ ") + flag.title, kReviewPoints, true);
        writeBelow(piece, kIndent, width - kIndent, flag.sentence, kReviewPoints);
        writeBelow(piece, kIndent, width - kIndent,
                   ReviewPaperText::tr("Answered %1: %2")
                       .arg(sheetShortDate(flag.answer->madeOn), format::decisionAnswer(*flag.answer)),
                   kReviewPoints);
        piece.height += kPieceGap;
        return piece;
    }
    writeBelow(piece, 0, width,
               QStringLiteral("%1 %2: %3")
                   .arg(format::severityShape(flag.severity), format::severityWord(flag.severity), flag.title),
               kReviewPoints, true);
    writeBelow(piece, kIndent, width - kIndent, flag.sentence, kReviewPoints);
    QStringList choices = flag.choices;
    choices << ReviewPaperText::tr("watch until:") << ReviewPaperText::tr("dismiss, because:");
    writeChoices(piece, choices, width);
    piece.height += kPenLine;
    rule(piece, kIndent, width, piece.height - 1);
    piece.height += kPieceGap;
    return piece;
}

// Right edges of the columns after the line's name.
struct TableColumns {
    double verdict;
    double name;
    double rate;
    double capacity;
};

TableColumns tableColumns(double width)
{
    return {25, width - 25 - 32 - 42, 32, 42};
}

ReviewPiece tableRow(const std::array<QString, 4>& cells, double width, bool bold)
{
    ReviewPiece piece;
    const TableColumns columns = tableColumns(width);
    const double high = lineHeightMm(kReviewTablePoints) + 0.6;
    double x = 0;
    const auto put = [&](const QString& text, double wide, TextSide side) {
        write(piece, {x, 0, wide - 1, high}, text, kReviewTablePoints, bold, side);
        x += wide;
    };
    put(cells[0], columns.verdict, TextSide::Left);
    put(cells[1], columns.name, TextSide::Left);
    put(cells[2], columns.rate, TextSide::Right);
    put(cells[3], columns.capacity, TextSide::Right);
    rule(piece, 0, width, high);
    piece.height = high;
    piece.keepsWithNext = bold;
    return piece;
}

QString rateOnPaper(const ReviewSheetLine& line)
{
    if (!line.rate) return format::absent();
    return ReviewPaperText::tr("%1 (%2 to %3)", "a number and where it lies")
        .arg(format::signedNumber(line.rate->perWeek * 100, 1), format::signedNumber(line.rate->low90 * 100, 1),
             format::signedNumber(line.rate->high90 * 100, 1));
}

QString capacityOnPaper(const ReviewSheetLine& line, MassUnit unit)
{
    if (!line.capacity) return format::absent();
    const auto shown = [&](double kg) { return format::number(format::massIn(kg, unit), 1); };
    return ReviewPaperText::tr("%1 (%2 to %3)", "a number and where it lies")
        .arg(shown(line.capacity->kg), shown(line.capacity->low90Kg), shown(line.capacity->high90Kg));
}

void addTable(std::vector<ReviewPiece>& pieces, const ReviewSheetEntry& entry, double width)
{
    if (entry.lines.empty()) return;
    pieces.push_back(
        tableRow({ReviewPaperText::tr("Verdict"), ReviewPaperText::tr("Lift line"), ReviewPaperText::tr("Rate, %/week"),
                  ReviewPaperText::tr("Capacity, %1").arg(format::unit(entry.unit))},
                 width, true));
    for (const ReviewSheetLine& line : entry.lines)
        pieces.push_back(tableRow({format::verdictShape(line.verdict) + u' ' + format::verdictWord(line.verdict),
                                   line.name, rateOnPaper(line), capacityOnPaper(line, entry.unit)},
                                  width, false));
}

ReviewPiece notesPiece(double width)
{
    ReviewPiece piece;
    piece.height = kPieceGap;
    writeBelow(piece, 0, width, ReviewPaperText::tr("Notes"), kReviewTablePoints);
    piece.height += kPenLine / 2;
    rule(piece, kIndent, width, piece.height);
    piece.height += 3 * kPieceGap;
    return piece;
}

}  // namespace

std::vector<ReviewPiece> reviewPieces(const ReviewSheetEntry& entry, double width)
{
    std::vector<ReviewPiece> pieces{heading(format::person(entry.athlete), besideName(entry), width)};
    for (const ReviewSheetFlag& flag : entry.flags) pieces.push_back(flagPiece(flag, width));
    if (entry.flags.empty()) {
        ReviewPiece nothing;
        writeBelow(nothing, 0, width, ReviewPaperText::tr("Nothing open."), kReviewPoints);
        nothing.height += kPieceGap;
        pieces.push_back(std::move(nothing));
    }
    addTable(pieces, entry, width);
    pieces.push_back(notesPiece(width));
    return pieces;
}

ReviewPiece continuedHeading(const ReviewSheetEntry& entry, double width)
{
    return heading(format::person(entry.athlete), ReviewPaperText::tr("continued"), width);
}

}  // namespace steelyard
