#include "ui/print/page_head.h"

#include "ui/print/text_measure.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr double kHeadGap = 4;
constexpr double kRuleGap = 0.4;
constexpr double kHeadRule = 0.5;

// Two words on one line: the right one whole, the left one shortened.
void writePair(SheetPage& page, const QRectF& line, const QString& left, const QString& right, double points, bool bold)
{
    const double wanted = right.isEmpty() ? 0 : textWidthMm(right, points, false) + 0.5;
    const double width = std::min(wanted, line.width() / 2);
    const double room = line.width() - width - (width > 0 ? kHeadGap : 0);
    writeLine(page, {line.left(), line.top(), room, line.height()}, left, points, bold);
    if (width > 0)
        writeLine(page, {line.right() - width, line.top(), width, line.height()}, right, points, false,
                  TextSide::Right);
}

}  // namespace

void writeLine(SheetPage& page, const QRectF& cell, const QString& words, double points, bool bold, TextSide side)
{
    if (words.isEmpty()) return;
    page.texts.push_back({cell, shortenText(words, cell.width(), points, bold), points, bold, side, false});
}

double writeWrapped(SheetPage& page, const QRectF& column, double top, const QString& words, double points, bool bold,
                    int most)
{
    const double high = lineHeightMm(points);
    for (const QString& line : wrapText(words, column.width(), points, bold, most)) {
        page.texts.push_back({{column.left(), top, column.width(), high}, line, points, bold, TextSide::Left, false});
        top += high;
    }
    return top;
}

double writeShaded(SheetPage& page, const QRectF& column, const QStringList& sentences)
{
    constexpr double kPad = 0.5;
    constexpr double kIndent = 2;
    constexpr double kGrey = 0.06;
    constexpr double kBelow = 2;
    SheetPage words;
    double y = column.top() + kPad;
    for (const QString& sentence : sentences)
        y = writeWrapped(words, {column.left() + kIndent, 0, column.width() - 2 * kIndent, 0}, y, sentence,
                         kSmallestPoints, false);
    page.boxes.push_back(
        {{column.left(), column.top(), column.width(), y + kPad - column.top()}, kHairline, kGrey, false});
    page.place(words, {});
    return y + kPad + kBelow;
}

double writeCode(SheetPage& page, QPointF topRight, const QString& sheetId)
{
    auto code = makeScanCode(sheetId);
    if (!code) return 0;
    const double side = code->size * kScanModule;
    page.codes.push_back({{topRight.x() - side, topRight.y(), side, side}, *std::move(code)});
    return side + kScanQuietModules * kScanModule;
}

double pageHeadHeight(const PageHead& head)
{
    constexpr double kCodeHeight = 12.7;  // the smallest square and its quiet zone
    const double words = lineHeightMm(kLargePoints) + lineHeightMm(kSmallestPoints) + 1.2;
    return head.code.isEmpty() ? words : std::max(words, kCodeHeight);
}

void writePageHead(SheetPage& page, QSizeF paper, const PageHead& head)
{
    const double large = lineHeightMm(kLargePoints);
    const double small = lineHeightMm(kSmallestPoints);
    const double full = paper.width() - 2 * kSideMargin;
    const double code = head.code.isEmpty() ? 0 : writeCode(page, {kSideMargin + full, kClipMargin}, head.code);
    const double width = full - code;
    writePair(page, {kSideMargin, kClipMargin, width, large}, head.title, head.beside, kLargePoints, true);
    const double y = kClipMargin + large;
    writePair(page, {kSideMargin, y, width, small}, head.under, head.underBeside, kSmallestPoints, false);
    const double rule = y + small + kRuleGap;
    page.lines.push_back({{kSideMargin, rule, kSideMargin + width, rule}, kHeadRule});
    writeLine(page, {kSideMargin, paper.height() - kBottomMargin - small, full, small}, head.foot, kSmallestPoints);
}

}  // namespace steelyard
