// What a trial says: the verdict as a word, a shape and a number, its sentences for the coach and for the lifter, and below them either
// the sessions and differences drawn, or, on request, all that the verdict rests on.
//
//   results->show(shownTrial);     results->toggleWhy();
#pragma once

#include "ui/pages/lifter/trials_reading.h"

#include <QtWidgets/QWidget>

class QLabel;
class QStackedWidget;

namespace steelyard {

class PanelsChart;

class TrialResults final : public QWidget {
    Q_OBJECT

public:
    explicit TrialResults(QWidget* parent = nullptr);
    void show(const ShownTrial& shown);
    void toggleWhy();
    [[nodiscard]] bool isWhyShown() const;
    void showDrawn();
    void lookAtDay(int day);
    [[nodiscard]] PanelsChart* course() const { return m_course; }
    [[nodiscard]] PanelsChart* differences() const { return m_differences; }

Q_SIGNALS:
    void dayChosen(int day);

private:
    PanelsChart* m_course;
    PanelsChart* m_differences;
    QLabel* m_verdict;
    QLabel* m_coach;
    QLabel* m_lifter;
    QStackedWidget* m_below;
    QLabel* m_why;
    QLabel* m_key;
};

// All that the verdict rests on, a sentence a line.
[[nodiscard]] QStringList whyOfTrial(const ShownTrial& shown);

}  // namespace steelyard
