// What the week in sight adds up to, always there beside it: sets by muscle, and every limit that is broken, each with where. Enter or a
// click on one goes there.
#pragma once

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

Q_SIGNALS:
    void placeWanted(QDate date, std::optional<std::size_t> slot);

private:
    void fillLimits();

    BlockShownPtr m_shown;
    MuscleRows* m_muscles;
    QScrollArea* m_scroll;
    QLabel* m_head;
    QLabel* m_limitsHead;
    QListWidget* m_limits;
};

}  // namespace steelyard
