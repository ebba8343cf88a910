// One training day of the week in sight as a list with a column for each part of the dose. Enter types the cell where the cursor is; on the
// empty line it asks for a lift. Shift chooses several rows. With Ctrl, Left and Right go to the training day before and after.
#pragma once

#include "ui/pages/block/block_places_view.h"

namespace steelyard {

class BlockDayModel;

class BlockDayList final : public BlockPlacesView {
    Q_OBJECT

public:
    explicit BlockDayList(QWidget* parent = nullptr);

    void show(BlockShownPtr shown) override;
    [[nodiscard]] PlanCursor cursor() const override;
    [[nodiscard]] PlanPlaces chosen() const override;
    // Shows the day of that date.
    void goTo(QDate date, std::optional<std::size_t> slot) override;
    bool startTyping() override;

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;

private:
    void activate();
    // To the training day of the week before or after.
    void stepDay(int by);

    BlockDayModel* m_model;
};

}  // namespace steelyard
