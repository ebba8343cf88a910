// One lifter's session on the desk while it is keyed: what stands in each row, what a typed line means there, and every row and
// rating put into the book at once, each one transaction and one named step of undo.
//
//   STEELYARD_TRY(auto desk, KeyingDesk::open(book, athlete, sheetDay));
//   const auto set = desk->read({0, 1}, u"12 @8");
//   if (set && !desk->questionAbout({0, 1}, *set)) STEELYARD_CHECK(desk->key({0, 1}, *set));
//   desk->sheet().exercises[0].rows[1].stored                       // is there now
//
// Everything goes to the sheet's day, whatever the clock says. A row that has its set already changes that set; what it said
// before is kept. Places are those of sheet() as it is now. Exercises and rows that were added stay while the desk is open, and
// in the book as soon as something is keyed in them.
// Failures: NotFound, Conflict, Invalid, Storage; nothing changed then.
#pragma once

#include "core/book/book.h"
#include "core/book/keyed_lifter.h"
#include "core/keying/entry_check.h"
#include "core/keying/keyed_line.h"
#include "core/keying/line_change.h"
#include "core/keying/next_day.h"

namespace steelyard {

class KeyingDesk {
public:
    [[nodiscard]] static Result<std::unique_ptr<KeyingDesk>> open(Book&, Id<Athlete>, QDate);

    [[nodiscard]] const KeyedLifter& lifter() const { return m_lifter; }
    [[nodiscard]] const KeyingSheet& sheet() const { return m_shown; }
    [[nodiscard]] const KeyingExercise& exercise(std::size_t at) const { return m_shown.exercises[at]; }
    [[nodiscard]] const KeyingRow& row(KeyingPlace at) const { return m_shown.exercises[at.exercise].rows[at.row]; }
    // Of the session before; absent: nothing to ask.
    [[nodiscard]] const std::optional<NextDayQuestions>& dayAfter() const { return m_dayAfter; }

    [[nodiscard]] NotationReading read(KeyingPlace, QStringView line) const;
    // What stands in the row, as it would be typed: of the book, else of the plan, else empty.
    [[nodiscard]] QString lineAt(KeyingPlace) const;
    // Nothing is asked about the plan itself, nor about a load that another row of the exercise has today.
    [[nodiscard]] std::optional<EntryQuestion> questionAbout(KeyingPlace, const SetEntry&) const;

    [[nodiscard]] Result<void> key(KeyingPlace, const SetEntry&);
    // The row stays, without a set.
    [[nodiscard]] Result<void> remove(KeyingPlace);
    [[nodiscard]] Result<void> rate(std::size_t exercise, const ExerciseRating&);
    [[nodiscard]] Result<void> rateDayAfter(std::size_t question, const ExerciseRating&);

    // These change the sheet on the desk only, and give the exercise to go on with. A lift that the library doesn't have whole
    // changes nothing.
    std::optional<std::size_t> addExercise(const LiftLine&);
    std::optional<std::size_t> changeLift(std::size_t exercise, const LiftLine&);
    std::size_t addRow(std::size_t exercise);

    // After undo, redo or somebody else's change.
    [[nodiscard]] Result<void> reread();

private:
    KeyingDesk(Book& book, KeyedLifter lifter, QDate date);
    [[nodiscard]] Result<void> perform(std::unique_ptr<Edit> edit, QString label);
    [[nodiscard]] std::optional<SheetExercise> words(const LiftLine&) const;
    [[nodiscard]] QString exerciseName(std::size_t exercise) const
    {
        return m_shown.exercises[exercise].words.exercise;
    }
    void show();

    Book& m_book;
    KeyedLifter m_lifter;
    KeyingSheet m_plan;   // without what the book has
    KeyingSheet m_shown;  // with it
    std::optional<NextDayQuestions> m_dayAfter;
};

}  // namespace steelyard
