// What stands above the chart of a line: its name, the verdict with its sentence, and the numbers in a row, each with
// quieter lines below that wrap rather than being cut.
//
//   header->showLine(title, reading, MassUnit::kg);
#pragma once

#include "ui/pages/lifter/line_numbers.h"

#include <QtWidgets/QWidget>

class QLabel;
class QLayout;

namespace steelyard {

class LineHeader final : public QWidget {
    Q_OBJECT

public:
    explicit LineHeader(QWidget* parent = nullptr);
    void showLine(const QString& name, const LineReading& reading, MassUnit unit);

private:
    [[nodiscard]] QLayout* makeNumbers();

    QLabel* m_name;
    QLabel* m_verdict;
    QLabel* m_why;
    std::array<std::array<QLabel*, 3>, kLineNumbers> m_cells{};
};

}  // namespace steelyard
