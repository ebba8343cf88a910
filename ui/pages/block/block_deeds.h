// What an action of the Block place does: the block as it will be, or why not, and what the Edit menu calls it. Actions that need a word
// typed come as a question with the operation that its answer goes to. No widget.
//
//   const PlanChoice choice{*shown, grid->chosen(), grid->cursor(), scope};
//   if (auto deed = deedOf(u"block.sets.more"_qs, choice)) apply(std::move(deed->block), deed->label);
//   if (auto asking = askingOf(action, choice)) line->ask({asking->label, asking->text}, …asking->answer(typed)…);
//
// Slots of days that have passed are left out of what is chosen. Null: the action is none of these.
#pragma once

#include "core/planning/block_ops.h"
#include "ui/pages/block/block_places_view.h"

#include <functional>

namespace steelyard {

struct PlanChoice {
    const BlockShown& shown;
    PlanPlaces chosen;
    PlanCursor cursor;
    WeekScope scope = WeekScope::ThisWeek;

    // What an edit is about: the chosen slots that are open, and with them those of the later weeks where the scope says so.
    [[nodiscard]] PlanPlaces places(bool normalOnly = false) const;
};

struct Deed {
    Result<Block> block;
    QString label;
};

struct Asking {
    QString label;  // the question
    QString text;   // to begin with
    QString edit;   // what the edit is called
    std::function<Result<Block>(const QString& typed)> answer;
    QString help = {};  // what there is to choose from, said while it is asked
};

[[nodiscard]] std::optional<Deed> deedOf(const QString& action, const PlanChoice&);
[[nodiscard]] std::optional<Asking> askingOf(const QString& action, const PlanChoice&);
// Whether an action is about the chosen slots.
[[nodiscard]] bool isAboutSlots(const QString& action);

// A lift as it comes into a plan: its variant's band, and the reserve that the rest of the week has.
[[nodiscard]] Slot newSlot(const LiftLine& lift, const BlockShown&);
[[nodiscard]] Deed addDeed(const std::vector<Slot>&, const PlanChoice&);
[[nodiscard]] Deed replaceDeed(const LiftLine& to, bool everywhere, const PlanChoice&);
[[nodiscard]] Deed carryDeed(int days, std::optional<std::size_t> before, bool copy, const PlanChoice&);
[[nodiscard]] Deed doseDeed(const PlanPlace& place, const Slot& typed, const PlanChoice&);

}  // namespace steelyard
