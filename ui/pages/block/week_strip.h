// All weeks of the block in a row: number, first day, kind, sets, and how many limits are broken; of those that
// have passed what was done of them. The one in sight is underlined; those that
// have passed stand back. A click chooses a week.
#pragma once

#include "ui/pages/block/block_shown.h"

#include <QtWidgets/QWidget>

namespace steelyard {

class WeekStrip final : public QWidget {
    Q_OBJECT

public:
    explicit WeekStrip(QWidget* parent = nullptr);
    void show(BlockShownPtr shown);
    [[nodiscard]] QSize sizeHint() const override;
    // Of a week, for tests and for the mouse.
    [[nodiscard]] QRect rectOf(std::size_t week) const;

Q_SIGNALS:
    void weekChosen(std::size_t week);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    bool event(QEvent* event) override;

private:
    [[nodiscard]] std::optional<std::size_t> weekAt(QPoint position) const;
    [[nodiscard]] int brokenIn(std::size_t week) const;
    void paintWeek(QPainter& painter, std::size_t week) const;

    BlockShownPtr m_shown;
};

}  // namespace steelyard
