// One exercise of the sheet on screen: its heading, its rows, and the ratings that follow the last set.
//
//   auto* block = new KeyingBlock(desk, 0, parent);
//   block->show();                                     // what the desk has now; the number of rows is as when it was made
//   block->row(2)->edit()->setFocus();
#pragma once

#include "core/book/keying_desk.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

class ElidedLabel;
class KeyingRowWidget;
class RatingRow;

class KeyingBlock final : public QWidget {
    Q_OBJECT

public:
    KeyingBlock(const KeyingDesk& desk, std::size_t exercise, QWidget* parent = nullptr);
    void showDesk();
    // Whose rows these were when they were made.
    [[nodiscard]] const LiftLine& lift() const { return m_lift; }
    [[nodiscard]] std::size_t exercise() const { return m_exercise; }
    [[nodiscard]] std::size_t rowCount() const { return m_rows.size(); }
    [[nodiscard]] KeyingRowWidget* row(std::size_t row) const { return m_rows[row]; }
    // Null where a later exercise of the same lift is rated.
    [[nodiscard]] RatingRow* ratings() const { return m_ratings; }

private:
    const KeyingDesk& m_desk;
    std::size_t m_exercise;
    LiftLine m_lift;
    std::vector<KeyingRowWidget*> m_rows;
    RatingRow* m_ratings = nullptr;
};

}  // namespace steelyard
