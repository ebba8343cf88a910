// What stands at the head and the foot of every page of a paper.
//
//   writePageHead(page, paper, {athlete, date, headOf(sheet), tr("page 1/2"), sheet.sheetId, legend});
//   y = kClipMargin + pageHeadHeight(head);
//
// The code goes to the top right corner with its quiet zone; the rule under the head ends before it. Long words are shortened.
#pragma once

#include "ui/print/sheet_layout.h"

#include <QtCore/QStringList>

namespace steelyard {

inline constexpr double kFooter = 5.2;

struct PageHead {
    QString title;  // large, bold
    QString beside;
    QString under;
    QString underBeside;
    QString code;  // of a sheet, also as a square; empty: none
    QString foot;
};

[[nodiscard]] double pageHeadHeight(const PageHead& head);
void writePageHead(SheetPage& page, QSizeF paper, const PageHead& head);
// One line, shortened to its cell.
void writeLine(SheetPage& page, const QRectF& cell, const QString& words, double points, bool bold = false,
               TextSide side = TextSide::Left);
// As many lines as it takes, at most `most`, from `top` down; gives where they end.
double writeWrapped(SheetPage& page, const QRectF& column, double top, const QString& words, double points, bool bold,
                    int most = 100);
// Sentences on a pale ground, each from a new line, over the column's width from its top on. Gives where the next thing stands.
double writeShaded(SheetPage& page, const QRectF& column, const QStringList& sentences);
// A sheet's square with its top right corner there. Gives its width with the quiet zone at its left; 0 without a code.
double writeCode(SheetPage& page, QPointF topRight, const QString& sheetId);

}  // namespace steelyard
