// What the week in sight adds up to, always there beside it: what was done of its plan, sets by muscle, every limit that is
// broken, each with where, and how the lift under the cursor goes on. Enter or a click on a limit goes there.
#pragma once

#include "core/planning/slot_load.h"
#include "ui/pages/block/block_shown.h"

#include <QtWidgets/QWidget>

class QLabel;
class QListWidget;
class QScrollArea;

namespace steelyard {

class MuscleRows;

class BlockSide final : public QWidget {
    Q_OBJECT

public:
    explicit BlockSide(QWidget* parent = nullptr);
    void show(BlockShownPtr shown);
    // Of the slot under the cursor; `today` is what the record says of it now, null while that isn't known.
    void showSlot(const Slot* slot, const SlotLoad* today);

Q_SIGNALS:
    void placeWanted(QDate date, std::optional<std::size_t> slot);

private:
    void fillLimits();
    void fillDone();

    BlockShownPtr m_shown;
    QLabel* m_done;
    QLabel* m_goesOn;
    MuscleRows* m_muscles;
    QScrollArea* m_scroll;
    QLabel* m_head;
    QLabel* m_limitsHead;
    QListWidget* m_limits;
};

}  // namespace steelyard
