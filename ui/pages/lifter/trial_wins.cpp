#include "ui/pages/lifter/trial_wins.h"

#include "core/book/book.h"
#include "core/trials/arm_differences.h"
#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_wins_spec.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {

TrialWins::TrialWins(const UiContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_chart(new PanelsChart(tr("What was preferred over the roster"), this)),
      m_words(quietWords(this))
{
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_chart, 1);
    all->addWidget(m_words);
    m_chart->hide();
}

TrialWins::~TrialWins()
{
    m_job.cancel();
}

void TrialWins::stop()
{
    m_job.cancel();
}

void TrialWins::takeFocus()
{
    setFocus();
}

void TrialWins::read(TrialFactor factor, QDate today)
{
    m_job.cancel();
    m_chart->hide();
    m_words->setText(tr("Reading the roster’s trials…"));
    m_job = m_context.jobs.run(
        this, tr("Reading the roster’s trials"),
        [path = m_context.book.path(), today](const Progress& progress) {
            return readRosterWins(path, today, progress);
        },
        [this, factor](Result<std::vector<FactorWins>> wins) {
            if (wins) return show(*wins, factor);
            m_words->setText(wins.error().what);
        });
}

void TrialWins::show(const std::vector<FactorWins>& all, TrialFactor factor)
{
    const auto found = std::ranges::find(all, factor, &FactorWins::factor);
    const auto shown = found != all.end() ? found : all.begin();
    m_chart->setSpec(shown == all.end() ? PanelsSpec() : buildTrialWins(shown->wins, QLocale()));
    m_chart->setVisible(shown != all.end());
    m_words->setText(
        shown == all.end() ? tr(
            "No trial of the roster has ended that tells kinds of arms apart. Here will stand how often each kind was "
            "preferred. V or Escape: back.")
                           : tr("Ended trials of the whole roster that differed in: %1. With few trials the intervals "
                                "are wide. What one lifter "
                                "prefers doesn’t bind the next: this is for ideas what to try. V or Escape: back.")
                                 .arg(factorName(shown->factor)));
    Q_EMIT changed();
}

}  // namespace steelyard
