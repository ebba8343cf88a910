// A day at a glance for a gym: who trains, what each does first, second, third, and which bars, discs and dumbbells that takes at
// the same time.
//
//   for (const GymGroup& group : gymGroups(sheets, gyms))
//       for (const GymTurn& turn : group.turns)
//           if (any of turn.kit is short) ...     "25 kg discs: 5 pairs at once, 4 there"
//
// A plan has no hours, so this rests on one assumption, which the paper says too: those of one group in one gym begin together and
// keep to the order of their sheets, so that everybody's n-th exercise falls in the n-th turn. Only working loads are counted,
// and only what can be told apart: a bar by its kind and mass, discs, and a pair of dumbbells of each mass. Which of several
// stacks somebody uses isn't in the plan, so stacks are left out. Warm-ups are left out because they are over by then.
//
// A gym lists bars one by one: two bars of a kind are two rows there. Pure; no failures. Sheets come by day, group and name.
#pragma once

#include "core/sheets/session_sheet.h"

#include <span>

namespace steelyard {

enum class KitKind { Bar, Disc, Dumbbells };

struct NeededKit {
    KitKind kind = KitKind::Bar;
    Implement implement = Implement::StraightBar;  // of a bar
    Load mass;                                     // of one
    int needed = 0;                                // discs and dumbbells: pairs
    int there = 0;
    [[nodiscard]] bool isShort() const { return needed > there; }
    friend bool operator==(const NeededKit&, const NeededKit&) = default;
};

struct GymTurnUse {
    QString athlete;
    const SheetExercise* exercise = nullptr;  // in the sheets given
};

struct GymTurn {
    std::vector<GymTurnUse> uses;
    std::vector<NeededKit> kit;  // bars, then discs, then dumbbells, heaviest first
};

struct GymGroup {
    QDate date;
    QString gym;    // empty: none is set; then nothing can be short
    QString group;  // empty: none
    int athletes = 0;
    std::vector<GymTurn> turns;
};

[[nodiscard]] std::vector<GymGroup> gymGroups(std::span<const SessionSheet> sheets, std::span<const Row<Gym>> gyms);

}  // namespace steelyard
