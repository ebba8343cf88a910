// The repetitions of a set one by one, on one line: typed at the desk from film or from a tape.
//
//   readRepetitionLine(u"3*52/2.5 51b . .+", {})
//       three of 52 cm, each lowered in 2.5 s; one of 51 cm, short at the bottom; one of which nothing more is known; one that
//       failed part-way
//   writeRepetitionLine(repetitions)        what readRepetitionLine() reads back as the same repetitions
//
// Repetitions stand one after the other with spaces between them. Each is its travel, then in any order, each once, what else is known:
//   52.5     how far the load travelled, in centimetres      .    nobody measured it
//   ^1.2     lifted in seconds                                /3   lowered in seconds
//   b t s d l a   marks, as in a set's line (set_notation.h)  +    failed part-way: only the last one
// 3* before a repetition stands for three of the same. Both decimal marks are read, a point is written.
//
// Where the rep standard names the least share of a known full travel, a repetition under it must say at which end it was short
// (b or t): a travel alone can't tell.
// Heights of a measuring device have no place on the line; canBeTyped() says whether nothing would be lost.
// Failure: the place in the line and what to type there. Never anything else, whatever the input.
#pragma once

#include "core/analysis/repetition_travel.h"
#include "core/keying/set_notation.h"

#include <span>

namespace steelyard {

struct RepetitionLineContext {
    std::optional<FullTravel> full = {};
    std::optional<int> leastPercent = {};
};

// Numbered from 1, Typed; at least one.
using RepetitionLineReading = tl::expected<std::vector<Repetition>, NotationProblem>;

[[nodiscard]] RepetitionLineReading readRepetitionLine(QStringView line, const RepetitionLineContext& context);
[[nodiscard]] QString writeRepetitionLine(std::span<const Repetition> repetitions);
[[nodiscard]] bool canBeTyped(std::span<const Repetition> repetitions);
// Of a set whose repetitions nobody has written down yet: as many as it says, failed one included.
[[nodiscard]] QString emptyRepetitionLine(const SetEntry& set);

}  // namespace steelyard
