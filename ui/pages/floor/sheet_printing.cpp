#include "ui/pages/floor/sheet_printing.h"

#include "ui/print/sheet_painter.h"

#include <QtGui/QPainter>
#include <QtPrintSupport/QPrinter>

namespace steelyard {

QPageSize pageSize(PaperSize paper)
{
    return QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter);
}

bool printSheets(QPrinter& printer, const std::vector<SessionSheet>& sheets)
{
    constexpr double kMillimetresInAnInch = 25.4;
    const PaperSize paper =
        printer.pageLayout().pageSize().id() == QPageSize::Letter ? PaperSize::Letter : PaperSize::A4;
    QPainter painter;
    if (!painter.begin(&printer)) return false;
    bool first = true;
    for (const SessionSheet& sheet : sheets)
        for (const SheetPage& page : layOutSheet(sheet, paper).pages) {
            if (!first && !printer.newPage()) return false;
            first = false;
            paintSheetPage(painter, page, printer.resolution() / kMillimetresInAnInch);
        }
    return painter.end();
}

}  // namespace steelyard
