// A set on one line, in the trade's "load x reps" with what else is worth a word behind it: typed at the desk, pasted from
// notes, written back where a set is edited.
//
//   readSet(u"42.5x12 w @8", {})           42.5 kg x 12, watched and all to the standard, effort 8
//   readSet(u"12-3s2t1+", {last, kg})      the load of before x 12, three off the standard (swing twice, short at the top once),
//                                          and one more that failed part-way
//   writeSet(set, MassUnit::kg)            what readSet() reads back as the same set
//
// After the repetitions, in any order, each once, spaces where one likes:
//   w        watched, all to the standard          -3   watched, three off the standard       (neither: not watched)
//   b t s d l a, each with a count (1 if left out): short at the bottom, short at the top, swing, dropped lowering, lean changed,
//            assisted; marks of one kind say how many were off, of several kinds it is said with -3
//   -?       marks were seen, but nobody counted what was off
//   +        a further repetition failed part-way
//   @8  rir2 effort, either of them                /3   lowered in three seconds              lean12  degrees from upright
//   warmup deload test                             "    the rest of the line is the note (\n a line break, \\ a backslash)
// Units stand behind the load (95lb); without one it is the unit given here. Both decimal marks are read, a point is written.
//
// A line is one set; splitSets() cuts pasted lines at semicolons. The set's number is left at 1: where it stands is not the
// line's business. Failure: the place in the line and what to type there. Never anything else, whatever the input.
#pragma once

#include "core/domain/logbook.h"

namespace steelyard {

struct NotationContext {
    std::optional<Load> load;      // what repetitions alone keep
    MassUnit unit = MassUnit::kg;  // of a load without one
    SetKind kind = SetKind::Work;  // of a line that names none
};

struct NotationProblem {
    qsizetype at = 0;      // the first character that doesn't fit, from 0; the line's length when something is missing
    qsizetype length = 0;  // how many characters are meant; 0: something is missing there
    QString text;          // what is wrong and what to type
    friend bool operator==(const NotationProblem&, const NotationProblem&) = default;
};

using NotationReading = tl::expected<SetEntry, NotationProblem>;

[[nodiscard]] NotationReading readSet(QStringView line, const NotationContext& context);
// The whole set, load and all; its unit only where it is not `usual`, its kind only where it is not `kind`.
[[nodiscard]] QString writeSet(const SetEntry& set, MassUnit usual, SetKind kind = SetKind::Work);
// "42.5x12; 12; 11-1" as three lines; a note goes to the end, semicolons and all. Empty parts are left out.
[[nodiscard]] std::vector<QStringView> splitSets(QStringView line);

// The letters of the marks, wherever marks are keyed: s is Mark::Swing.
[[nodiscard]] QChar letterOf(Mark mark);
[[nodiscard]] std::optional<Mark> markOfLetter(QChar letter);

}  // namespace steelyard
