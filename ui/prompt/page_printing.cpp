#include "ui/prompt/page_printing.h"

#include "ui/print/sheet_painter.h"

#include <QtCore/QLocale>
#include <QtGui/QPainter>
#include <QtPrintSupport/QPrinter>

namespace steelyard {

QPageSize pageSize(PaperSize paper)
{
    return QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter);
}

PaperSize usualPaper()
{
    return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? PaperSize::Letter : PaperSize::A4;
}

bool printPages(QPrinter& printer, const std::function<std::vector<SheetPage>(PaperSize)>& pages)
{
    constexpr double kMillimetresInAnInch = 25.4;
    const PaperSize paper =
        printer.pageLayout().pageSize().id() == QPageSize::Letter ? PaperSize::Letter : PaperSize::A4;
    QPainter painter;
    if (!painter.begin(&printer)) return false;
    bool first = true;
    for (const SheetPage& page : pages(paper)) {
        if (!first && !printer.newPage()) return false;
        first = false;
        paintSheetPage(painter, page, printer.resolution() / kMillimetresInAnInch);
    }
    return painter.end();
}

}  // namespace steelyard
