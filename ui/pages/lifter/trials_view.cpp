#include "ui/pages/lifter/trials_view.h"

#include "core/book/book.h"
#include "ui/charts/panels_chart.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/format/trial_words.h"
#include "ui/pages/lifter/trial_draft.h"
#include "ui/pages/lifter/trial_form.h"
#include "ui/pages/lifter/trial_panel.h"
#include "ui/pages/lifter/trial_paper.h"
#include "ui/pages/lifter/trial_results.h"
#include "ui/pages/lifter/trial_wins.h"
#include "ui/widgets/asked_line.h"
#include "ui/widgets/words.h"

#include <QtCore/QRandomGenerator>
#include <QtGui/QKeyEvent>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QScrollArea>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kTrialRowsInSight = 3;
constexpr quint32 kSeedsBelow = 1'000'000;  // short enough to be written down

std::uint64_t newSeed()
{
    return QRandomGenerator::global()->bounded(1U, kSeedsBelow);
}

bool isOneOf(const QString& action, std::initializer_list<const char*> names)
{
    return std::ranges::any_of(names, [&](const char* name) {
        return action == QLatin1StringView("lifter.trial.") + QLatin1StringView(name);
    });
}

}  // namespace

TrialsView::TrialsView(const UiContext& context, QWidget* parent) : LifterView(parent), m_context(context)
{
    build();
    connect(m_list, &QListWidget::currentRowChanged, this, [this](int row) {
        if (!m_reading || row < 0 || row >= std::ssize(m_reading->trials)) return;
        m_wanted = m_reading->trials[static_cast<std::size_t>(row)].row.id;
        showChosen();
    });
    connect(m_list, &QListWidget::activated, m_panel, &TrialPanel::takeFocus);
    connect(m_panel, &TrialPanel::dayOpened, this, &TrialsView::goToKeying);
    connect(m_panel, &TrialPanel::dayChosen, this, &LifterView::canChanged);
    connect(m_form, &TrialForm::left, this, &TrialsView::leaveForm);
    connect(m_form, &TrialForm::accepted, this, &TrialsView::start);
    connect(m_question, &AskedLine::left, this, &TrialsView::takeFocus);
    connect(m_wins, &TrialWins::changed, this, &LifterView::changed);
}

TrialsView::~TrialsView()
{
    m_job.cancel();
}

void TrialsView::build()
{
    m_list = new QListWidget(this);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setAccessibleName(tr("Trials of this lifter"));
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    m_words = quietWords(this);
    m_words->setAlignment(Qt::AlignCenter);
    m_words->setMargin(40);
    m_panel = new TrialPanel(this);
    m_form = new TrialForm(&newSeed, this);
    m_wins = new TrialWins(m_context, this);
    m_states = new QStackedWidget(this);
    // What is chosen must not widen the window; a small one scrolls.
    m_panelArea = new QScrollArea(this);
    m_panelArea->setWidget(m_panel);
    m_panelArea->setWidgetResizable(true);
    m_panelArea->setFrameShape(QFrame::NoFrame);
    m_panelArea->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_panelArea->setFocusPolicy(Qt::NoFocus);
    for (QWidget* state : std::initializer_list<QWidget*>{m_words, m_panelArea, m_form, m_wins})
        m_states->addWidget(state);
    m_question = new AskedLine(this);
    m_problem = plainWords(this);
    m_problem->hide();
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->setSpacing(6);
    all->addWidget(m_list);
    all->addWidget(m_states, 1);
    all->addWidget(m_question);
    all->addWidget(m_problem);
}

bool TrialsView::isInFront(const QWidget* widget) const
{
    return m_states->currentWidget() == widget;
}

bool TrialsView::isDesigning() const
{
    return isInFront(m_form);
}

void TrialsView::show(const ShownLine& shown)
{
    const bool isSame = m_shown.lifter && m_shown.lifter == shown.lifter;
    const bool sameAthlete = m_shown.lifter && m_shown.lifter->log.athlete.id == shown.lifter->log.athlete.id;
    m_shown = shown;
    if (isSame && (m_reading || m_job.isRunning())) return;
    if (!sameAthlete) {
        m_wanted.reset();
        m_looked.clear();
        m_question->hide();
        m_reading.reset();
        if (isDesigning()) m_states->setCurrentWidget(m_words);
    }
    read();
}

