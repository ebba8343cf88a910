// The lift lines of the lifter under the flags: a table, and on request the reason for the verdict of the chosen line.
#pragma once

#include "ui/models/lines_model.h"

#include <QtWidgets/QWidget>

class QLabel;
class QSortFilterProxyModel;
class QTableView;

namespace steelyard {

class LinesPanel : public QWidget {
    Q_OBJECT

public:
    explicit LinesPanel(QWidget* parent = nullptr);
    void setLines(const std::vector<LineReview>& lines, MassUnit unit);
    [[nodiscard]] bool hasLines() const { return m_model->rowCount() > 0; }
    void choose(Id<LiftLine> line);
    [[nodiscard]] std::optional<Id<LiftLine>> chosen() const;
    void takeFocus();
    [[nodiscard]] bool tableHasFocus() const;
    void toggleWhy();
    [[nodiscard]] bool isWhyShown() const { return m_whyShown; }

Q_SIGNALS:
    void lineOpened(steelyard::Id<steelyard::LiftLine> line);

private:
    void showWhy();

    LinesModel* m_model;
    QSortFilterProxyModel* m_sorted;
    QLabel* m_title;
    QTableView* m_table;
    QLabel* m_why;
    bool m_whyShown = false;
};

}  // namespace steelyard
