#include "ui/pages/week/review_paper.h"

#include "core/flags/review_sheet.h"
#include "ui/format/format.h"
#include "ui/print/pdf_writer.h"
#include "ui/print/review_layout.h"
#include "ui/prompt/page_printing.h"
#include "ui/prompt/prompter.h"
#include "ui/shell/review_store.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct ReviewPrintText {
    Q_DECLARE_TR_FUNCTIONS(ReviewPrintText)
};

void askForPdf(const UiContext& context, QWidget* parent, const ReviewSheet& sheet, const SayQuietly& say)
{
    const QString name =
        ReviewPrintText::tr("review %1").arg(sheet.asOf.toString(Qt::ISODate)) + QStringLiteral(".pdf");
    context.prompter.chooseFileToSave(
        parent,
        {ReviewPrintText::tr("Save the review"), name, ReviewPrintText::tr("PDF files (*.pdf)"), QStringLiteral("pdf")},
        [&prompter = context.prompter, parent, sheet, say](const QString& path) {
            const PaperSize paper = usualPaper();
            const auto written =
                writePagesPdf(layOutReview(sheet, paper).pages, paper, ReviewPrintText::tr("Weekly review"), path);
            if (written)
                say(ReviewPrintText::tr("Saved the review of %n lifter(s) in %1", nullptr,
                                        static_cast<int>(sheet.entries.size()))
                        .arg(path));
            else
                prompter.tellError(parent, ReviewPrintText::tr("The review was not saved"), written.error());
        });
}

}  // namespace

void saveReviewPdf(const UiContext& context, QWidget* parent, const std::vector<const AthleteReview*>& shown,
                   const SayQuietly& say)
{
    askForPdf(context, parent, buildReviewSheet(shown, context.reviews.asOf()), say);
}

void printReview(const UiContext& context, QWidget* parent, const std::vector<const AthleteReview*>& shown,
                 const SayQuietly& say)
{
    const ReviewSheet sheet = buildReviewSheet(shown, context.reviews.asOf());
    const auto pages = [sheet](PaperSize paper) { return layOutReview(sheet, paper).pages; };
    const PrintQuestion question{ReviewPrintText::tr("Review of %1").arg(format::date(sheet.asOf)),
                                 pageSize(usualPaper()),
                                 [pages](QPrinter& printer) { return printPages(printer, pages); }};
    if (context.prompter.previewPrint(parent, question)) return;
    context.prompter.ask(
        parent,
        {ReviewPrintText::tr("No printer"), ReviewPrintText::tr("No printer is set up on this machine."),
         ReviewPrintText::tr("The same pages can be saved as a PDF and printed elsewhere."),
         ReviewPrintText::tr("Save as PDF…")},
        [context, parent, sheet, say] { askForPdf(context, parent, sheet, say); });
}

}  // namespace steelyard
