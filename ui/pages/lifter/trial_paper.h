// The result of a trial for its lifter: onto a printer, or into a PDF.
//
//   printTrialResult(context, this, {name, shown, today}, [this](const QString& text) { … });
//
// Without a printer the PDF is offered instead.
#pragma once

#include "ui/pages/lifter/trials_reading.h"
#include "ui/shell/context.h"

#include <functional>

class QWidget;

namespace steelyard {

struct TrialResult {
    QString athlete;
    ShownTrial shown;
    QDate today;
};

using SayOfPaper = std::function<void(const QString&)>;

void printTrialResult(const UiContext& context, QWidget* parent, const TrialResult& result, const SayOfPaper& say);
void saveTrialResultPdf(const UiContext& context, QWidget* parent, const TrialResult& result, const SayOfPaper& say);

}  // namespace steelyard
