// Where the cursor is in the plan and what is chosen, whichever way the week is shown: as columns of days, or one day as a list.
//
//   view->show(shown);   view->chosen();   view->cursor().date;
//
// A view says what was wanted; the page does it.
#pragma once

#include "ui/pages/block/block_shown.h"

#include <QtWidgets/QTableView>

namespace steelyard {

struct PlanCursor {
    QDate date;                     // invalid: nothing is there
    std::optional<PlanPlace> slot;  // absent: an empty line
};

class BlockPlacesView : public QTableView {
    Q_OBJECT

public:
    using QTableView::QTableView;

    virtual void show(BlockShownPtr shown) = 0;
    [[nodiscard]] virtual PlanCursor cursor() const = 0;
    // Slots, in the order of the plan.
    [[nodiscard]] virtual PlanPlaces chosen() const = 0;
    virtual void goTo(QDate date, std::optional<std::size_t> slot) = 0;
    // Typing in place; false: there is nothing to type.
    virtual bool startTyping() = 0;
    [[nodiscard]] bool isTyping() const { return state() == EditingState; }

Q_SIGNALS:
    void cursorMoved();
    // Enter on an empty line of a training day.
    void addWanted();
    void doseTyped(steelyard::PlanPlace place, steelyard::Slot slot);
    // What is typed can't be read, or can again (empty).
    void typingSaid(const QString& problem);
    void typingEnded();
    // Carried with the mouse: so many days on, before that slot.
    void carried(int days, std::size_t before, bool copy);
};

}  // namespace steelyard
