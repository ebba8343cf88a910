// The result of a trial for the lifter who was in it: one page in plain words, with the sessions as a strip and the arms' levels drawn,
// in millimetres. Painted like a sheet (sheet_painter.h, pdf_writer.h).
//
//   const SheetLayout layout = layOutTrial({name, trial, analysis, today}, PaperSize::A4);     // after loadBundledFonts()
//
// Invariants: one page; nothing outside the margins of sheet_layout.h; every text's ink fits its cell; black on white with pale greys;
// letters and shapes tell the arms apart. Where an arm hurt, the caution stands above everything else that is said.
#pragma once

#include "core/trials/trial_analysis.h"
#include "ui/print/sheet_layout.h"

namespace steelyard {

struct TrialSheet {
    QString athlete;
    const Trial& trial;
    const TrialAnalysis& analysis;
    QDate today;
};

[[nodiscard]] SheetLayout layOutTrial(const TrialSheet& sheet, PaperSize paper);

}  // namespace steelyard
