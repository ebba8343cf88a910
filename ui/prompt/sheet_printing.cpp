#include "ui/prompt/sheet_printing.h"

#include "ui/print/sheet_painter.h"

#include <QtCore/QCoreApplication>
#include <QtGui/QPageSize>
#include <QtGui/QPainter>
#include <QtPrintSupport/QPrintPreviewDialog>
#include <QtPrintSupport/QPrinter>
#include <QtPrintSupport/QPrinterInfo>

namespace steelyard {
namespace {

struct PrintingText {
    Q_DECLARE_TR_FUNCTIONS(PrintingText)
};

}  // namespace

bool printSheets(QPrinter& printer, const std::vector<SessionSheet>& sheets, PaperSize paper)
{
    QPainter painter;
    if (!painter.begin(&printer)) return false;
    bool first = true;
    for (const SessionSheet& sheet : sheets)
        for (const SheetPage& page : layOutSheet(sheet, paper).pages) {
            if (!first && !printer.newPage()) return false;
            first = false;
            paintSheetPage(painter, page, printer.resolution() / 25.4);
        }
    return painter.end();
}

Result<void> showPrintPreview(QWidget* parent, std::vector<SessionSheet> sheets, PaperSize paper)
{
    if (QPrinterInfo::availablePrinterNames().isEmpty())
        return fail(ErrorCode::Unsupported,
                    PrintingText::tr("No printer is set up on this machine. Save the sheets as a PDF instead."));
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setPageSize(QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    printer->setFullPage(true);
    auto* dialog = new QPrintPreviewDialog(printer.get(), parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(dialog, &QPrintPreviewDialog::paintRequested, dialog,
                     [printer, sheets = std::move(sheets), paper](QPrinter* target) {
                         if (!printSheets(*target, sheets, paper))
                             qWarning("The printer stopped before the last page.");
                     });
    // The dialog uses the printer until it is gone.
    QObject::connect(dialog, &QObject::destroyed, [printer] { Q_UNUSED(printer) });
    dialog->open();
    return {};
}

}  // namespace steelyard