void TrialsView::leave()
{
    m_job.cancel();
    m_wins->stop();
    ++m_asked;
    m_reading.reset();
    m_looked.clear();
    m_wantsForm = false;
    m_question->hide();
    m_problem->hide();
    if (!isInFront(m_words)) m_states->setCurrentWidget(m_words);
}

void TrialsView::read()
{
    m_job.cancel();
    const int asked = ++m_asked;
    if (!m_reading) say(tr("Reading the trials…"));
    m_job = m_context.jobs.run(
        this, tr("Reading a lifter’s trials"),
        [path = m_context.book.path(), athlete = m_shown.lifter->log.athlete.id,
         today = m_shown.today](const Progress& progress) { return readShownTrials(path, athlete, today, progress); },
        [this, asked](Result<TrialsReading> answer) {
            if (asked == m_asked) take(std::move(answer));
        });
}

void TrialsView::take(Result<TrialsReading> answer)
{
    if (!answer) {
        m_reading.reset();
        return say(tr("The trials could not be read. %1").arg(answer.error().what));
    }
    m_reading = std::make_shared<const TrialsReading>(std::move(*answer));
    fillList();
    if (std::exchange(m_wantsForm, false)) return openForm();
    // What is being typed outlives a record that arrives meanwhile.
    if (isDesigning()) return;
    showChosen();
    if (hasFocus()) takeFocus();  // it waited for what was read
}

void TrialsView::fillList()
{
    const QSignalBlocker quiet(m_list);
    m_list->clear();
    int row = 0;
    for (std::size_t i = 0; i < m_reading->trials.size(); ++i) {
        const ShownTrial& shown = m_reading->trials[i];
        const QString text = QStringLiteral("%1  %2  ·  %3")
                                 .arg(format::trialShape(shown.trial()), shown.trial().question,
                                      format::trialState(shown.trial(), shown.analysis.armNames));
        auto* item = new QListWidgetItem(text, m_list);
        item->setToolTip(format::plainToolTip(text));
        if (m_wanted == shown.row.id) row = static_cast<int>(i);
    }
    const int rows = std::min<int>(kTrialRowsInSight, m_list->count());
    m_list->setFixedHeight(rows * (m_list->sizeHintForRow(0) > 0 ? m_list->sizeHintForRow(0) : 0) + 2);
    m_list->setVisible(m_list->count() > 1 && !isDesigning());
    m_list->setCurrentRow(m_list->count() > 0 ? row : -1);
}

const ShownTrial* TrialsView::chosen() const
{
    const int row = m_list->currentRow();
    return m_reading && row >= 0 && row < std::ssize(m_reading->trials)
               ? &m_reading->trials[static_cast<std::size_t>(row)]
               : nullptr;
}

bool TrialsView::isRevealed(const ShownTrial& shown) const
{
    // A look that was undone hides again.
    return shown.trial().ending || (m_looked.contains(shown.row.id) && !shown.trial().looks.empty());
}

void TrialsView::showChosen()
{
    m_problem->hide();
    m_list->setVisible(m_list->count() > 1);  // one alone is in sight anyway
    if (const ShownTrial* shown = chosen()) {
        m_panel->show(*shown, isRevealed(*shown), m_shown.today);
        m_states->setCurrentWidget(m_panelArea);
    } else {
        say(tr(
            "No trial yet.\n\nA trial asks one question of one lifter: which of two to four grips, variants, rep bands "
            "or "
            "lowering speeds does more for them. Each session gets its way by lot, the lifter rates what was felt, and "
            "in the end stands an answer with how sure it is, or that there is no clear difference.\n\nT sets one up "
            "for the lift chosen at the left."));
    }
    Q_EMIT changed();
}

void TrialsView::say(const QString& text)
{
    m_words->setText(text);
    m_states->setCurrentWidget(m_words);
    m_list->setVisible(m_reading && m_list->count() > 1);
    Q_EMIT canChanged();
}

void TrialsView::takeFocus()
{
    if (isDesigning()) return m_form->takeFocus();
    if (isInFront(m_panelArea)) return m_panel->takeFocus();
    setFocus();
}

