#include "ui/pages/floor/rack_view.h"

#include "core/book/book.h"
#include "core/edits/repetition_edits.h"
#include "core/keying/set_notation.h"
#include "core/storage/session_reader.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/pages/floor/rack_board.h"

#include <QtCore/QTimer>
#include <QtGui/QKeyEvent>
#include <QtGui/QPainter>
#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kTickMs = 250;
constexpr qsizetype kLongestLoad = 8;

bool isPlain(const QKeyEvent& event)
{
    return (event.modifiers() & ~(Qt::ShiftModifier | Qt::KeypadModifier)) == Qt::NoModifier;
}

bool isLoweringKey(int key)
{
    return key == Qt::Key_V || key == Qt::Key_Down;
}

}  // namespace

RackView::RackView(const UiContext& context, QWidget* parent) : QWidget(parent), m_context(context)
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Counting at the rack"));
    auto* sides = new QHBoxLayout;
    sides->setSpacing(10);
    for (RackBoard*& board : m_boards) {
        board = new RackBoard(this);
        sides->addWidget(board, 1);
    }
    m_message = new QLabel(this);
    m_message->setTextFormat(Qt::PlainText);
    m_message->setWordWrap(true);
    QFont larger = m_message->font();
    larger.setPointSizeF(larger.pointSizeF() * 1.3);
    m_message->setFont(larger);
    m_message->setMinimumHeight(m_message->fontMetrics().height());  // the boards don't jump when something is said
    auto* keys = new QLabel(tr("Space repetition · + failed part-way · b t s d l a marks (b short bottom, t short top, "
                               "s swing, d dropped, l lean, "
                               "a assisted) · hold V while lowering · Backspace takes back · digits load · Enter "
                               "stores · Tab other lifter · ← → "
                               "exercise · Page Up, Page Down lifter · Esc back"),
                            this);
    keys->setTextFormat(Qt::PlainText);
    keys->setWordWrap(true);
    keys->setForegroundRole(QPalette::PlaceholderText);
    auto* all = new QVBoxLayout(this);
    all->setContentsMargins(10, 10, 10, 8);
    all->addLayout(sides, 1);
    all->addWidget(m_message);
    all->addWidget(keys);
    m_ticks = new QTimer(this);
    m_ticks->setInterval(kTickMs);
    connect(m_ticks, &QTimer::timeout, this, &RackView::refresh);
    hide();
}

void RackView::open(std::vector<DaySheet> sheets, std::size_t current, QDate date)
{
    m_sheets = std::move(sheets);
    m_date = date;
    const bool counting = !m_stations[0].counter.empty() || !m_stations[1].counter.empty();
    if (!counting) {
        m_active = 0;
        m_stations = {};
        for (std::size_t place = 0; place < 2 && current + place < m_sheets.size(); ++place)
            m_stations[place] = stationOf(m_sheets[current + place]);
        if (current > 0 && m_stations[1].isEmpty() && m_sheets.size() > 1)
            m_stations[1] = stationOf(m_sheets[current - 1]);
    }
    setParent(parentWidget()->window());
    parentWidget()->installEventFilter(this);
    setGeometry(parentWidget()->rect());
    say(m_date == m_context.clock.today() ? QString()
                                          : tr("Sets go to %1, the day of the sheets.").arg(format::date(m_date)));
    bookChanged();
    show();
    raise();
    setFocus();
    m_ticks->start();
}

void RackView::leave()
{
    m_ticks->stop();
    parentWidget()->removeEventFilter(this);
    hide();
    Q_EMIT closed();
}

void RackView::bookChanged()
{
    for (RackStation& station : m_stations) readDone(station);
    refresh();
}

void RackView::readDone(RackStation& station)
{
    station.done.clear();
    if (station.isEmpty()) return;
    const auto record = readSession(m_context.book.database(), *station.athlete, m_date);
    if (!record) return say(record.error().what);
    for (const RecordedSet& one : record->sets)
        if (one.lift == *station.exercise().lift && one.set.kind != SetKind::WarmUp) station.done.push_back(one.set);
}

QString RackView::message() const
{
    return m_message->text();
}

void RackView::say(const QString& text)
{
    m_message->setText(text);
}

void RackView::refresh()
{
    for (std::size_t place = 0; place < m_boards.size(); ++place)
        m_boards[place]->setStation(m_stations[place], place == m_active, now());
}

RepCounter::Time RackView::now() const
{
    return m_time();
}

bool RackView::event(QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride && isPlain(*static_cast<QKeyEvent*>(event))) {
        event->accept();
        return true;
    }
    return QWidget::event(event);
}

bool RackView::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::Resize && watched == parentWidget()) setGeometry(parentWidget()->rect());
    return QWidget::eventFilter(watched, event);
}

bool RackView::focusNextPrevChild(bool next)
{
    Q_UNUSED(next)
    return false;  // Tab is the other lifter's
}

void RackView::paintEvent(QPaintEvent* event)
{
    Q_UNUSED(event)
    QPainter(this).fillRect(rect(), palette().window());
}

