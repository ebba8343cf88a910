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

void preparePdf(QPdfWriter& writer, PaperSize paper)
{
    writer.setResolution(static_cast<int>(kTypeUnitsPerInch));
    writer.setPageSize(QPageSize(paper == PaperSize::A4 ? QPageSize::A4 : QPageSize::Letter));
    writer.setPageMargins(QMarginsF());
    writer.setTitle(PdfText::tr("Session sheets"));
    writer.setCreator(QStringLiteral("Steelyard"));
}

}  // namespace

Result<QByteArray> sheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper)
{
    if (sheets.empty()) return fail(ErrorCode::Invalid, PdfText::tr("There are no sheets to print."));
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    preparePdf(writer, paper);
    QPainter painter;
    bool sound = painter.begin(&writer);
    bool first = true;
    for (const SessionSheet& sheet : sheets) {
        const SheetLayout layout = layOutSheet(sheet, paper);
        for (const SheetPage& page : layout.pages) {
            if (!first) sound = writer.newPage() && sound;
            first = false;
            if (sound) paintSheetPage(painter, page, kTypeUnitsPerMm);
        }
    }
    sound = painter.end() && sound;
    if (!sound) return fail(ErrorCode::Storage, PdfText::tr("The PDF could not be made."));
    return buffer.data();
}

Result<void> writeSheetsPdf(std::span<const SessionSheet> sheets, PaperSize paper, const QString& path)
{
    STEELYARD_TRY(const QByteArray document, sheetsPdf(sheets, paper));
    return writeWhole(path, document);
}

}  // namespace steelyard
