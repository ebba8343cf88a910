#include "ui/print/pdf_writer.h"

#include "ui/print/sheet_painter.h"
#include "ui/print/text_measure.h"
#include "ui/print/whole_file.h"

#include <QtCore/QBuffer>
#include <QtCore/QCoreApplication>
#include <QtGui/QPageSize>
#include <QtGui/QPainter>
#include <QtGui/QPdfWriter>

namespace steelyard {
namespace {

struct PdfText {
    Q_DECLARE_TR_FUNCTIONS(PdfText)
};

void preparePdf(QPdfWriter& writer, PaperSize paper, const QString& title)
{
    writer.setResolution(static_cast<int>(kTypeUnitsPerInch));
    writer.setPageSize(QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(title);
    writer.setCreator(QStringLiteral("Steelyard"));
}

Result<QByteArray> pagesPdf(std::span<const SheetPage> pages, PaperSize paper, const QString& title)
{
    if (pages.empty()) return fail(ErrorCode::Invalid, PdfText::tr("There are no pages to print."));
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    preparePdf(writer, paper, title);
    QPainter painter;
    bool sound = painter.begin(&writer);
    bool first = true;
    for (const SheetPage& page : pages) {
        if (!first) sound = writer.newPage() && sound;
        first = false;
        if (sound) paintSheetPage(painter, page, kTypeUnitsPerMm);
    }
    sound = painter.end() && sound;
    if (!sound) return fail(ErrorCode::Storage, PdfText::tr("The PDF could not be made."));
    return buffer.data();
}

}  // namespace

Result<QByteArray> sheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper)
{
    if (sheets.empty()) return fail(ErrorCode::Invalid, PdfText::tr("There are no sheets to print."));
    return pagesPdf(layOutSheets(sheets, paper), paper, PdfText::tr("Session sheets"));
}

Result<void> writeSheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper, const QString& path)
{
    STEELYARD_TRY(const QByteArray document, sheetsPdf(sheets, paper));
    return writeWhole(path, document);
}

Result<void> writePagesPdf(std::span<const SheetPage> pages, PaperSize paper, const QString& title, const QString& path)
{
    STEELYARD_TRY(const QByteArray document, pagesPdf(pages, paper, title));
    return writeWhole(path, document);
}

}  // namespace steelyard
