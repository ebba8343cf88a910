#include "ui/pages/floor/floor_papers.h"

#include "core/storage/gym_repository.h"
#include "core/storage/session_reader.h"
#include "ui/format/format.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/week_layout.h"
#include "ui/prompt/page_printing.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct FloorPaperText {
    Q_DECLARE_TR_FUNCTIONS(FloorPaperText)
};

constexpr int kDaysOfWeek = 7;

QString titleOfPaper(const FloorPaper& paper)
{
    return FloorPaperText::tr("Sheets of %1").arg(format::date(paper.date));
}

}  // namespace

Result<FloorDay> readFloorDay(const QString& path, const DaySheetsRequest& day, PaperLayout layout,
                              const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(path));
    FloorDay made;
    STEELYARD_TRY(made.sheets, readDaySheets(*database, day, progress));
    if (layout == PaperLayout::Week) {
        DaySheetsRequest week = day;
        week.from = weekBegin(day.from);
        week.days = kDaysOfWeek;
        week.alsoUnexpected = false;
        STEELYARD_TRY(made.week, readDaySheets(*database, week, progress));
    }
    STEELYARD_TRY(made.gyms, GymRepository(*database).all());
    STEELYARD_TRY(made.keyed, countSetsOn(*database, day.from));
    return made;
}

void printFloorPaper(const UiContext& context, QWidget* parent, const FloorPaper& paper, const SayQuietly& say)
{
    const PrintQuestion question{titleOfPaper(paper), pageSize(paper.size), [paper](QPrinter& printer) {
                                     return printPages(printer, [&](PaperSize size) { return paper.pages(size); });
                                 }};
    if (context.prompter.previewPrint(parent, question)) return;
    context.prompter.ask(parent,
                         {FloorPaperText::tr("No printer"), FloorPaperText::tr("No printer is set up on this machine."),
                          FloorPaperText::tr("The same pages can be saved as a PDF and printed elsewhere."),
                          FloorPaperText::tr("Save as PDF…")},
                         [context, parent, paper, say] { saveFloorPaper(context, parent, paper, say); });
}

void saveFloorPaper(const UiContext& context, QWidget* parent, const FloorPaper& paper, const SayQuietly& say)
{
    const QString name = FloorPaperText::tr("sheets %1").arg(paper.date.toString(Qt::ISODate)) + QStringLiteral(".pdf");
    context.prompter.chooseFileToSave(
        parent,
        {FloorPaperText::tr("Save the sheets"), name, FloorPaperText::tr("PDF files (*.pdf)"), QStringLiteral("pdf")},
        [context, parent, paper, say](const QString& path) {
            const auto written = writePagesPdf(paper.pages(paper.size), paper.size, titleOfPaper(paper), path);
            if (written)
                say(FloorPaperText::tr("Saved in %1").arg(path));
            else
                context.prompter.tellError(parent, FloorPaperText::tr("The sheets were not saved"), written.error());
        });
}

}  // namespace steelyard
