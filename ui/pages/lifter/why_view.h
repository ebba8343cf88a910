// The why view of a line: how the verdict is decided, and the sets that carried it, newest first.
//
//   view->showExplanation(reading, explanation, thresholds);
//   connect(view, &WhyView::sessionLookedAt, this, &LifterPage::showSession);
#pragma once

#include "ui/pages/lifter/why_model.h"

#include <QtWidgets/QWidget>

class QLabel;
class QTableView;

namespace steelyard {

class WhyView final : public QWidget {
    Q_OBJECT

public:
    explicit WhyView(QWidget* parent = nullptr);
    // Until the explanation has come.
    void showWaiting();
    void showExplanation(const LineReading& reading, LineExplanation explanation, const VerdictThresholds& limits);
    void lookAt(int exposure);  // no row for it: the newest
    [[nodiscard]] QTableView* table() const { return m_table; }
    [[nodiscard]] QString decision() const;
    void takeFocus();

Q_SIGNALS:
    void sessionLookedAt(int exposure);  // of the current row
    void sessionWanted(int exposure);    // Enter or a double click

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fitColumns();

    WhyModel* m_model;
    QLabel* m_decision;
    QTableView* m_table;
    QLabel* m_note;
};

}  // namespace steelyard