void TrialsView::openForm()
{
    if (!m_reading) {
        m_wantsForm = true;
        return;
    }
    m_list->hide();
    m_problem->hide();
    m_question->hide();
    const TrialFactor factor = factorOfRule(std::exchange(m_rule, {}));
    m_form->offer({m_reading, m_shown.record().line, factor, newSeed(), m_shown.today});
    m_states->setCurrentWidget(m_form);
    m_form->takeFocus();
    Q_EMIT changed();
}

void TrialsView::leaveForm()
{
    m_states->setCurrentWidget(m_words);
    showChosen();
    takeFocus();
}

// The roster's trials in place of the lifter's, and back.
void TrialsView::turnWins()
{
    if (isInFront(m_wins)) {
        showChosen();
        return takeFocus();
    }
    m_wins->read(chosen() ? chosen()->trial().factor : TrialFactor::Grip, m_shown.today);
    m_list->hide();
    m_states->setCurrentWidget(m_wins);
    m_wins->takeFocus();
    Q_EMIT changed();
}

bool TrialsView::isAskedFor(const QString& action) const
{
    return action == QLatin1StringView("lifter.trial.new") && !m_context.book.isReadOnly();
}

bool TrialsView::can(const QString& action) const
{
    if (action == QLatin1StringView("lifter.trial.new"))
        return !isDesigning() && !m_context.book.isReadOnly() && m_shown.lifter && isVisible();
    if (isOneOf(action, {"wins"})) return m_reading && !isDesigning() && isVisible();
    const ShownTrial* shown = isInFront(m_panelArea) && isVisible() ? chosen() : nullptr;
    if (!shown) return false;
    if (action == QLatin1StringView("lifter.why")) return isRevealed(*shown);
    if (isOneOf(action, {"print", "pdf"})) return isRevealed(*shown);
    if (isOneOf(action, {"key"})) return m_panel->chosenDay() >= 0;
    if (m_context.book.isReadOnly() || shown->trial().ending) return false;
    if (isOneOf(action, {"look"})) return !isRevealed(*shown);
    if (isOneOf(action, {"other", "missed", "note", "move"})) return m_panel->chosenDay() >= 0;
    return isOneOf(action, {"finish", "stop", "hurt"});
}

void TrialsView::perform(const QString& action)
{
    if (action == QLatin1StringView("lifter.trial.new")) return openForm();
    if (!can(action)) return;
    if (action == QLatin1StringView("lifter.why")) return m_panel->results()->toggleWhy();
    if (isOneOf(action, {"wins"})) return turnWins();
    if (isOneOf(action, {"look"})) return look();
    if (isOneOf(action, {"key"})) return goToKeying(m_panel->chosenDay());
    if (isOneOf(action, {"other", "missed", "note", "move"})) return askOfSession(action);
    if (isOneOf(action, {"finish", "stop", "hurt"})) return askOfTrial(action);
    const auto said = [this](const QString& text) { Q_EMIT this->said(text); };
    const TrialResult result{format::person(m_reading->record.log.athlete.value.name), *chosen(), m_shown.today};
    if (isOneOf(action, {"print"})) printTrialResult(m_context, this, result, said);
    if (isOneOf(action, {"pdf"})) saveTrialResultPdf(m_context, this, result, said);
}

ChartTable TrialsView::table() const
{
    if (isInFront(m_wins)) return m_wins->chart()->spec().table;
    if (!isInFront(m_panelArea)) return {};
    if (m_panel->isRevealed()) return m_panel->results()->course()->spec().table;
    return m_panel->discomfort()->spec().table;
}

QWidget* TrialsView::drawing() const
{
    if (isInFront(m_wins)) return m_wins->chart()->spec().empty() ? nullptr : m_wins->chart();
    return isInFront(m_panelArea) ? m_panel->drawing() : nullptr;
}

// Escape is the page's way back to the progress; here it first leaves what is open.
bool TrialsView::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && static_cast<QKeyEvent*>(event)->key() == Qt::Key_Escape
        && (m_question->isVisible() || isInFront(m_wins) || m_panel->results()->isWhyShown())) {
        event->accept();
        return true;
    }
    return LifterView::event(event);
}

void TrialsView::keyPressEvent(QKeyEvent* event)
{
    if (event->key() != Qt::Key_Escape) return LifterView::keyPressEvent(event);
    if (isInFront(m_wins)) return turnWins();
    if (!m_panel->results()->isWhyShown()) return LifterView::keyPressEvent(event);
    m_panel->results()->showDrawn();
    takeFocus();
}

}  // namespace steelyard
