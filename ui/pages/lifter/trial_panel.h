// One trial: its question and arms, the strip of its sessions, where it stands, what hurts, and its results, which are hidden while it runs
// until somebody looks.
//
//   panel->show(shownTrial, isRevealed, today);
//   connect(panel, &TrialPanel::sessionOpened, …);        panel->chosenDay()
//
// Discomfort is never hidden: who is out and the ratings by joint stand there from the first session.
#pragma once

#include "ui/pages/lifter/trials_reading.h"

#include <QtWidgets/QWidget>

class QLabel;
class QStackedWidget;

namespace steelyard {

class ElidedLabel;
class PanelsChart;
class TrialResults;
class TrialStrip;

class TrialPanel final : public QWidget {
    Q_OBJECT

public:
    explicit TrialPanel(QWidget* parent = nullptr);
    void show(const ShownTrial& shown, bool revealed, QDate today);
    [[nodiscard]] TrialStrip* strip() const { return m_strip; }
    [[nodiscard]] TrialResults* results() const { return m_results; }
    [[nodiscard]] bool isRevealed() const;
    // Place in Trial::days; -1: none.
    [[nodiscard]] int chosenDay() const;
    void takeFocus();
    // What is drawn now; null: nothing is.
    [[nodiscard]] QWidget* drawing() const;
    [[nodiscard]] PanelsChart* discomfort() const { return m_discomfort; }

Q_SIGNALS:
    void dayChosen(int day);
    void dayOpened(int day);

private:
    void showDay(int day);
    [[nodiscard]] QWidget* makeHidden();

    bool m_revealed = false;
    ElidedLabel* m_question;
    ElidedLabel* m_armsLine;
    TrialStrip* m_strip;
    QLabel* m_day;
    QLabel* m_standing;
    QLabel* m_missing;
    QLabel* m_veto;
    QStackedWidget* m_outcome;
    PanelsChart* m_discomfort;
    TrialResults* m_results;
};

}  // namespace steelyard
