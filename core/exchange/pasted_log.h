// Training notes as text, in lines: whose, which day, which exercise, and sets in the set notation (core/keying/set_notation.h).
//
//   Ada Fulcrum:                       a lifter of the book, with a colon; or the one who is chosen
//   2026-03-01                         a day, this way or in the order that is asked for
//   Arm curl, cable, upright           an exercise, with a variant or without; / before a grip, / before a standard
//   42.5x12 w; 12; 11-1 @9             sets; several with semicolons; repetitions alone keep the load before
//   Row: 60x10                         an exercise and its sets in one line
//   + Board press                      an exercise that the library hasn't
//   # anything                         a remark for oneself, passed over, as empty lines are
//
// A dash and a space before a line make no difference. A new day or lifter ends the exercise.
//   const PastedLog log = readPastedLog(text, {library, lifters, u"Ada Fulcrum"_qs, today, today});
//   if (log.problems == 0) importLogbook(database, log.asLogbook(), {}, progress);
// No failures: what can't be read says where in its line, and what to type there.
#pragma once

#include "core/domain/library.h"
#include "core/exchange/logbook_csv.h"

namespace steelyard {

struct PastedBy {
    QString name;
    MassUnit unit = MassUnit::kg;
};

struct PasteContext {
    const Library& library;
    std::vector<PastedBy> athletes;  // of the book
    QString athlete;                 // who is meant before a line names somebody; may be empty
    QDate date;                      // the day before a line names one
    QDate today;                     // bounds the dates
    DateOrder dateOrder = DateOrder::DayMonthYear;
};

struct PastedLine {
    enum class Kind { Nothing, Athlete, Date, Exercise, Sets, Wrong };
    Kind kind = Kind::Nothing;
    QString name;  // of the athlete or exercise as the book has it; of a new exercise as it was typed
    bool isNew = false;
    QDate date;
    std::vector<SetEntry> sets;
    qsizetype at = 0;      // of what is wrong, in the line, from 0
    qsizetype length = 0;  // 0: something is missing there
    QString problem;       // what to do
    friend bool operator==(const PastedLine&, const PastedLine&) = default;
};

struct PastedLog {
    std::vector<PastedLine> lines;  // one for each of the text
    std::vector<LogbookRow> rows;
    int problems = 0;

    [[nodiscard]] ParsedLogbook asLogbook() const;
};

[[nodiscard]] PastedLog readPastedLog(const QString& text, const PasteContext& context);

}  // namespace steelyard
