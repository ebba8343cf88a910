// How often each kind of arm was preferred over the whole roster, read in the background: for ideas what to try, never a verdict.
//
//   wins->read(TrialFactor::Grip, today);      connect(wins, &TrialWins::changed, …);
//
// Shows the factor asked for where a trial of it has ended, else another one.
#pragma once

#include "core/trials/roster_wins.h"
#include "ui/jobs/job.h"
#include "ui/pages/lifter/trials_reading.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

class PanelsChart;

class TrialWins final : public QWidget {
    Q_OBJECT

public:
    explicit TrialWins(const UiContext& context, QWidget* parent = nullptr);
    ~TrialWins() override;
    void read(TrialFactor factor, QDate today);
    void stop();
    void takeFocus();
    [[nodiscard]] PanelsChart* chart() const { return m_chart; }

Q_SIGNALS:
    void changed();

private:
    void show(const std::vector<FactorWins>& all, TrialFactor factor);

    UiContext m_context;
    JobHandle m_job;
    PanelsChart* m_chart;
    QLabel* m_words;
};

}  // namespace steelyard
