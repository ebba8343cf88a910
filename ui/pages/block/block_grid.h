// The week in sight: its seven days side by side, the slots of each below each other.
//
// Keys: arrows walk the slots and the training days, with Ctrl also the days without training; Shift chooses several. Enter types the dose, on
// an empty line it asks for a lift. With the mouse slots are carried to another day or place; with Ctrl they are copied.
#pragma once

#include "ui/pages/block/block_places_view.h"

namespace steelyard {

class BlockGridModel;
class BlockSlotDelegate;

class BlockGrid final : public BlockPlacesView {
    Q_OBJECT

public:
    explicit BlockGrid(QWidget* parent = nullptr);

    void show(BlockShownPtr shown) override;
    [[nodiscard]] PlanCursor cursor() const override;
    [[nodiscard]] PlanPlaces chosen() const override;
    void goTo(QDate date, std::optional<std::size_t> slot) override;
    bool startTyping() override;

protected:
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;

private:
    // A press on a slot that may become carrying it.
    struct Carry {
        QPoint pressed;
        QModelIndex from;
        bool begun = false;
        bool wasChosen = false;
        QPoint at;
    };
    // Where what is carried would go: the column, and the row before which it lands.
    struct Landing {
        int column = 0;
        int row = 0;
    };
    void fitColumns();
    void activate();
    [[nodiscard]] Landing landingAt(QPoint position) const;
    [[nodiscard]] bool isTraining(int column) const;

    BlockGridModel* m_model;
    BlockSlotDelegate* m_delegate;
    std::optional<Carry> m_carry;
};

}  // namespace steelyard
