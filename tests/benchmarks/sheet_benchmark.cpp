// Sixty sheets of eight exercises as a PDF, as on a busy evening: laying out and painting, and all of it to the plain drawing of as
// many words in Qt. A floor prints in seconds, so the whole is wanted under 1.5 s.
#include "tests/benchmarks/benchmark_support.h"
#include "tests/support/sheet_samples.h"
#include "ui/print/fonts.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/text_measure.h"

#include <QtCore/QBuffer>
#include <QtGui/QGuiApplication>
#include <QtGui/QPainter>
#include <QtGui/QPdfWriter>

namespace steelyard {
namespace {

SessionSheet sheetOfEight()
{
    const QDate day(2027, 3, 8);
    testing_support::SheetSample sample;
    while (sample.log.lines.size() < 8)
        sample.addLine(QStringLiteral("Bent-over row %1").arg(sample.log.lines.size()), QStringLiteral("straight bar"),
                       Loading::BarTotal, Implement::StraightBar);
    for (std::size_t line = 0; line < sample.log.lines.size(); ++line)
        sample.done(line, day.addDays(-7), {{u"70", 10}, {u"70", 9}, {u"70", 9}});
    return *buildSessionSheet(sample.log, sample.library, sample.gym, day);
}

double plainWords(std::span<const SheetPage> pages)
{
    const benchmark::Stopwatch watch;
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    QPdfWriter writer(&buffer);
    writer.setResolution(static_cast<int>(kTypeUnitsPerInch));
    QPainter painter(&writer);
    for (const SheetPage& page : pages) {
        for (const TextItem& item : page.texts) {
            painter.setFont(sheetFont(item.points, item.bold));
            painter.drawText(item.cell.topLeft() * kTypeUnitsPerMm, item.text);
        }
        writer.newPage();
    }
    painter.end();
    return watch.seconds();
}

void printSheets(int count)
{
    const std::vector sheets(static_cast<std::size_t>(count), sheetOfEight());
    const benchmark::Stopwatch layoutWatch;
    const auto pages = layOutSheets(sheets, PaperSize::A4);
    const double layout = layoutWatch.seconds();
    const benchmark::Stopwatch whole;
    const QByteArray pdf = benchmark::must(sheetsPdf(sheets, PaperSize::A4));
    const double all = whole.seconds();
    const double plain = plainWords(pages);
    std::printf(
        "%d sheets of 8 exercises, %zu pages, %lld kB: %.2f s (layout %.2f s), %.1f times their words alone (%.2f s)\n",
        count, pages.size(), static_cast<long long>(pdf.size() / 1024), all, layout, all / plain, plain);
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();  // as every program does
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication app(argc, argv);
    if (!steelyard::loadBundledFonts()) return 1;
    steelyard::printSheets(argc > 1 ? QByteArray(argv[1]).toInt() : 60);
    return 0;
}