void RackView::keyPressEvent(QKeyEvent* event)
{
    if (!isPlain(*event)) return QWidget::keyPressEvent(event);
    if (event->isAutoRepeat()) return;
    if (event->key() == Qt::Key_Escape && (mine().isEmpty() || mine().typed.isEmpty())) return leave();
    if (look(event->key())) return;
    if (mine().isEmpty()) return say(tr("Nobody stands here. Page Down chooses a lifter of the day."));
    say({});
    if (!count(*event) && !event->text().isEmpty() && !typeLoad(event->text().at(0)))
        say(tr("This key means nothing here; the keys stand below."));
    refresh();
}

void RackView::keyReleaseEvent(QKeyEvent* event)
{
    if (event->isAutoRepeat() || !isLoweringKey(event->key())) return QWidget::keyReleaseEvent(event);
    mine().counter.loweringEnds(now());
    refresh();
}

void RackView::focusOutEvent(QFocusEvent* event)
{
    // The release of a key that is held goes elsewhere now.
    for (RackStation& station : m_stations)
        if (station.counter.isLowering()) station.counter.takeBack();
    QWidget::focusOutEvent(event);
}

// True: the key was about where one looks, not about the set.
bool RackView::look(int key)
{
    switch (key) {
    case Qt::Key_Tab:
    case Qt::Key_Backtab:
        turn();
        return true;
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        chooseLifter(key == Qt::Key_PageDown ? 1 : -1);
        return true;
    case Qt::Key_Right:
    case Qt::Key_Left:
        if (!mine().counter.empty())
            say(tr("Store this set first (Enter), or take it back."));
        else if (mine().step(key == Qt::Key_Right ? 1 : -1))
            bookChanged();
        return true;
    default:
        return false;
    }
}

bool RackView::count(const QKeyEvent& event)
{
    RepCounter& counter = mine().counter;
    const int key = event.key();
    if (key == Qt::Key_Return || key == Qt::Key_Enter) {
        enter();
    } else if (key == Qt::Key_Backspace) {
        takeBack();
    } else if (key == Qt::Key_Escape) {
        mine().typed.clear();
    } else if (key == Qt::Key_Space) {
        if (!counter.repetition(now())) say(tr("This set is over: Enter stores it, Backspace takes the failure back."));
    } else if (key == Qt::Key_Plus || event.text() == QStringLiteral("+")) {
        if (!counter.partWay(now())) say(tr("This set is over already."));
    } else if (isLoweringKey(key)) {
        counter.loweringBegins(now());
    } else if (const auto mark = event.text().isEmpty() ? std::nullopt : markOfLetter(event.text().at(0))) {
        if (!counter.mark(*mark)) say(tr("There is no repetition to mark yet."));
    } else {
        return false;
    }
    return true;
}

bool RackView::typeLoad(QChar character)
{
    QString& typed = mine().typed;
    const bool mark = character == u'.' || character == u',';
    if (!character.isDigit() && !(mark && !typed.contains(u'.') && !typed.contains(u','))) return false;
    if (typed.size() < kLongestLoad) typed += character;
    return true;
}

void RackView::takeBack()
{
    if (!mine().typed.isEmpty())
        mine().typed.chop(1);
    else if (!mine().counter.takeBack())
        say(tr("Nothing is counted. Ctrl+Z takes the last set out of the book again."));
}

void RackView::enter()
{
    if (mine().typed.isEmpty()) return store();
    if (!mine().takeTyped())
        say(tr("“%1” is no load. A number with at most three decimals is needed.").arg(mine().typed));
}

void RackView::store()
{
    RackStation& station = mine();
    if (station.counter.repetitions().empty()) return say(tr("Nothing is counted yet: Space counts a repetition."));
    const auto set = station.set();
    if (!set) return say(tr("Type the load first, then Enter twice."));
    const QString label = tr("%1’s set of %2: %3 × %4")
                              .arg(format::person(station.lifter), station.exercise().exercise, format::load(set->load),
                                   QString::number(set->reps));
    const auto stored = m_context.book.history().perform(
        addCountedSet(*station.exercise().lift, m_date, *set, station.counter.repetitions(), label));
    if (!stored) return say(tr("The set is not stored. %1").arg(stored.error().what));
    station.counter = {};
    station.restSince = now();
    say(tr("Stored: %1. Ctrl+Z takes it back.").arg(label));
    bookChanged();
}

void RackView::turn()
{
    m_active = 1 - m_active;
    say({});
    refresh();
}

void RackView::chooseLifter(int by)
{
    if (!mine().counter.empty()) return say(tr("Store this set first (Enter), or take it back."));
    if (m_sheets.empty()) return say(tr("No lifter has a sheet for this day."));
    const auto size = static_cast<int>(m_sheets.size());
    const auto other = m_stations[1 - m_active].athlete;
    int at = -1;
    for (int i = 0; i < size; ++i)
        if (m_sheets[static_cast<std::size_t>(i)].athlete == mine().athlete) at = i;
    for (int tried = 0; tried < size; ++tried) {
        at = at < 0 ? (by > 0 ? 0 : size - 1) : (at + by + size) % size;
        if (m_sheets[static_cast<std::size_t>(at)].athlete == other) continue;
        mine() = stationOf(m_sheets[static_cast<std::size_t>(at)]);
        break;
    }
    say({});
    bookChanged();
}

}  // namespace steelyard
