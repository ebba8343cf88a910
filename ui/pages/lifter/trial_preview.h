// What a design comes to, beside its form: how much such a trial can find, the sessions on the calendar, and what the days of the
// block become.
//
//   preview->show(trial, proposeTrial(…), names, today);
#pragma once

#include "core/planning/propose_trial.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

class PanelsChart;
class TrialCalendarPicture;

class TrialPreview final : public QWidget {
    Q_OBJECT

public:
    explicit TrialPreview(QWidget* parent = nullptr);
    void show(const Trial& design, const Result<ProposedTrial>& proposed, const std::vector<QString>& armNames,
              QDate today);
    [[nodiscard]] TrialCalendarPicture* calendar() const { return m_calendar; }
    [[nodiscard]] PanelsChart* power() const { return m_power; }

private:
    PanelsChart* m_power;
    QLabel* m_finds;
    TrialCalendarPicture* m_calendar;
    QLabel* m_plan;
};

// "12 sessions from Mon 8 Mar to Thu 15 Apr. 10 take their place in the block; 2 stand in no block: print their sheet…"
[[nodiscard]] QString laidWords(const ProposedTrial&);

}  // namespace steelyard
