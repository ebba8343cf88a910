#include "ui/pages/lifter/trial_paper.h"

#include "ui/print/pdf_writer.h"
#include "ui/print/trial_layout.h"
#include "ui/prompt/page_printing.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct TrialPrintText {
    Q_DECLARE_TR_FUNCTIONS(TrialPrintText)
};

std::vector<SheetPage> trialPages(const TrialResult& result, PaperSize paper)
{
    const TrialSheet sheet{result.athlete, result.shown.trial(), result.shown.analysis, result.today};
    return layOutTrial(sheet, paper).pages;
}

}  // namespace

void saveTrialResultPdf(const UiContext& context, QWidget* parent, const TrialResult& result, const SayOfPaper& say)
{
    const QString name = TrialPrintText::tr("trial %1 %2").arg(result.athlete, result.today.toString(Qt::ISODate))
                         + QStringLiteral(".pdf");
    context.prompter.chooseFileToSave(
        parent,
        {TrialPrintText::tr("Save the result"), name, TrialPrintText::tr("PDF files (*.pdf)"), QStringLiteral("pdf")},
        [&prompter = context.prompter, parent, result, say](const QString& path) {
            const PaperSize paper = usualPaper();
            const auto written =
                writePagesPdf(trialPages(result, paper), paper, TrialPrintText::tr("Result of a trial"), path);
            if (written)
                say(TrialPrintText::tr("Saved the result in %1").arg(path));
            else
                prompter.tellError(parent, TrialPrintText::tr("The result was not saved"), written.error());
        });
}

void printTrialResult(const UiContext& context, QWidget* parent, const TrialResult& result, const SayOfPaper& say)
{
    const auto pages = [result](PaperSize paper) { return trialPages(result, paper); };
    const PrintQuestion question{TrialPrintText::tr("Trial: %1").arg(result.shown.trial().question),
                                 pageSize(usualPaper()),
                                 [pages](QPrinter& printer) { return printPages(printer, pages); }};
    if (context.prompter.previewPrint(parent, question)) return;
    context.prompter.ask(parent,
                         {TrialPrintText::tr("No printer"), TrialPrintText::tr("No printer is set up on this machine."),
                          TrialPrintText::tr("The same page can be saved as a PDF and printed elsewhere."),
                          TrialPrintText::tr("Save as PDF…")},
                         [context, parent, result, say] { saveTrialResultPdf(context, parent, result, say); });
}

}  // namespace steelyard
