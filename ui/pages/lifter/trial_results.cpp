#include "ui/pages/lifter/trial_results.h"

#include "ui/charts/panels_chart.h"
#include "ui/charts/trial_course_spec.h"
#include "ui/charts/trial_difference_spec.h"
#include "ui/format/trial_words.h"
#include "ui/widgets/words.h"

#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QStackedWidget>

namespace steelyard {
namespace {

constexpr double kTrialVerdictSize = 1.15;
constexpr int kCourseShare = 5;
constexpr int kDifferenceShare = 3;

}  // namespace

QStringList whyOfTrial(const ShownTrial& shown)
{
    const TrialVerdict& verdict = shown.analysis.verdict;
    QStringList lines(verdict.restsOn.begin(), verdict.restsOn.end());
    lines += verdict.weights;
    lines += verdict.looks;
    lines += QStringList(verdict.deviations.begin(), verdict.deviations.end());
    lines += shown.earlier.sentence;
    lines.removeAll(QString());
    return lines;
}

TrialResults::TrialResults(QWidget* parent)
    : QWidget(parent),
      m_course(new PanelsChart(tr("Outcomes by session"), this)),
      m_differences(new PanelsChart(tr("Differences between the arms"), this)),
      m_verdict(selectableWords(this)),
      m_coach(selectableWords(this)),
      m_lifter(selectableWords(this)),
      m_below(new QStackedWidget(this)),
      m_why(selectableWords(this)),
      m_key(quietWords(this))
{
    QFont bold = m_verdict->font();
    bold.setBold(true);
    bold.setPointSizeF(bold.pointSizeF() * kTrialVerdictSize);
    m_verdict->setFont(bold);
    m_why->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    m_course->setMinimumSize(240, 90);
    m_differences->setMinimumSize(170, 90);
    m_key->setText(
        tr("Hollow: not counted, because another arm was done or the lifter was getting used to it. At the right: the "
           "level of each arm, 90 %. Dotted: drift. Yes counts 10. Y: why."));
    // They take what room there is: their own wish would make a small window scroll.
    for (QWidget* chart : std::initializer_list<QWidget*>{m_course, m_differences})
        chart->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
    auto* drawn = new QWidget(this);
    auto* beside = new QHBoxLayout(drawn);
    beside->setContentsMargins({});
    beside->addWidget(m_course, kCourseShare);
    beside->addWidget(m_differences, kDifferenceShare);
    auto* why = new QScrollArea(this);
    why->setWidget(m_why);
    why->setWidgetResizable(true);
    why->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Ignored);
    why->setFrameShape(QFrame::NoFrame);
    why->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    why->setAccessibleName(tr("What the verdict rests on"));
    m_below->addWidget(drawn);
    m_below->addWidget(why);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(4);
    for (QWidget* row : std::initializer_list<QWidget*>{m_verdict, m_coach, m_lifter}) all->addWidget(row);
    all->addWidget(m_below, 1);
    all->addWidget(m_key);
    connect(m_course, &PanelsChart::selectedStop, this,
            [this](int stop) { Q_EMIT dayChosen(m_course->spec().stops[static_cast<std::size_t>(stop)].exposure); });
}

void TrialResults::show(const ShownTrial& shown)
{
    const TrialAnalysis& analysis = shown.analysis;
    const TrialVerdict& verdict = analysis.verdict;
    m_verdict->setText(format::trialVerdictLine(verdict, analysis.armNames));
    m_coach->setText(verdict.forCoach);
    m_lifter->setText(verdict.forLifter.isEmpty() ? QString() : tr("For the lifter: %1").arg(verdict.forLifter));
    m_lifter->setVisible(!m_lifter->text().isEmpty());
    m_course->setSpec(buildTrialCourse({shown.trial(), analysis.record, &verdict.done, analysis.armNames}, QLocale()));
    m_differences->setSpec(buildTrialDifferences(verdict.done, &verdict.drawn, shown.trial().arms.size(), QLocale()));
    m_why->setText(whyOfTrial(shown).join(u'\n'));
    for (PanelsChart* chart : {m_course, m_differences}) chart->setVisible(!chart->spec().empty());
    m_key->setVisible(!m_course->spec().empty());
}

void TrialResults::toggleWhy()
{
    m_below->setCurrentIndex(1 - m_below->currentIndex());
    if (isWhyShown()) m_below->currentWidget()->setFocus();
}

bool TrialResults::isWhyShown() const
{
    return m_below->currentIndex() == 1;
}

void TrialResults::showDrawn()
{
    m_below->setCurrentIndex(0);
}

void TrialResults::lookAtDay(int day)
{
    const auto& stops = m_course->spec().stops;
    for (std::size_t i = 0; i < stops.size(); ++i)
        if (stops[i].exposure == day && m_course->selected() != static_cast<int>(i))
            m_course->select(static_cast<int>(i));
}

}  // namespace steelyard
