#include "core/book/keying_desk.h"

#include "core/edits/edits.h"
#include "core/edits/keying_edits.h"
#include "core/storage/session_reader.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct KeyingDeskText {
    Q_DECLARE_TR_FUNCTIONS(KeyingDeskText)
};

constexpr int kSameReps = 5;

// Whoever kept an unlikely load in another row of the exercise isn't asked in each row anew.
bool wasKeptToday(const KeyingExercise& exercise, KeyingPlace at, const SetEntry& set)
{
    for (std::size_t i = 0; i < exercise.rows.size(); ++i) {
        const auto& stored = exercise.rows[i].stored;
        if (i != at.row && stored && stored->set.kind != SetKind::WarmUp && stored->set.load.mass() == set.load.mass()
            && set.reps <= stored->set.reps + kSameReps)
            return true;
    }
    return false;
}

}  // namespace

Result<std::unique_ptr<KeyingDesk>> KeyingDesk::open(Book& book, Id<Athlete> athlete, QDate date)
{
    STEELYARD_TRY(auto lifter, readKeyedLifter(book.database(), athlete, date));
    return std::unique_ptr<KeyingDesk>(new KeyingDesk(book, std::move(lifter), date));
}

KeyingDesk::KeyingDesk(Book& book, KeyedLifter lifter, QDate date)
    : m_book(book),
      m_lifter(std::move(lifter)),
      m_plan(planKeying(m_lifter.log.athlete.id, m_lifter.log.athlete.value.unit, date,
                        m_lifter.sheet ? &*m_lifter.sheet : nullptr)),
      m_shown(m_plan),
      m_dayAfter(nextDayQuestions(m_lifter.log, date))
{
    show();
}

std::optional<SheetExercise> KeyingDesk::words(const LiftLine& lift) const
{
    return buildSheetExercise(m_lifter.log, m_lifter.library, m_lifter.equipment, lift, m_plan.date, m_lifter.settings);
}

void KeyingDesk::show()
{
    m_shown = withRecord(m_plan, m_lifter.record, [this](const LiftLine& lift) {
        SheetExercise unknown;
        unknown.lift = lift;
        return words(lift).value_or(unknown);
    });
}

NotationReading KeyingDesk::read(KeyingPlace at, QStringView line) const
{
    return readKeyedLine(line, exercise(at.exercise), at.row, m_shown);
}

QString KeyingDesk::lineAt(KeyingPlace at) const
{
    const KeyingRow& here = row(at);
    if (here.stored) return writeSet(here.stored->set, m_shown.unit, m_shown.kind);
    return here.planned ? writeSet(*here.planned, m_shown.unit, m_shown.kind) : QString();
}

std::optional<EntryQuestion> KeyingDesk::questionAbout(KeyingPlace at, const SetEntry& set) const
{
    const KeyingExercise& in = exercise(at.exercise);
    if (row(at).planned == set || wasKeptToday(in, at, set)) return std::nullopt;
    EntryBackground about{nullptr, m_shown.date, in.words.loading, std::nullopt};
    const auto line = std::ranges::find(m_lifter.log.lines, in.lift, &LineRecord::line);
    if (line != m_lifter.log.lines.end()) about.record = &*line;
    for (std::size_t before = 0; before < at.row; ++before)
        if (const auto& stored = in.rows[before].stored; stored && stored->set.kind != SetKind::WarmUp)
            about.planned = stored->set.load;
    if (!about.planned && in.words.target.load) about.planned = in.words.target.load->load;
    return steelyard::questionAbout(set, about);
}

Result<void> KeyingDesk::perform(std::unique_ptr<Edit> edit, QString label)
{
    STEELYARD_CHECK(m_book.history().perform(named(std::move(edit), std::move(label))));
    return reread();
}

Result<void> KeyingDesk::key(KeyingPlace at, const SetEntry& set)
{
    const KeyingRow& here = row(at);
    const QString who = m_lifter.log.athlete.value.name;
    const QString what =
        KeyingDeskText::tr("set %1, %2, of %3").arg(QString::number(here.number), exerciseName(at.exercise), who);
    if (here.stored)
        return perform(changeSet(here.stored->id, set, m_book.clock()), KeyingDeskText::tr("change %1").arg(what));
    const QString label = KeyingDeskText::tr("key %1").arg(what);
    return perform(keySet(exercise(at.exercise).lift, m_shown.date, set, label), label);
}

Result<void> KeyingDesk::remove(KeyingPlace at)
{
    const KeyingRow& here = row(at);
    if (!here.stored) return {};
    return perform(removeSet(here.stored->id, m_book.clock()),
                   KeyingDeskText::tr("remove set %1, %2, of %3")
                       .arg(QString::number(here.number), exerciseName(at.exercise), m_lifter.log.athlete.value.name));
}

Result<void> KeyingDesk::rate(std::size_t at, const ExerciseRating& rating)
{
    return perform(rateExercise(exercise(at).lift, m_shown.date, rating),
                   KeyingDeskText::tr("rate %1 of %2").arg(exerciseName(at), m_lifter.log.athlete.value.name));
}

Result<void> KeyingDesk::rateDayAfter(std::size_t question, const ExerciseRating& rating)
{
    const NextDayQuestion& asked = m_dayAfter->questions[question];
    return perform(
        rateExercise(asked.lift, m_dayAfter->session, rating),
        KeyingDeskText::tr("rate the day after %1 of %2").arg(asked.exercise, m_lifter.log.athlete.value.name));
}

std::optional<std::size_t> KeyingDesk::addExercise(const LiftLine& lift)
{
    const auto added = words(lift);
    if (!added) return std::nullopt;
    const std::size_t at = steelyard::addExercise(m_plan, m_shown, *added);
    show();
    return at;
}

std::optional<std::size_t> KeyingDesk::changeLift(std::size_t at, const LiftLine& lift)
{
    const auto other = words(lift);
    if (!other) return std::nullopt;
    const std::size_t next = steelyard::changeLift(m_plan, m_shown, at, *other);
    show();
    return next;
}

std::size_t KeyingDesk::addRow(std::size_t at)
{
    steelyard::addRow(m_plan, m_shown, at);
    show();
    return at;
}

Result<void> KeyingDesk::reread()
{
    STEELYARD_TRY(m_lifter.record, readSession(m_book.database(), m_shown.athlete, m_shown.date));
    if (m_dayAfter) {
        STEELYARD_TRY(const auto before, readSession(m_book.database(), m_shown.athlete, m_dayAfter->session));
        for (NextDayQuestion& question : m_dayAfter->questions) {
            const auto rated = std::ranges::find(before.ratings, question.lift, &RecordedRating::lift);
            question.rating = rated == before.ratings.end() ? ExerciseRating() : rated->rating;
        }
    }
    show();
    return {};
}

}  // namespace steelyard
