// Beside the rows: what counts as a repetition of the exercise that is being keyed, its plan, and what is to beat; before and
// after the exercises what stands at the head of the sheet.
#pragma once

#include "core/sheets/session_sheet.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

class KeyingSide final : public QWidget {
    Q_OBJECT

public:
    explicit KeyingSide(QWidget* parent = nullptr);
    void showExercise(const SheetExercise& exercise);
    // Absent: there is none for that day.
    void showHead(const std::optional<SessionSheet>& sheet);

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    QLabel* m_name;
    QLabel* m_standard;
    QLabel* m_plan;
};

}  // namespace steelyard
