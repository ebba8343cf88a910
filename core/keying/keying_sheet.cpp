#include "core/keying/keying_sheet.h"

#include <algorithm>

namespace steelyard {
namespace {

SetKind kindOf(WeekKind week)
{
    switch (week) {
    case WeekKind::Normal:
        return SetKind::Work;
    case WeekKind::Deload:
        return SetKind::Deload;
    case WeekKind::Test:
        return SetKind::Test;
    }
    return SetKind::Work;
}

std::optional<SetEntry> plannedSet(const SheetExercise& exercise, std::size_t index, int number, SetKind kind)
{
    const SheetTarget& target = exercise.target;
    if (!target.load || target.reps.empty()) return std::nullopt;
    SetEntry set;
    set.number = number;
    set.load = target.load->load;
    set.reps = target.reps[std::min(index, target.reps.size() - 1)];
    set.kind = kind;
    // A reserve "as last time" is no plan: what nobody said isn't stored by one key.
    if (target.reserve && target.reservePlanned)
        set.effort = Effort{Effort::Scale::Rir, Decimal::nearest(*target.reserve, 1)};
    return set;
}

// The rows of one lift on the sheet, of all its exercises.
class RowsOfLift {
public:
    RowsOfLift(KeyingSheet& sheet, const LiftLine& lift)
    {
        for (KeyingExercise& exercise : sheet.exercises)
            if (exercise.lift == lift) m_exercises.push_back(&exercise);
    }
    [[nodiscard]] bool none() const { return m_exercises.empty(); }
    [[nodiscard]] bool has(int number) const
    {
        return std::ranges::any_of(m_exercises, [&](const KeyingExercise* exercise) {
            return std::ranges::count(exercise->rows, number, &KeyingRow::number) > 0;
        });
    }
    void takeByNumber(const RecordedSet& stored)
    {
        if (!take(stored, [&](const KeyingRow& row) { return row.number == stored.set.number; })) append(stored);
    }
    // Warm-ups were not printed: they stand before the rows.
    void takeInOrder(const RecordedSet& stored)
    {
        if (stored.set.kind != SetKind::WarmUp) {
            if (!take(stored, [](const KeyingRow&) { return true; })) append(stored);
            return;
        }
        std::vector<KeyingRow>& rows = m_exercises.front()->rows;
        const auto isWarmUp = [](const KeyingRow& row) {
            return row.stored && row.stored->set.kind == SetKind::WarmUp;
        };
        rows.insert(std::ranges::find_if_not(rows, isWarmUp), {stored.set.number, std::nullopt, stored});
    }

private:
    template <class Suits>
    bool take(const RecordedSet& stored, const Suits& suits)
    {
        for (KeyingExercise* exercise : m_exercises)
            for (KeyingRow& row : exercise->rows)
                if (!row.stored && suits(row)) {
                    row.stored = stored;
                    row.number = stored.set.number;
                    return true;
                }
        return false;
    }
    void append(const RecordedSet& stored)
    {
        m_exercises.back()->rows.push_back({stored.set.number, std::nullopt, stored});
    }

