// The schedule of a trial as a strip of cells (trial_cells.h), blocks set apart and numbered, today with a mark above it. One cell
// is chosen, and the keyboard walks along.
//
//   strip->setCells(trialCells(trial, record, names, today));
//   connect(strip, &TrialStrip::cellChosen, this, [](int day) { ... });
//
// Keys: Left, Right, Home, End, Up and Down by rows; Enter opens. Its accessible description says the chosen session in words.
#pragma once

#include "ui/charts/trial_cells.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class TrialStrip final : public QWidget {
    Q_OBJECT

public:
    explicit TrialStrip(QWidget* parent = nullptr);
    // Keeps the choice where there is such a cell, else chooses `otherwise`; -1: the last one.
    void setCells(std::vector<TrialCell> cells, int otherwise = -1);
    [[nodiscard]] const std::vector<TrialCell>& cells() const { return m_cells; }
    [[nodiscard]] int chosen() const { return m_chosen; }  // -1: there is none
    void choose(int cell);
    // For tests and the mouse; without the room around it.
    [[nodiscard]] QRectF rectOf(int cell) const;
    [[nodiscard]] QSize sizeHint() const override;

Q_SIGNALS:
    void cellChosen(int cell);
    void cellOpened(int cell);

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

private:
    void layOut();
    [[nodiscard]] double cellSide() const;
    [[nodiscard]] double rowHeight() const;
    [[nodiscard]] int cellAt(QPointF position) const;
    // The cell nearest below (+1) or above (-1).
    [[nodiscard]] int inRow(int by) const;
    void paintBlockNumbers(QPainter& painter) const;

    std::vector<TrialCell> m_cells;
    std::vector<QRectF> m_places;
    int m_chosen = -1;
};

}  // namespace steelyard
