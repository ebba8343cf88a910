// A lifter's session as it is keyed: the rows of the printed sheet in its order, and in each row what the book has.
//
//   KeyingSheet plan = planKeying(athlete, unit, date, &sheet);            // as printed
//   const KeyingSheet shown = withRecord(plan, record, describe);          // and what is in the book already
//   shown.exercises[1].rows[0].number == 5;                                // numbers run through the session
//   shown.exercises[1].rows[0].planned->load == 42.5 kg;                   // what "as planned" stores
//
// "As planned" is the load, the repetitions and, where the plan names it, the reserve. A row whose load or repetitions nobody
// planned has none: they must be typed. The date is the sheet's, whatever the clock says.
//
// Invariants: numbers of a plan are each used once; a stored set stands in exactly one row of what is shown. Pure; no failures.
#pragma once

#include "core/domain/session_record.h"
#include "core/sheets/session_sheet.h"

#include <functional>

namespace steelyard {

struct KeyingRow {
    int number = 1;
    std::optional<SetEntry> planned;    // not watched; absent: nothing to take over as it is
    std::optional<RecordedSet> stored;  // what the book has
};

struct KeyingExercise {
    LiftLine lift;  // where new rows go
    SheetExercise words;
    std::vector<KeyingRow> rows;
    ExerciseRating rating = {};

    [[nodiscard]] bool anyStored() const;
    [[nodiscard]] bool allStored() const;
};

struct KeyingSheet {
    Id<Athlete> athlete;
    QDate date;
    MassUnit unit = MassUnit::kg;
    SetKind kind = SetKind::Work;  // of a set that says nothing else: the week's
    std::vector<KeyingExercise> exercises;

    [[nodiscard]] int storedSets() const;
    [[nodiscard]] int rowCount() const;
    [[nodiscard]] int nextNumber() const;  // after every row's
    // A lift has one rating a day, asked for after its last exercise.
    [[nodiscard]] bool ratesAfter(std::size_t exercise) const;
};

struct KeyingPlace {
    std::size_t exercise = 0;
    std::size_t row = 0;
    friend bool operator==(const KeyingPlace&, const KeyingPlace&) = default;
};

// Without a sheet there are no rows: exercises are added.
[[nodiscard]] KeyingSheet planKeying(Id<Athlete>, MassUnit, QDate, const SessionSheet*);

using DescribeLift = std::function<SheetExercise(const LiftLine&)>;
// A session that was keyed from this sheet: a set takes the row of its lift that has its number. One that was numbered in another
// way (imported, or counted with its warm-ups) fills the rows in order, warm-ups before them. More sets than were printed are
// rows more, and a lift that isn't on the sheet is an exercise more, named by `describe`.
[[nodiscard]] KeyingSheet withRecord(const KeyingSheet& plan, const SessionRecord&, const DescribeLift& describe);

// The first row without a set, from a place on; absent: there is none.
[[nodiscard]] std::optional<KeyingPlace> firstOpenRow(const KeyingSheet&, KeyingPlace from = {});

// Changes of the plan while keying. `shown` is what stands on screen; places are its. Each gives the exercise to go on with.
std::size_t addExercise(KeyingSheet& plan, const KeyingSheet& shown, const SheetExercise&);
std::size_t addRow(KeyingSheet& plan, const KeyingSheet& shown, std::size_t exercise);
// Sets that are in the book stay on the lift they were done on; the rows that are left go to the other one.
std::size_t changeLift(KeyingSheet& plan, const KeyingSheet& shown, std::size_t exercise, const SheetExercise&);

}  // namespace steelyard
