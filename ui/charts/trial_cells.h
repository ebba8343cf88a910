// The sessions of a trial as cells in a row: which arm, what became of it. A value, and how one cell is painted on screen.
//
//   const auto cells = trialCells(trial, record, armNames, today);
//   paintTrialCell(painter, rect, cells[0], themeColours(palette()));
//
// Told apart by letter and shape alone: filled is done, an outline is to come, crossed out is missed, a small letter in the
// corner is the drawn arm where another one was done, hatched is getting used to it, without a frame was never held.
// A notch in the lower corner marks a note. Pure; no failures.
#pragma once

#include "core/trials/trial_record.h"
#include "ui/shell/theme.h"

#include <QtCore/QRectF>

class QPainter;

namespace steelyard {

enum class TrialCellState { ToCome, Done, OtherArm, Missed, NeverHeld };

struct TrialCell {
    QDate date;
    int block = 0;  // 0: getting used to it
    std::size_t arm = 0;
    std::optional<std::size_t> done;  // the arm that was trained
    TrialCellState state = TrialCellState::ToCome;
    bool isToday = false;
    bool hasNote = false;
    QString words;  // the whole of it, for people
    friend bool operator==(const TrialCell&, const TrialCell&) = default;

    // The letter that stands in it: of the arm that was trained, else of the drawn one.
    [[nodiscard]] QString letter() const { return armLetter(done.value_or(arm)); }
};

// One for every day of the trial, in its order.
[[nodiscard]] std::vector<TrialCell> trialCells(const Trial&, const TrialRecord&, const std::vector<QString>& armNames,
                                                QDate today);
// Of a schedule that isn't trained yet.
[[nodiscard]] std::vector<TrialCell> plannedCells(const Trial&, const std::vector<QString>& armNames, QDate today);
[[nodiscard]] QString trialStateWord(const TrialCell&);
void paintTrialCell(QPainter&, const QRectF&, const TrialCell&, const ThemeColours&);

}  // namespace steelyard
