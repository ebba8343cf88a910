#include "ui/pages/lifter/lifter_page.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "ui/charts/chart_table_model.h"
#include "ui/format/people.h"
#include "ui/pages/lifter/chart_hand_out.h"
#include "ui/pages/lifter/chart_menu.h"
#include "ui/pages/lifter/line_header.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/session_panel.h"
#include "ui/pages/lifter/set_words.h"

#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtGui/QShortcut>
#include <QtWidgets/QApplication>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListView>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTabBar>
#include <QtWidgets/QTableView>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>

namespace steelyard {
namespace {

QLabel* quietLabel(QWidget* parent, double size)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    QFont font = label->font();
    font.setPointSizeF(font.pointSizeF() * size);
    label->setFont(font);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

}  // namespace

LifterPage::LifterPage(const UiContext& context, QWidget* parent)
    : Page(parent), m_context(context), m_lines(new LineListModel(this)), m_data(new ChartTableModel(this))
{
    m_states = new QStackedWidget(this);
    m_hint = quietLabel(this, 1.1);
    m_hint->setAlignment(Qt::AlignCenter);
    m_hint->setWordWrap(true);
    m_hint->setMargin(40);
    auto* split = new QSplitter(Qt::Horizontal, this);
    split->addWidget(makeLinePart());
    split->addWidget(makeMainPart());
    split->setStretchFactor(1, 1);
    split->setSizes({230, 900});
    split->setChildrenCollapsible(false);
    m_states->addWidget(m_hint);
    m_states->addWidget(split);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins({});
    all->addWidget(m_states);
    hint(tr("Choose a lifter in the roster to see how each of their lifts is going."));
}

LifterPage::~LifterPage()
{
    m_job.cancel();
}

void LifterPage::showAthlete(std::optional<Id<Athlete>> athlete)
{
    if (athlete == m_athlete) return;
    m_athlete = athlete;
    m_wantedLine.reset();
    m_session = QDate();
    if (!athlete) {
        m_job.cancel();
        ++m_asked;
        m_line = -1;
        m_lines->setReading(nullptr);
        view().leave();
        m_reading.reset();
        hint(tr("Choose a lifter in the roster to see how each of their lifts is going."));
        return;
    }
    read();
}

void LifterPage::showLine(Id<LiftLine> line)
{
    m_wantedLine = line;
    if (!isVisible()) backToProgress();  // who comes from another page comes for the chart
    if (const int row = m_lines->rowOf(line); row >= 0) m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::startTrial(Id<LiftLine> line, const QString& rule)
{
    showLine(line);
    m_reason = rule;
    perform(QStringLiteral("lifter.trial.new"));
}

void LifterPage::bookChanged(const Changes& changes)
{
    if (!m_athlete) return;
    if (changes.athletes.contains(*m_athlete) || changes.library || changes.settings || changes.roster) read();
}

void LifterPage::takeFocus()
{
    if (m_line >= 0)
        view().takeFocus();
    else
        setFocus();
}

void LifterPage::read()
{
    m_job.cancel();
    const int asked = ++m_asked;
    if (!m_reading) hint(tr("Reading the record…"));
    m_job = m_context.jobs.run(
        this, tr("Reading a lifter’s record"),
        [path = m_context.book.path(), athlete = *m_athlete, today = m_context.clock.today()](
            const Progress& progress) { return readLifter(path, athlete, today, progress); },
        [this, asked](Result<LifterReading> answer) {
            if (asked == m_asked) take(std::move(answer));
        });
}

void LifterPage::take(Result<LifterReading> answer)
{
    m_lines->setReading(nullptr);
    m_line = -1;
    if (!answer) {
        m_reading.reset();
        hint(tr("The record could not be read. %1").arg(answer.error().what));
        return;
    }
    m_reading = std::make_shared<const LifterReading>(std::move(*answer));
    m_lines->setReading(m_reading.get());
    if (m_lines->rowCount() == 0) {
        hint(tr("Nothing is logged for %1 yet. Import a logbook, or print a sheet for the next session and key in what "
                "was "
                "lifted. From the first session on, every lift has its line here.")
                 .arg(format::person(m_reading->log.athlete.value.name)));
        return;
    }
    m_states->setCurrentIndex(1);
    const int wanted = m_wantedLine ? m_lines->rowOf(*m_wantedLine) : -1;
    m_list->setCurrentIndex(m_lines->index(wanted >= 0 ? wanted : lastTrainedLine()));
    if (const auto action = std::exchange(m_wantedAction, std::nullopt)) perform(*action);
}

int LifterPage::lastTrainedLine() const
{
    // Among equals the one with the most sessions.
    const auto newest = std::ranges::max_element(m_reading->log.lines, {}, [](const LineRecord& line) {
        return std::pair(line.exposures.empty() ? QDate(1, 1, 1) : line.exposures.back().date, line.exposures.size());
    });
    return m_lines->rowOf(newest->id);
}

void LifterPage::hint(const QString& text)
{
    m_hint->setText(text);
    m_states->setCurrentIndex(0);
    Q_EMIT actionsChanged();
}

const LineRecord* LifterPage::record() const
{
    return m_reading && m_line >= 0 ? &m_reading->log.lines[static_cast<std::size_t>(m_line)] : nullptr;
}

ShownLine LifterPage::shown() const
{
    return {m_reading, static_cast<std::size_t>(m_line), m_session, m_stretch->currentData().toInt(),
            m_context.clock.today()};
}

void LifterPage::chooseLine(int line)
{
    m_line = line;
    const LineRecord& chosen = *record();
    if (m_wantedLine != chosen.id) m_session = m_wantedLine ? QDate() : m_session;
    m_wantedLine = chosen.id;
    const QString detail = lineDetail(chosen);
    m_header->showLine(detail.isEmpty() ? lineTitle(chosen) : lineTitle(chosen) + QStringLiteral(" · ") + detail,
                       shown().reading(), shown().unit());
    refreshView();
    Q_EMIT actionsChanged();
}

void LifterPage::refreshView()
{
    if (!record()) return;
    const ShownLine now = shown();
    view().show(now);
    showSession(now.exposure());
    m_data->setTable(view().table());
}

void LifterPage::viewChanged()
{
    m_data->setTable(view().table());
    showNumbers(m_stack->currentIndex() == static_cast<int>(m_views.size()));
    Q_EMIT actionsChanged();
}

void LifterPage::showSession(int exposure)
{
    const LineRecord* shown = record();
    if (!shown || exposure < 0 || exposure >= static_cast<int>(shown->exposures.size())) {
        m_sessionPanel->showSession(nullptr, false);
        return;
    }
    const Exposure& session = shown->exposures[static_cast<std::size_t>(exposure)];
    m_session = session.date;
    m_sessionPanel->showSession(&session, !m_context.book.isReadOnly());
}

void LifterPage::stepLine(int by)
{
    const int row = m_lines->step(m_list->currentIndex().row(), by);
    m_list->setCurrentIndex(m_lines->index(row));
}

void LifterPage::openView(std::size_t index)
{
    if (m_view == 0 && index != 0) {
        m_before = QApplication::focusWidget();
        m_sessionBefore = m_session;
    }
    if (m_view != index) view().leave();
    m_view = index;
    m_tabs->setCurrentIndex(static_cast<int>(index));
    m_back->setEnabled(index != 0);
    m_sessionPanel->setVisible(view().showsSession());
    refreshView();
    showNumbers(false);
}

void LifterPage::backToProgress()
{
    if (m_view == 0) return;
    m_session = m_sessionBefore;
    openView(0);
    if (!isVisible()) return;
    if (m_before && m_before->isVisible() && isAncestorOf(m_before))
        m_before->setFocus();
    else
        view().takeFocus();
}

void LifterPage::showNumbers(bool on)
{
    m_stack->setCurrentIndex(static_cast<int>(on ? m_views.size() : m_view));
    m_chartMenu->showNumbersTicked(on);
}

bool LifterPage::areNumbersShown() const
{
    return m_stack->currentIndex() == static_cast<int>(m_views.size());
}

void LifterPage::copyNumbers()
{
    QGuiApplication::clipboard()->setText(toTabSeparated(view().table()));
    Q_EMIT said(tr("The data of the chart is on the clipboard."));
}

void LifterPage::copyPicture()
{
    copyChart(view(), shown());
    Q_EMIT said(tr("The chart is on the clipboard as a picture."));
}

void LifterPage::savePicture()
{
    saveChartAs(m_context.prompter, view(), shown(), this,
                [this](const QString& path) { Q_EMIT said(tr("The chart was saved in %1.").arg(path)); });
}

void LifterPage::correct(Id<SetEntry> id, const SetEntry& set)
{
    const auto changed = m_context.book.history().perform(changeSet(id, set, m_context.clock));
    if (!changed)
        m_sessionPanel->say(tr("%1 You typed: %2.").arg(changed.error().what, setWords(set)));
    else
        Q_EMIT said(tr("The set was changed; what it said before is kept."));
}

bool LifterPage::canPerform(const QString& action) const
{
    const bool opens = std::ranges::any_of(m_views, [&](const LifterView* view) { return view->action() == action; });
    if (opens && m_athlete && m_job.isRunning()) return true;
    if (action == QStringLiteral("lifter.copy") || action == QStringLiteral("lifter.chart"))
        return m_line >= 0 && (areNumbersShown() || !view().table().rows.empty());
    if (action == QStringLiteral("lifter.copyPicture") || action == QStringLiteral("lifter.savePicture"))
        return m_line >= 0 && view().drawing();
    if (opens || action == QStringLiteral("lifter.nextLine") || action == QStringLiteral("lifter.previousLine"))
        return m_line >= 0;
    return m_line >= 0 && viewFor(action) < m_views.size();
}

std::size_t LifterPage::indexOf(const QString& opening) const
{
    return static_cast<std::size_t>(std::ranges::find(m_views, opening, &LifterView::action) - m_views.begin());
}

// The view in sight, else one that can be asked from elsewhere; past the last: none.
std::size_t LifterPage::viewFor(const QString& action) const
{
    if (view().can(action)) return m_view;
    const auto asked = std::ranges::find_if(m_views, [&](const LifterView* one) { return one->isAskedFor(action); });
    return static_cast<std::size_t>(asked - m_views.begin());
}

void LifterPage::perform(const QString& action)
{
    if (!record()) {
        m_wantedAction = action;
        return;
    }
    if (action == QStringLiteral("lifter.nextLine")) stepLine(1);
    if (action == QStringLiteral("lifter.previousLine")) stepLine(-1);
    if (action == QStringLiteral("lifter.chart")) showNumbers(!areNumbersShown());
    if (action == QStringLiteral("lifter.copy")) copyNumbers();
    if (action == QStringLiteral("lifter.copyPicture")) copyPicture();
    if (action == QStringLiteral("lifter.savePicture")) savePicture();
    if (const std::size_t own = viewFor(action); own < m_views.size()) {
        if (own != m_view) openView(own);
        view().setReason(std::exchange(m_reason, {}));
        view().perform(action);
        return;  // also where the action would open another view: the one in sight has its own answer
    }
    const std::size_t index = indexOf(action);
    if (index == m_views.size()) return;
    if (index == m_view && index != 0) {
        backToProgress();
        return;
    }
    openView(index);
    view().takeFocus();
}

}  // namespace steelyard