    std::vector<KeyingExercise*> m_exercises;
};

// Whether the sets were numbered by this sheet: each stands in a row of its lift, or was a set more.
bool isNumberedBy(KeyingSheet& plan, const SessionRecord& record)
{
    const int last = plan.nextNumber() - 1;
    return std::ranges::all_of(record.sets, [&](const RecordedSet& stored) {
        const RowsOfLift rows(plan, stored.lift);
        return rows.none() || stored.set.number > last || rows.has(stored.set.number);
    });
}

// The exercise of the plan that a shown one is; one that only the book knows becomes part of the plan.
KeyingExercise& planned(KeyingSheet& plan, const KeyingSheet& shown, std::size_t exercise)
{
    while (plan.exercises.size() <= exercise) {
        KeyingExercise more = shown.exercises[plan.exercises.size()];
        more.rows.clear();
        more.rating = {};
        plan.exercises.push_back(std::move(more));
    }
    return plan.exercises[exercise];
}

}  // namespace

bool KeyingExercise::anyStored() const
{
    return std::ranges::any_of(rows, [](const KeyingRow& row) { return row.stored.has_value(); });
}

bool KeyingExercise::allStored() const
{
    return std::ranges::all_of(rows, [](const KeyingRow& row) { return row.stored.has_value(); });
}

int KeyingSheet::storedSets() const
{
    std::ptrdiff_t count = 0;
    for (const KeyingExercise& exercise : exercises)
        count += std::ranges::count_if(exercise.rows, [](const KeyingRow& row) { return row.stored.has_value(); });
    return static_cast<int>(count);
}

int KeyingSheet::rowCount() const
{
    std::size_t count = 0;
    for (const KeyingExercise& exercise : exercises) count += exercise.rows.size();
    return static_cast<int>(count);
}

int KeyingSheet::nextNumber() const
{
    int last = 0;
    for (const KeyingExercise& exercise : exercises)
        for (const KeyingRow& row : exercise.rows) last = std::max(last, row.number);
    return last + 1;
}

bool KeyingSheet::ratesAfter(std::size_t exercise) const
{
    return std::none_of(exercises.begin() + static_cast<std::ptrdiff_t>(exercise) + 1, exercises.end(),
                        [&](const KeyingExercise& later) { return later.lift == exercises[exercise].lift; });
}

KeyingSheet planKeying(Id<Athlete> athlete, MassUnit unit, QDate date, const SessionSheet* sheet)
{
    KeyingSheet plan{athlete, date, unit, sheet ? kindOf(sheet->week) : SetKind::Work, {}};
    if (!sheet) return plan;
    for (const SheetExercise& words : sheet->exercises) {
        if (!words.lift) continue;
        KeyingExercise exercise{*words.lift, words, {}};
        for (int i = 0; i < words.sets; ++i) {
            const int number = words.firstSet + i;
            exercise.rows.push_back(
                {number, plannedSet(words, static_cast<std::size_t>(i), number, plan.kind), std::nullopt});
        }
        plan.exercises.push_back(std::move(exercise));
    }
    return plan;
}

KeyingSheet withRecord(const KeyingSheet& plan, const SessionRecord& record, const DescribeLift& describe)
{
    KeyingSheet shown = plan;
    const bool numbered = isNumberedBy(shown, record);
    for (const RecordedSet& stored : record.sets) {
        if (RowsOfLift(shown, stored.lift).none()) shown.exercises.push_back({stored.lift, describe(stored.lift), {}});
        RowsOfLift rows(shown, stored.lift);
        if (numbered)
            rows.takeByNumber(stored);
        else
            rows.takeInOrder(stored);
    }
    for (const RecordedRating& rated : record.ratings) {
        for (KeyingExercise& exercise : shown.exercises)
            if (exercise.lift == rated.lift) exercise.rating = rated.rating;
    }
    return shown;
}

std::optional<KeyingPlace> firstOpenRow(const KeyingSheet& sheet, KeyingPlace from)
{
    for (std::size_t at = from.exercise; at < sheet.exercises.size(); ++at) {
        const auto& rows = sheet.exercises[at].rows;
        for (std::size_t row = at == from.exercise ? from.row : 0; row < rows.size(); ++row)
            if (!rows[row].stored) return KeyingPlace{at, row};
    }
    return std::nullopt;
}

std::size_t addExercise(KeyingSheet& plan, const KeyingSheet& shown, const SheetExercise& words)
{
    if (!shown.exercises.empty()) planned(plan, shown, shown.exercises.size() - 1);
    KeyingExercise exercise{*words.lift, words, {}};
    const int first = shown.nextNumber();
    for (int i = 0; i < words.sets; ++i)
        exercise.rows.push_back(
            {first + i, plannedSet(words, static_cast<std::size_t>(i), first + i, plan.kind), std::nullopt});
    plan.exercises.push_back(std::move(exercise));
    return plan.exercises.size() - 1;
}

std::size_t addRow(KeyingSheet& plan, const KeyingSheet& shown, std::size_t exercise)
{
    const int number = shown.nextNumber();
    KeyingExercise& to = planned(plan, shown, exercise);
    to.rows.push_back({number, plannedSet(to.words, to.rows.size(), number, plan.kind), std::nullopt});
    return exercise;
}

std::size_t changeLift(KeyingSheet& plan, const KeyingSheet& shown, std::size_t exercise, const SheetExercise& words)
{
    KeyingExercise& from = planned(plan, shown, exercise);
    KeyingExercise other{*words.lift, words, {}};
    std::vector<KeyingRow> kept;
    for (const KeyingRow& row : shown.exercises[exercise].rows) {
        if (row.stored)
            kept.push_back({row.number, row.planned, std::nullopt});
        else
            other.rows.push_back(
                {row.number, plannedSet(words, other.rows.size(), row.number, plan.kind), std::nullopt});
    }
    if (other.rows.empty()) {
        const int number = shown.nextNumber();
        other.rows.push_back({number, plannedSet(words, 0, number, plan.kind), std::nullopt});
    }
    if (kept.empty()) {
        from = std::move(other);
        return exercise;
    }
    from.rows = std::move(kept);
    plan.exercises.insert(plan.exercises.begin() + static_cast<std::ptrdiff_t>(exercise) + 1, std::move(other));
    return exercise + 1;
}

}  // namespace steelyard
