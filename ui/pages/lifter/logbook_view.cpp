#include "ui/pages/lifter/logbook_view.h"

#include "core/book/book.h"
#include "core/edits/edits.h"
#include "core/edits/set_edits.h"
#include "core/storage/athlete_log_reader.h"
#include "ui/format/format.h"
#include "ui/models/two_line_delegate.h"
#include "ui/pages/lifter/logbook_bulk.h"
#include "ui/pages/lifter/logbook_calendar.h"
#include "ui/pages/lifter/logbook_list_model.h"
#include "ui/pages/lifter/logbook_session.h"
#include "ui/shell/backup_keeper.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QHeaderView>
#include <QtWidgets/QLabel>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QTableView>

#include <algorithm>
#include <functional>

namespace steelyard {
namespace {

constexpr int kLeftWidth = 310;

}  // namespace

LogbookView::LogbookView(const UiContext& context, QWidget* parent) : LifterView(parent), m_context(context)
{
    auto* beside = new QHBoxLayout(this);
    beside->setContentsMargins({});
    beside->setSpacing(14);
    beside->addWidget(makeLeft());
    beside->addWidget(makeRight(), 1);
    setFocusProxy(m_sessions);
}

QWidget* LogbookView::makeLeft()
{
    auto* left = new QWidget(this);
    left->setFixedWidth(kLeftWidth);
    m_search = new QLineEdit(left);
    m_search->setPlaceholderText(tr("Find: curl swing discomfort 2026-03"));
    m_search->setAccessibleName(tr("Find sessions"));
    m_search->setClearButtonEnabled(true);
    m_search->setToolTip(
        tr("Words for exercise, variant, grip, standard, note, mark, kind, joint; 2026-03 or "
           "2026-03..2026-05 for days. All of them have to fit."));
    m_search->installEventFilter(this);
    m_found = new QLabel(left);
    m_found->setTextFormat(Qt::PlainText);
    m_found->setForegroundRole(QPalette::PlaceholderText);
    m_found->setWordWrap(true);
    m_calendar = new LogbookCalendar(left);
    m_list = new LogbookListModel(this);
    m_sessions = new QTableView(left);
    m_sessions->setModel(m_list);
    m_sessions->setItemDelegate(new TwoLineDelegate(LogbookListModel::DetailRole, m_sessions));
    m_sessions->setAccessibleName(tr("Sessions"));
    m_sessions->setSelectionBehavior(QAbstractItemView::SelectRows);
    m_sessions->setSelectionMode(QAbstractItemView::SingleSelection);
    m_sessions->setEditTriggers(QAbstractItemView::NoEditTriggers);
    m_sessions->setShowGrid(false);
    m_sessions->setWordWrap(false);
    m_sessions->setTabKeyNavigation(false);
    m_sessions->setFrameShape(QFrame::NoFrame);
    m_sessions->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_sessions->verticalHeader()->hide();
    m_sessions->verticalHeader()->setDefaultSectionSize(fontMetrics().height() * 2 + 8);
    m_sessions->horizontalHeader()->hide();
    m_sessions->horizontalHeader()->setSectionResizeMode(LogbookListModel::Done, QHeaderView::Stretch);
    m_sessions->setColumnWidth(LogbookListModel::Day, fontMetrics().averageCharWidth() * 20);
    auto* all = new QVBoxLayout(left);
    all->setContentsMargins({});
    all->setSpacing(4);
    for (QWidget* row : std::initializer_list<QWidget*>{m_search, m_calendar, m_found}) all->addWidget(row);
    all->addWidget(m_sessions, 1);
    m_calendar->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    connect(m_search, &QLineEdit::textChanged, this, &LogbookView::search);
    connect(m_search, &QLineEdit::returnPressed, this, &LogbookView::takeFocus);
    connect(m_calendar, &LogbookCalendar::dayChosen, this, &LogbookView::chooseDay);
    connect(m_calendar, &LogbookCalendar::setsWanted, this, [this] { m_session->takeFocus(); });
    connect(m_sessions, &QTableView::activated, this, [this] { m_session->takeFocus(); });
    connect(m_sessions->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [this](const QModelIndex& now) {
                if (const QDate day = m_list->dateAt(now.row()); day.isValid()) chooseDay(day);
            });
    return left;
}

QWidget* LogbookView::makeRight()
{
    m_session = new LogbookSession(
        [this](QDate day) { return m_context.book.logbook().replacedSets(m_shown.lifter->log.athlete.id, day); }, this);
    m_right = new QStackedWidget(this);
    m_right->addWidget(m_session);
    m_bulk = new LogbookBulk(
        [this](const Library& library, const RenameWish& wish) {
            return planRename(m_context.book.database(), library, wish);
        },
        [this](std::unique_ptr<Edit> edit, const QString& words) -> QString {
            const auto done = m_context.book.history().perform(std::move(edit));
            if (!done) return done.error().what;
            Q_EMIT said(words);
            return {};
        },
        [this](std::function<void()> then) { keepFirst(m_context.backups, BackupReason::Bulk, this, std::move(then)); },
        this);
    m_right->addWidget(m_bulk);
    connect(m_bulk, &LogbookBulk::left, this, &LogbookView::leaveBulk);
    const Clock& clock = m_context.clock;
    connect(m_session, &LogbookSession::changeWanted, this, [this, &clock](Id<SetEntry> id, const SetEntry& set) {
        store(changeSet(id, set, clock), tr("The set was changed; what it said before is kept."));
    });
    connect(m_session, &LogbookSession::removeWanted, this, [this, &clock](Id<SetEntry> id) {
        store(removeSet(id, clock), tr("The set was removed; it can be brought back below."));
    });
    connect(m_session, &LogbookSession::addWanted, this, [this](const LiftLine& line, const SetEntry& set) {
        store(addSet(line, m_day, set), tr("The set was added."));
    });
    connect(m_session, &LogbookSession::rateWanted, this, [this](const LiftLine& line, const ExerciseRating& rating) {
        store(rateExercise(line, m_day, rating), tr("The rating was changed."));
    });
    connect(m_session, &LogbookSession::bringBackWanted, this,
            [this, &clock](const SetHistory& history, std::size_t value) {
                store(bringBack(history, value, m_shown.lifter->log.athlete.id, m_day, clock),
                      tr("It says again what it said before."));
            });
    connect(m_session, &LogbookSession::chartWanted, this, &LogbookView::openChart);
    connect(m_session, &LogbookSession::editingEnded, this, &LogbookView::sessionEnded);
    connect(m_session, &LogbookSession::moved, this, &LifterView::canChanged);
    return m_right;
}

// What is being typed outlives a record that arrives meanwhile.
void LogbookView::show(const ShownLine& shown)
{
    const bool sameLifter = m_shown.lifter && m_shown.lifter->log.athlete.id == shown.lifter->log.athlete.id;
    if (sameLifter && m_session->isEditing()) {
        m_later = shown;
        return;
    }
    m_later.reset();
    const bool isNew = !m_shown.lifter || m_shown.lifter != shown.lifter;
    const auto kept = std::exchange(m_shown, shown).lifter;  // until nothing points into it any more
    if (!sameLifter) {
        m_day = shown.session;
        const QSignalBlocker block(m_search);
        m_search->clear();
    }
    if (isNew) {
        m_days = logbookDays(shown.lifter->log);
        m_right->setCurrentWidget(m_session);  // what was planned there was planned for another record
    }
    if (!m_day.isValid() && !m_days.empty()) m_day = m_days.front().date;
    search();
    showSession();
}

void LogbookView::sessionEnded()
{
    if (m_later) show(ShownLine(*m_later));
}

const LogbookDay* LogbookView::find(QDate day) const
{
    const auto at = std::ranges::lower_bound(m_days, day, std::greater<>(), &LogbookDay::date);
    return at != m_days.end() && at->date == day ? &*at : nullptr;
}

void LogbookView::search()
{
    const LogbookFilter filter(m_search->text());
    std::vector<std::size_t> shown;
    std::set<QDate> dates;
    for (std::size_t i = 0; i < m_days.size(); ++i) {
        if (!filter.accepts(m_days[i])) continue;
        shown.push_back(i);
        dates.insert(m_days[i].date);
    }
    const auto count = static_cast<int>(shown.size());
    m_found->setText(filter.isEmpty() ? tr("%n session(s). Frame: deload, notch: discomfort.", nullptr, count)
                                      : tr("%1 of %n session(s)", nullptr, static_cast<int>(m_days.size())).arg(count));
    m_list->setDays(&m_shown.lifter->log, &m_days, std::move(shown));
    m_calendar->setDays(&m_days, std::move(dates), m_shown.today);
    m_calendar->choose(m_day);
    if (const int row = m_list->rowOf(m_day); row >= 0) m_sessions->selectRow(row);
    Q_EMIT changed();
}

void LogbookView::chooseDay(QDate day)
{
    if (day == m_day) return;
    m_day = day;
    m_calendar->choose(day);
    if (const int row = m_list->rowOf(day); row >= 0) m_sessions->selectRow(row);
    showSession();
}

void LogbookView::lookAtDay(QDate day)
{
    if (!find(day)) return;
    if (m_list->rowOf(day) < 0) m_search->clear();  // it would stand there unfound
    chooseDay(day);
    m_session->takeFocus();
}

void LogbookView::showSession()
{
    m_session->show({m_shown.lifter, find(m_day), m_shown.line, !m_context.book.isReadOnly()}, m_day);
}

void LogbookView::store(std::unique_ptr<Edit> edit, const QString& words)
{
    const auto done = m_context.book.history().perform(std::move(edit));
    if (!done)
        m_session->say(done.error().what);
    else if (*done)
        Q_EMIT said(words);
}

void LogbookView::openChart(Id<LiftLine> line)
{
    const auto& lines = m_shown.lifter->log.lines;
    const auto record = std::ranges::find(lines, line, &LineRecord::id);
    if (record == lines.end()) return;
    const auto at = std::ranges::find(record->exposures, m_day, &Exposure::date);
    const auto exposure = static_cast<int>(at - record->exposures.begin());
    Q_EMIT lineWanted(line);
    Q_EMIT sessionWanted(exposure);
}

void LogbookView::takeFocus()
{
    m_sessions->setFocus(Qt::ShortcutFocusReason);
    if (m_list->rowOf(m_day) < 0 && m_list->rowCount() > 0) m_sessions->selectRow(0);  // the newest that was found
}

bool LogbookView::can(const QString& action) const
{
    if (action == QStringLiteral("lifter.find")) return true;
    if (action == QStringLiteral("lifter.bulk")) return !m_context.book.isReadOnly();
    return m_right->currentWidget() == m_session && m_session->can(action);
}

bool LogbookView::isAskedFor(const QString& action) const
{
    return action == QStringLiteral("lifter.find") || action == QStringLiteral("lifter.bulk");
}

// Read whole: a set of a mistyped day to come is among those that can be moved.
void LogbookView::openBulk()
{
    const auto library = m_context.book.library().read();
    if (!library) return m_session->say(library.error().what);
    const auto& shown = m_shown.lifter->log;
    auto log = readAthleteLog(m_context.book.database(), *library, shown.athlete.id);
    if (!log) return m_session->say(log.error().what);
    m_right->setCurrentWidget(m_bulk);
    m_bulk->open({std::move(*log), *library, m_shown.today, m_shown.record().id, m_day});
    Q_EMIT canChanged();
}

void LogbookView::leaveBulk()
{
    m_right->setCurrentWidget(m_session);
    takeFocus();
    Q_EMIT canChanged();
}

void LogbookView::perform(const QString& action)
{
    if (action == QStringLiteral("lifter.find")) {
        m_search->setFocus(Qt::ShortcutFocusReason);
        m_search->selectAll();
        return;
    }
    if (action == QStringLiteral("lifter.bulk"))
        openBulk();
    else
        m_session->perform(action);
}

// Escape first takes the words away; then it goes back to the progress, as everywhere.
bool LogbookView::eventFilter(QObject* watched, QEvent* event)
{
    const bool isKey = event->type() == QEvent::KeyPress || event->type() == QEvent::ShortcutOverride;
    if (watched != m_search || !isKey || static_cast<QKeyEvent*>(event)->key() != Qt::Key_Escape
        || m_search->text().isEmpty())
        return LifterView::eventFilter(watched, event);
    if (event->type() == QEvent::ShortcutOverride)
        event->accept();
    else
        m_search->clear();
    return true;
}

ChartTable LogbookView::table() const
{
    ChartTable table;
    table.header = {tr("date"), tr("what was done"), tr("sets")};
    for (int row = 0; row < m_list->rowCount(); ++row) {
        const auto cell = [&](int column, int role) { return m_list->index(row, column).data(role).toString(); };
        table.rows.push_back({m_list->dateAt(row).toString(Qt::ISODate), cell(LogbookListModel::Done, Qt::DisplayRole),
                              cell(LogbookListModel::Day, LogbookListModel::DetailRole)});
    }
    return table;
}

}  // namespace steelyard
