#include "ui/pages/lifter/trial_panel.h"

#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_course_spec.h"
#include "ui/charts/trial_strip.h"
#include "ui/format/trial_words.h"
#include "ui/pages/lifter/trial_results.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr double kQuestionSize = 1.15;

}  // namespace

TrialPanel::TrialPanel(QWidget* parent)
    : QWidget(parent),
      m_question(new ElidedLabel(this)),
      m_armsLine(new ElidedLabel(this)),
      m_strip(new TrialStrip(this)),
      m_day(quietWords(this)),
      m_standing(plainWords(this)),
      m_missing(plainWords(this)),
      m_veto(plainWords(this)),
      m_outcome(new QStackedWidget(this)),
      m_discomfort(new PanelsChart(tr("Discomfort by session"), this)),
      m_results(new TrialResults(this))
{
    QFont bold = m_question->font();
    bold.setBold(true);
    bold.setPointSizeF(bold.pointSizeF() * kQuestionSize);
    m_question->setFont(bold);
    m_outcome->addWidget(makeHidden());
    m_outcome->addWidget(m_results);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(4);
    for (QWidget* row :
         std::initializer_list<QWidget*>{m_question, m_armsLine, m_strip, m_day, m_standing, m_missing, m_veto})
        all->addWidget(row);
    all->addWidget(m_outcome, 1);
    setFocusProxy(m_strip);
    connect(m_strip, &TrialStrip::cellChosen, this, &TrialPanel::showDay);
    connect(m_strip, &TrialStrip::cellOpened, this, &TrialPanel::dayOpened);
    connect(m_results, &TrialResults::dayChosen, m_strip, &TrialStrip::choose);
}

QWidget* TrialPanel::makeHidden()
{
    auto* hidden = new QWidget(this);
    auto* words = quietWords(hidden);
    words->setText(
        tr("Results stay hidden while the trial runs: who knows who is ahead trains and rates otherwise. L shows what "
           "there is so far; that somebody looked is then written down and said in the verdict. Discomfort is never "
           "hidden."));
    m_discomfort->setMinimumSize(240, 80);
    m_discomfort->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
    auto* all = new QVBoxLayout(hidden);
    all->setContentsMargins({});
    all->addWidget(words);
    all->addWidget(m_discomfort, 1);
    all->addStretch(0);
    return hidden;
}

void TrialPanel::show(const ShownTrial& shown, bool revealed, QDate today)
{
    const Trial& trial = shown.trial();
    const TrialAnalysis& analysis = shown.analysis;
    m_question->setText(trial.question);
    QStringList arms;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm) arms += format::armTitle(analysis.armNames, arm);
    m_armsLine->setText(arms.join(QStringLiteral("   ")) + QStringLiteral("  ·  ")
                        + format::trialState(trial, analysis.armNames));
    auto cells = trialCells(trial, analysis.record, analysis.armNames, today);
    int next = -1;
    for (std::size_t i = 0; i < cells.size() && next < 0; ++i)
        if (cells[i].state == TrialCellState::ToCome) next = static_cast<int>(i);
    m_strip->setCells(std::move(cells), next);
    m_standing->setText(format::standingWords(trial, analysis.standing, analysis.armNames));
    const QString missing = format::missingWords(analysis.standing);
    m_missing->setText(missing.isEmpty() ? missing : missing + u' ' + tr("G goes to the chosen session."));
    m_missing->setVisible(!missing.isEmpty());
    QStringList vetoes;
    for (const VetoedArm& veto : analysis.standing.out) vetoes += format::vetoWords(veto, trial, analysis.armNames);
    if (!vetoes.empty()) vetoes += format::painCaution();
    m_veto->setText(vetoes.join(u' '));
    m_veto->setVisible(!vetoes.empty());
    QPalette warm = palette();
    warm.setColor(QPalette::WindowText, themeColours(palette()).warm);
    m_veto->setPalette(warm);
    m_revealed = revealed;
    m_discomfort->setSpec(revealed
                              ? PanelsSpec()
                              : buildTrialDiscomfort({trial, analysis.record, nullptr, analysis.armNames}, QLocale()));
    m_discomfort->setVisible(!m_discomfort->spec().empty());
    if (revealed) m_results->show(shown);
    m_outcome->setCurrentIndex(revealed ? 1 : 0);
    showDay(m_strip->chosen());
}

void TrialPanel::showDay(int day)
{
    const auto& cells = m_strip->cells();
    const bool there = day >= 0 && day < static_cast<int>(cells.size());
    m_day->setText(there ? cells[static_cast<std::size_t>(day)].words : QString());
    if (m_revealed) m_results->lookAtDay(day);
    Q_EMIT dayChosen(day);
}

bool TrialPanel::isRevealed() const
{
    return m_revealed;
}

int TrialPanel::chosenDay() const
{
    return m_strip->chosen();
}

void TrialPanel::takeFocus()
{
    m_strip->setFocus();
}

QWidget* TrialPanel::drawing() const
{
    if (m_revealed) return m_results->course()->spec().empty() ? nullptr : m_results->course();
    return m_discomfort->spec().empty() ? nullptr : m_discomfort;
}

}  // namespace steelyard
