// A schedule that is being designed, on the calendar: a column a week, a row a weekday, the arm's letter on its day
// (trial_cells.h). Its accessible description lists the days.
#pragma once

#include "ui/charts/trial_cells.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class TrialCalendarPicture final : public QWidget {
    Q_OBJECT

public:
    explicit TrialCalendarPicture(QWidget* parent = nullptr);
    void setCells(std::vector<TrialCell> cells);
    [[nodiscard]] const std::vector<TrialCell>& cells() const { return m_cells; }
    // Where a day stands; null: it lies outside the weeks in sight.
    [[nodiscard]] QRectF rectOf(QDate day) const;
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] QDate firstMonday() const;
    [[nodiscard]] int weeks() const;
    [[nodiscard]] double columnWidth() const;
    [[nodiscard]] double rowSide() const;
    [[nodiscard]] double namesWidth() const;
    void paintHeads(QPainter& painter) const;

    std::vector<TrialCell> m_cells;
};

}  // namespace steelyard
