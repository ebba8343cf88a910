// The words of the plan: what a slot becomes, and what stands on a sheet where no slot carries a decision.
//
//   slotDifference(change, library)        {"3 sets of 8–12", "2 sets of 8–12"}
//   replanWords(plan)                      "No block is planned: it becomes a note on the next sheet."
//   actionNote(input, choice)              "Stay at 40 kg."
//
// A difference names only what differs. Failures: none; what the library doesn't have is left out.
#pragma once

#include "core/planning/replan.h"

namespace steelyard::format {

struct BeforeAfter {
    QString before;
    QString after;
    friend bool operator==(const BeforeAfter&, const BeforeAfter&) = default;
};

[[nodiscard]] QString band(const RepBand& band);  // "8–12"
[[nodiscard]] QString shortDay(QDate date);       // "Mon 8 Mar"
[[nodiscard]] BeforeAfter slotDifference(const PlannedChange& change, const Library& library);
// "Arm curl, straight bar, supinated"
[[nodiscard]] QString liftName(const LiftLine& lift, const Library& library);
// Where the decision lands, in one sentence.
[[nodiscard]] QString replanWords(const Replan& plan);
// What can be chosen, as one item of a list.
[[nodiscard]] QString choiceWords(const ReplanChoice& choice, const Library& library);
// What stands on the next sheet for a change that found no slot, with what was chosen; else as in core/flags/actions.h.
[[nodiscard]] QString actionNote(const ReplanInput& input, const ReplanChoice& choice);

}  // namespace steelyard::format
