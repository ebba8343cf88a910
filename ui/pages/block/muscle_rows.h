// The week's sets of each muscle against the band that is wanted: a line from 0, the band as a box on it, what is planned as a tick, the number, and a
// word where it is outside.
#pragma once

#include "ui/pages/block/block_shown.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class MuscleRows final : public QWidget {
    Q_OBJECT

public:
    explicit MuscleRows(QWidget* parent = nullptr);
    void show(BlockShownPtr shown);
    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }
    // "Chest 12.5 sets, 8 to 16 wanted": a row as a screen reader has it.
    [[nodiscard]] QString words(const MuscleTotal& row) const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void paintRow(QPainter& painter, const MuscleTotal& row, QRect line, double most) const;
    [[nodiscard]] QString name(const MuscleTotal& row) const;

    BlockShownPtr m_shown;
    std::vector<MuscleTotal> m_rows;
};

}  // namespace steelyard
