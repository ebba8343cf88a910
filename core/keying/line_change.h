// Doing an exercise another way than the sheet says: which lifts there are to choose from, and what a change cuts off.
//
//   for (const LiftLine& other : otherWays(log, library, lift)) ...       // the lifter's own first
//   const LineChange change = changeOfLine(log, lift, other);
//   change.left.sets == 214;  change.opensNew();                            // that history ends here, a new one begins
//
// Another variant, grip or standard is another lift line: its history is its own. Hidden exercises and variants are offered
// only where the lifter has done them. Pure; no failures.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

struct LineHistory {
    int sets = 0;  // warm-ups left out
    int sessions = 0;
    std::optional<QDate> first;
    std::optional<QDate> last;
    friend bool operator==(const LineHistory&, const LineHistory&) = default;
};

struct LineChange {
    LineHistory left;
    LineHistory taken;
    bool variantChanges = false;
    bool gripChanges = false;
    bool standardChanges = false;
    [[nodiscard]] bool opensNew() const { return taken.sets == 0; }
};

[[nodiscard]] LineHistory historyOf(const AthleteLog&, const LiftLine&);
[[nodiscard]] LineChange changeOfLine(const AthleteLog&, const LiftLine& from, const LiftLine& to);

// Every other way of the same exercise: the lifter's own lines, the latest trained first; then other grips, other standards,
// other variants with their usual grip and standard.
[[nodiscard]] std::vector<LiftLine> otherWays(const AthleteLog&, const Library&, const LiftLine& from);
// Every lift that could be added: the lifter's own lines, the latest trained first, then every other variant of the library as
// it is usually done. Those in `without` are left out.
[[nodiscard]] std::vector<LiftLine> liftsToAdd(const AthleteLog&, const Library&, const std::vector<LiftLine>& without);

}  // namespace steelyard
