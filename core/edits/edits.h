// The edits of the roster, the logbook and the review. An import is an edit too: see exchange/logbook_import.h.
#pragma once

#include "core/base/clock.h"
#include "core/domain/block.h"
#include "core/edits/edit.h"

namespace steelyard {

[[nodiscard]] std::unique_ptr<Edit> addAthlete(const Athlete& athlete);
[[nodiscard]] std::unique_ptr<Edit> changeAthlete(Id<Athlete> id, const Athlete& athlete);
[[nodiscard]] std::unique_ptr<Edit> recordBodyMass(Id<Athlete> id, BodyMassEntry entry);
// A block as it will be, for decisions that land in the plan.
struct BlockChange {
    Id<Block> id;
    Block block;
};
// `about` names the flag for the menu: "stalled: Arm curl". Decision and block are one step of the history.
[[nodiscard]] std::unique_ptr<Edit> makeDecision(const Decision& decision, const QString& about,
                                                 const std::optional<BlockChange>& change = std::nullopt);
[[nodiscard]] std::unique_ptr<Edit> addSet(LiftLine line, QDate date, const SetEntry& set);
[[nodiscard]] std::unique_ptr<Edit> changeSet(Id<SetEntry> id, const SetEntry& set, const Clock& clock);
[[nodiscard]] std::unique_ptr<Edit> removeSet(Id<SetEntry> id, const Clock& clock);
[[nodiscard]] std::unique_ptr<Edit> rateExercise(LiftLine line, QDate date, const ExerciseRating& rating);
[[nodiscard]] std::unique_ptr<Edit> addBlock(const Block& block);
// For many lifters, one step of the history.
[[nodiscard]] std::unique_ptr<Edit> addBlocks(std::vector<Block> blocks, const QString& name);
[[nodiscard]] std::unique_ptr<Edit> changeBlock(Id<Block> id, const Block& block);
[[nodiscard]] std::unique_ptr<Edit> removeBlock(Id<Block> id, Id<Athlete> owner);
[[nodiscard]] std::unique_ptr<Edit> addTemplate(const BlockTemplate& shape);
[[nodiscard]] std::unique_ptr<Edit> removeTemplate(const Row<BlockTemplate>& shape);
[[nodiscard]] std::unique_ptr<Edit> setRuleThreshold(const QString& rule, const QString& name, double value);

}  // namespace steelyard
