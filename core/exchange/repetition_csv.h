// What a measuring device writes of a set: a delimited file with one row a repetition. Any names of columns; the order of the
// columns and the units are guessed from the heading and the numbers and can be changed.
//
//   STEELYARD_TRY(const RepetitionTable table, readRepetitionTable(bytes));
//   RepetitionMapping mapping = guessRepetitionColumns(table);          // mapping.columns[Travel] == 3, in metres
//   const RepetitionReading reading = readRepetitions(table, mapping);
//   reading.sets[0].repetitions.size()                                   // of one set each, in the file's order
//   reading.problems[0]                                                  // row 7, column "height": what is wrong and what to do
//
// Rows belong to one set as long as date, lifter, exercise and set number stay the same; a column of repetition numbers that
// starts again begins another set. Empty cells are unknown. A row with a problem makes the whole set one that can't be taken over.
// Both decimal marks are read, and the separators , ; and tab. Rows are counted as a spreadsheet counts them, the heading is row 1.
// Failures: Invalid when the file as a whole can't be read (encoding, quoting, no rows, no column of travel or time).
#pragma once

#include "core/base/enum_text.h"
#include "core/base/result.h"
#include "core/domain/repetition.h"

#include <QtCore/QStringList>

namespace steelyard {

enum class RepetitionColumn { Date, Athlete, Exercise, Set, Number, Travel, Low, High, Lifting, Lowering };
enum class LengthUnit { mm, cm, m };
enum class TimeUnit { s, ms };

inline constexpr std::size_t kRepetitionColumnCount = 10;

struct RepetitionRow {
    int row = 2;
    QStringList cells;
};

struct RepetitionTable {
    QStringList header;
    std::vector<RepetitionRow> rows;
};

struct RepetitionMapping {
    std::array<std::optional<int>, kRepetitionColumnCount> columns{};  // by RepetitionColumn, from 0
    LengthUnit length = LengthUnit::mm;
    TimeUnit time = TimeUnit::s;

    [[nodiscard]] std::optional<int> of(RepetitionColumn column) const
    {
        return columns[static_cast<std::size_t>(column)];
    }
    void set(RepetitionColumn column, std::optional<int> at) { columns[static_cast<std::size_t>(column)] = at; }
    friend bool operator==(const RepetitionMapping&, const RepetitionMapping&) = default;
};

// What a file says of the set that repetitions belong to; what it doesn't say is absent.
struct RepetitionPlace {
    std::optional<QDate> date;
    QString athlete;
    QString exercise;
    std::optional<int> set;
    friend bool operator==(const RepetitionPlace&, const RepetitionPlace&) = default;
};

struct ReadRepetitions {
    RepetitionPlace place;
    std::vector<int> rows;  // of the file, one a repetition
    std::vector<Repetition> repetitions;
    bool sound = true;  // false: a problem names one of its rows
};

struct RepetitionProblem {
    int row = 0;
    QString column;  // as the file heads it
    QString text;    // what is wrong and what to do
    friend bool operator==(const RepetitionProblem&, const RepetitionProblem&) = default;
};

struct RepetitionReading {
    std::vector<ReadRepetitions> sets;
    std::vector<RepetitionProblem> problems;
};

[[nodiscard]] Result<RepetitionTable> readRepetitionTable(const QByteArray& bytes);
[[nodiscard]] RepetitionMapping guessRepetitionColumns(const RepetitionTable& table);
[[nodiscard]] RepetitionReading readRepetitions(const RepetitionTable& table, const RepetitionMapping& mapping);
// Travel, a height pair or a time is mapped: there is something to read.
[[nodiscard]] bool tellsAnything(const RepetitionMapping& mapping);

template <>
struct EnumText<LengthUnit> {
    static constexpr auto table =
        std::to_array<EnumKey<LengthUnit>>({{LengthUnit::mm, "mm"}, {LengthUnit::cm, "cm"}, {LengthUnit::m, "m"}});
};
template <>
struct EnumText<TimeUnit> {
    static constexpr auto table = std::to_array<EnumKey<TimeUnit>>({{TimeUnit::s, "s"}, {TimeUnit::ms, "ms"}});
};

}  // namespace steelyard
