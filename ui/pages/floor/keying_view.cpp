#include "ui/pages/floor/keying_view.h"

#include "core/keying/trial_ratings.h"
#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/pages/floor/keying_row.h"
#include "ui/pages/floor/keying_side.h"
#include "ui/pages/floor/lift_choices.h"
#include "ui/widgets/ampersands.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/lift_chooser.h"

#include <QtCore/QScopedValueRollback>
#include <QtWidgets/QLabel>

#include <algorithm>

namespace steelyard {

KeyingView::KeyingView(const UiContext& context, QWidget* parent)
    : QWidget(parent),
      m_context(context),
      m_who(new ElidedLabel(this)),
      m_done(new QLabel(this)),
      m_board(new KeyingBoard(this)),
      m_side(new KeyingSide(this)),
      m_chooser(new LiftChooser(this)),
      m_hint(new QLabel(this))
{
    build();
    connectBoard();
}

KeyingView::~KeyingView()
{
    if (!m_desk) return;
    blockSignals(true);  // the page that listened is no page any more
    for (const KeyingPlace& at : m_board->drafts()) m_typing->storeSilently(at);
}

void KeyingView::setDay(QDate date, std::vector<KeyedPerson> people)
{
    m_date = date;
    m_people = std::move(people);
}

bool KeyingView::open(Id<Athlete> athlete, bool takesFocus)
{
    if (warnOfDraft() || askForTrialRatings()) return false;
    m_chooser->hide();
    auto desk = KeyingDesk::open(m_context.book, athlete, m_date);
    if (!desk) {
        Q_EMIT said(desk.error().what);
        return false;
    }
    const bool readOnly = m_context.book.isReadOnly();
    m_board->build(desk->get(), readOnly);
    m_desk = *std::move(desk);
    m_askedRatings = false;
    m_typing = std::make_unique<KeyingTyping>(*m_desk, *m_board, readOnly, [this](KeyingPlace at, const SetEntry& set) {
        return store([&] { return m_desk->key(at, set); }, at);
    });
    showHead();
    // Where there is something to do: what is asked of the day after, else the first row without a set.
    const auto open = firstOpenRow(m_desk->sheet());
    KeyingStop first;
    if (open) first = {KeyingStop::Kind::Row, open->exercise, open->row};
    if (m_desk->dayAfter() && !readOnly) first = {KeyingStop::Kind::DayAfter, 0, 0};
    setCurrent(first);
    if (takesFocus) takeFocus();
    return true;
}

std::vector<KeyedPerson>::const_iterator KeyingView::here() const
{
    return std::ranges::find(m_people, m_desk->sheet().athlete, &KeyedPerson::athlete);
}

void KeyingView::openNeighbour(int step)
{
    const auto at = std::distance(m_people.cbegin(), here()) + step;
    if (here() == m_people.end() || at < 0 || at >= std::ssize(m_people))
        Q_EMIT said(step > 0 ? tr("That was the last lifter of the day.") : tr("That is the first lifter of the day."));
    else
        open(m_people[static_cast<std::size_t>(at)].athlete);
}

bool KeyingView::close()
{
    if (warnOfDraft() || askForTrialRatings()) return false;
    m_board->build(nullptr, false);
    m_typing.reset();
    m_desk.reset();
    return true;
}

bool KeyingView::goBack()
{
    if (m_chooser->goBack()) return true;
    const auto place = currentPlace();
    if (!place || !m_typing->drop(*place)) return false;
    showHint();
    return true;
}

void KeyingView::takeFocus()
{
    m_board->focusStop(m_current);
}

void KeyingView::reread()
{
    if (!m_desk || m_storing) return;
    if (const auto read = m_desk->reread(); !read) Q_EMIT said(read.error().what);
    showDesk();
}

std::optional<KeyingPlace> KeyingView::currentPlace() const
{
    return m_desk ? m_current.place() : std::nullopt;
}

bool KeyingView::canPerform(const QString& action) const
{
    if (!m_desk || !m_chooser->isHidden()) return false;
    const auto is = [&](const char* name) { return action == QLatin1StringView(name); };
    const bool writable = !m_context.book.isReadOnly();
    if (is("floor.key.more") || is("floor.key.lift")) return m_current.isAtExercise() && writable;
    if (is("floor.key.add")) return writable;
    if (is("floor.key.remove")) return writable && currentPlace() && m_desk->row(*currentPlace()).stored;
    return true;
}

void KeyingView::perform(const QString& action)
{
    if (!canPerform(action)) return;
    const auto is = [&](const char* name) { return action == QLatin1StringView(name); };
    if (is("floor.key.nextLifter")) openNeighbour(1);
    if (is("floor.key.previousLifter")) openNeighbour(-1);
    if (is("floor.key.nextExercise")) leaveExercise(1);
    if (is("floor.key.previousExercise")) leaveExercise(-1);
    if (is("floor.key.lift")) chooseLift();
    if (is("floor.key.add")) chooseExercise();
    if (is("floor.key.more")) addRow();
    if (is("floor.key.remove")) removeSet(*currentPlace());
}

bool KeyingView::putIntoCurrentRow(SetEntry set)
{
    const auto place = currentPlace();
    if (!place) return false;
    set.number = m_desk->row(*place).number;
    m_board->row(*place)->dropDraft();
    if (!store([&] { return m_desk->key(*place, set); }, place)) return false;
    step(1);
    return true;
}

// Shows what the desk has now. Rows more or less take the cursor's row away while they are built anew.
void KeyingView::showDesk()
{
    const bool had = isAncestorOf(window()->focusWidget());
    m_board->showDesk();
    // The row may have gone to another exercise, or with a set that was taken back.
    if (!m_board->has(m_current)) m_current = {KeyingStop::Kind::Row, m_current.exercise, 0};
    setCurrent(m_board->has(m_current) ? m_current : KeyingStop{});
    if (had && !isAncestorOf(window()->focusWidget())) takeFocus();
    showHead();
}

void KeyingView::showHead()
{
    const auto person = here();
    const bool listed = person != m_people.end();
    QStringList head{format::person(m_desk->lifter().log.athlete.value.name),
                     format::weekday(m_date) + u' ' + format::date(m_date)};
    if (listed)
        head +=
            tr("lifter %1 of %2")
                .arg(QString::number(std::distance(m_people.cbegin(), person) + 1), QString::number(m_people.size()));
    m_who->setText(head.join(QStringLiteral(" · ")));
    m_done->setText(
        tr("%1 of %n set(s) in the book", nullptr, m_desk->sheet().rowCount()).arg(m_desk->sheet().storedSets()));
    const bool last = !listed || person + 1 == m_people.end();
    m_board->setEnd(last ? tr("Done: back to the sheets")
                         : tr("Done: on to %1").arg(keepingAmpersands(format::person((person + 1)->name))));
}

void KeyingView::showHint()
{
    switch (m_current.kind) {
    case KeyingStop::Kind::DayAfter:
        return m_hint->setText(tr("0–9, x for 10 · Enter: skip one · full stop: skip all of them"));
    case KeyingStop::Kind::Rating:
        return m_hint->setText(
            tr("0–9, x for 10 · Enter: skip one · full stop: skip the rest · a joint's letter goes to its cell · what "
               "gave "
               "out: t is the target, letters find another muscle"));
    case KeyingStop::Kind::Row:
        if (const QString answers = m_typing->answers(); !answers.isEmpty()) return m_hint->setText(answers);
        return m_hint->setText(
            tr("42.5x12 a set · 12 the same load · w watched · -2 off standard · @8 effort · Right: change the plan · "
               "Down: "
               "leave the set out · PgDown: next exercise · Ctrl+PgDown: next lifter · Ctrl+M: a set more · Ctrl+G: "
               "another "
               "variant, grip or standard · Ctrl+E: an exercise more · F1: the guide"));
    case KeyingStop::Kind::End:
        return m_hint->setText(
            m_desk->sheet().exercises.empty()
                ? tr("No sheet: nothing is planned and nothing was done before. Ctrl+E adds an exercise.")
                : tr("Enter: go on · Up: back to the rows · Escape: to the sheets"));
    }
}

void KeyingView::setCurrent(const KeyingStop& stop)
{
    if (!m_desk) return;
    if (stop != m_current) m_warned = false;
    m_current = stop;
    m_board->markCurrent(stop);
    if (const auto place = stop.place()) m_typing->read(*place);
    if (stop.isAtExercise())
        m_side->showExercise(m_desk->exercise(stop.exercise).words);
    else
        m_side->showHead(m_desk->lifter().sheet);
    showHint();
    Q_EMIT actionsChanged();
}

void KeyingView::step(int by)
{
    const auto all = m_board->stops();
    const auto current = std::ranges::find(all, m_current);
    const auto at = std::distance(all.begin(), current) + by;
    if (current != all.end() && at >= 0 && at < std::ssize(all)) m_board->focusStop(all[static_cast<std::size_t>(at)]);
}

bool KeyingView::leaveRow()
{
    const auto place = currentPlace();
    return !place || m_typing->leave(*place);
}

// The first row without a set, else the first one.
void KeyingView::goToOpenRow(std::size_t exercise)
{
    const auto open = firstOpenRow(m_desk->sheet(), {exercise, 0});
    m_board->focusStop({KeyingStop::Kind::Row, exercise, open && open->exercise == exercise ? open->row : 0});
}

void KeyingView::leaveExercise(int by)
{
    if (!leaveRow()) return;
    const auto count = std::ssize(m_desk->sheet().exercises);
    auto to = static_cast<std::ptrdiff_t>(m_current.exercise) + by;
    if (m_current.kind == KeyingStop::Kind::DayAfter) to = by > 0 ? 0 : -1;
    if (m_current.kind == KeyingStop::Kind::End) to = by > 0 ? count : count - 1;
    if (to < 0) return;
    if (to < count)
        goToOpenRow(static_cast<std::size_t>(to));
    else
        m_board->focusStop({});
}

void KeyingView::skipRest(const KeyingStop& stop)
{
    if (stop.kind == KeyingStop::Kind::Rating) return step(1);
    const auto open = firstOpenRow(m_desk->sheet());
    m_board->focusStop(open ? KeyingStop{KeyingStop::Kind::Row, open->exercise, open->row} : KeyingStop{});
}

void KeyingView::leaveEnd()
{
    if (here() != m_people.end() && here() + 1 != m_people.end())
        openNeighbour(1);
    else
        Q_EMIT finished();
}

bool KeyingView::store(const Write& write, std::optional<KeyingPlace> at)
{
    const QScopedValueRollback own(m_storing, true);
    const auto stored = write();
    showDesk();
    if (stored) return true;
    if (at && currentPlace() == at)
        m_board->row(*at)->say(stored.error().what, KeyingRowWidget::Tone::Wrong);
    else
        Q_EMIT said(stored.error().what);
    return false;
}

void KeyingView::rate(const KeyingStop& stop, const ExerciseRating& rating)
{
    const bool after = stop.kind == KeyingStop::Kind::DayAfter;
    store([&] { return after ? m_desk->rateDayAfter(stop.exercise, rating) : m_desk->rate(stop.exercise, rating); });
}

void KeyingView::removeSet(KeyingPlace at)
{
    m_typing->drop(at);
    if (store([&] { return m_desk->remove(at); }, at)) Q_EMIT said(tr("Removed. Ctrl+Z brings it back."));
}

bool KeyingView::warnOfDraft()
{
    if (!m_desk || std::exchange(m_warned, false)) return false;
    for (const KeyingPlace& at : m_board->drafts()) {
        if (m_typing->storeSilently(at)) continue;
        m_board->focusStop({KeyingStop::Kind::Row, at.exercise, at.row});
        Q_EMIT said(tr("This row isn't in the book yet. The same key again leaves it out."));
        m_warned = true;
        return true;
    }
    return false;
}

bool KeyingView::askForTrialRatings()
{
    if (!m_desk || m_context.book.isReadOnly() || std::exchange(m_askedRatings, true)) return false;
    const auto missing = missingTrialRatings(m_desk->sheet());
    if (missing.empty()) return false;
    const std::size_t exercise = missing.front().exercise;
    m_board->focusStop({KeyingStop::Kind::Rating, exercise, 0});
    Q_EMIT said(tr("%1 is in a trial and %n rating(s) of it aren't given. The same key again leaves them out.", nullptr,
                   static_cast<int>(missing.front().cells.size()))
                    .arg(m_desk->exercise(exercise).words.exercise));
    return true;
}

void KeyingView::addRow()
{
    if (!leaveRow()) return;
    const std::size_t exercise = m_desk->addRow(m_current.exercise);
    showDesk();
    m_board->focusStop({KeyingStop::Kind::Row, exercise, m_desk->exercise(exercise).rows.size() - 1});
}

void KeyingView::chooseLift()
{
    if (!leaveRow()) return;
    const std::size_t exercise = m_current.exercise;
    m_chooser->choose(tr("Another variant, grip or standard:"), otherWayChoices(*m_desk, exercise), true,
                      [this, exercise](const LiftLine& lift) {
                          const auto next = m_desk->changeLift(exercise, lift);
                          showDesk();
                          goToOpenRow(next.value_or(exercise));
                      });
}

void KeyingView::chooseExercise()
{
    if (!leaveRow()) return;
    m_chooser->choose(tr("An exercise more:"), choicesToAdd(*m_desk), false, [this](const LiftLine& lift) {
        const auto added = m_desk->addExercise(lift);
        showDesk();
        if (added) goToOpenRow(*added);
    });
}

}  // namespace steelyard
