#include "ui/pages/lifter/trial_preview.h"

#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_calendar.h"
#include "ui/charts/trial_power_spec.h"
#include "ui/format/plan_words.h"
#include "ui/widgets/words.h"

#include <QtCore/QCoreApplication>
#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

struct TrialPreviewText {
    Q_DECLARE_TR_FUNCTIONS(TrialPreviewText)
};

constexpr int kPowerHeight = 170;

}  // namespace

TrialPreview::TrialPreview(QWidget* parent)
    : QWidget(parent),
      m_power(new PanelsChart(tr("What the trial can find"), this)),
      m_finds(plainWords(this)),
      m_calendar(new TrialCalendarPicture(this)),
      m_plan(plainWords(this))
{
    m_power->setMinimumSize(200, 90);
    m_power->setMaximumHeight(kPowerHeight);
    m_power->setFocusPolicy(Qt::ClickFocus);  // Tab goes through the form
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(6);
    all->addWidget(m_power, 1);
    all->addWidget(m_finds);
    all->addWidget(m_calendar);
    all->addWidget(m_plan);
    all->addStretch(0);
}

QString laidWords(const ProposedTrial& proposed)
{
    const auto count = [](const std::vector<QDate>& days) { return static_cast<int>(days.size()); };
    const auto& days = proposed.trial.days;
    QString words = TrialPreviewText::tr("%n session(s), %1 to %2.", nullptr, static_cast<int>(days.size()))
                        .arg(format::shortDay(days.front().date), format::shortDay(days.back().date));
    const LaidTrial& laid = proposed.laid;
    if (!laid.laid.empty())
        words +=
            u' '
            + TrialPreviewText::tr("%n session(s) in the exercise’s place in the block.", nullptr, count(laid.laid));
    if (const int outside = count(laid.outside) + count(laid.noTraining) + count(laid.daysOff); outside > 0)
        words += u' '
                 + TrialPreviewText::tr(
                     "%n session(s) on no planned day: the sheet of the day asks for the arm all the same.", nullptr,
                     outside);
    if (!laid.easier.empty())
        words +=
            u' '
            + TrialPreviewText::tr("%n session(s) in an easier or a test week, with the trial’s sets all the same.",
                                   nullptr, count(laid.easier));
    return words;
}

void TrialPreview::show(const Trial& design, const Result<ProposedTrial>& proposed,
                        const std::vector<QString>& armNames, QDate today)
{
    const TrialDesign sizes{design.arms.size(), design.blocks};
    m_power->setSpec(buildTrialPower(sizes, QLocale()));
    m_finds->setText(powerSentence(sizes));
    m_calendar->setVisible(proposed.has_value());
    m_calendar->setCells(proposed ? plannedCells(proposed->trial, armNames, today) : std::vector<TrialCell>());
    m_plan->setText(proposed ? laidWords(*proposed) : QString());
}

}  // namespace steelyard
