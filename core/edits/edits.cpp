#include "core/edits/edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/decision_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "core/storage/set_place.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct EditText {
    Q_DECLARE_TR_FUNCTIONS(EditText)
};

}  // namespace

std::unique_ptr<Edit> addAthlete(const Athlete& athlete)
{
    return plainEdit(EditText::tr("add %1").arg(athlete.name), [athlete](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(AthleteRepository(tx.database()).insert(tx, athlete));
        return {};
    });
}

std::unique_ptr<Edit> changeAthlete(Id<Athlete> id, const Athlete& athlete)
{
    return plainEdit(EditText::tr("change %1's profile").arg(athlete.name), [id, athlete](Transaction& tx) {
        return AthleteRepository(tx.database()).replace(tx, id, athlete);
    });
}

std::unique_ptr<Edit> recordBodyMass(Id<Athlete> id, BodyMassEntry entry)
{
    return plainEdit(EditText::tr("record body mass"), [id, entry](Transaction& tx) {
        return AthleteRepository(tx.database()).putBodyMass(tx, id, entry);
    });
}

std::unique_ptr<Edit> makeDecision(const Decision& decision, const QString& about,
                                   const std::optional<BlockChange>& change)
{
    return plainEdit(EditText::tr("decide on %1").arg(about), [decision, change](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(DecisionRepository(tx.database()).insert(tx, decision));
        if (!change) return {};
        return BlockRepository(tx.database()).replace(tx, change->id, change->block);
    });
}

std::unique_ptr<Edit> addSet(LiftLine line, QDate date, const SetEntry& set)
{
    return plainEdit(EditText::tr("add a set"), [line, date, set](Transaction& tx) -> Result<void> {
        STEELYARD_TRY(const PlacedSet placed, placeAtEnd(tx, line, date, set));
        STEELYARD_CHECK(firstProblem(validate(placed.set)));
        STEELYARD_CHECK(LogbookRepository(tx.database()).insert(tx, line.athlete, placed));
        return {};
    });
}

std::unique_ptr<Edit> changeSet(Id<SetEntry> id, const SetEntry& set, const Clock& clock)
{
    return plainEdit(EditText::tr("change a set"), [id, set, now = clock.nowUtc()](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(set)));
        return LogbookRepository(tx.database()).replace(tx, id, set, now);
    });
}

std::unique_ptr<Edit> removeSet(Id<SetEntry> id, const Clock& clock)
{
    return plainEdit(EditText::tr("remove a set"), [id, now = clock.nowUtc()](Transaction& tx) {
        return LogbookRepository(tx.database()).remove(tx, id, now);
    });
}

std::unique_ptr<Edit> rateExercise(LiftLine line, QDate date, const ExerciseRating& rating)
{
    return plainEdit(EditText::tr("rate an exercise"), [line, date, rating](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(rating)));
        const LogbookRepository logbook(tx.database());
        STEELYARD_TRY(const auto session, logbook.session(tx, line.athlete, date));
        STEELYARD_TRY(const auto lineId, logbook.line(tx, line));
        return logbook.putRating(tx, line.athlete, session, lineId, rating);
    });
}

std::unique_ptr<Edit> addBlock(const Block& block)
{
    return plainEdit(EditText::tr("add block %1").arg(block.name), [block](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(BlockRepository(tx.database()).insert(tx, block));
        return {};
    });
}

std::unique_ptr<Edit> addBlocks(std::vector<Block> blocks, const QString& name)
{
    const QString label =
        EditText::tr("add block %1 for %n lifter(s)", nullptr, static_cast<int>(blocks.size())).arg(name);
    return plainEdit(label, [blocks = std::move(blocks)](Transaction& tx) -> Result<void> {
        for (const Block& block : blocks) STEELYARD_CHECK(BlockRepository(tx.database()).insert(tx, block));
        return {};
    });
}

std::unique_ptr<Edit> changeBlock(Id<Block> id, const Block& block)
{
    return plainEdit(EditText::tr("change block %1").arg(block.name),
                     [id, block](Transaction& tx) { return BlockRepository(tx.database()).replace(tx, id, block); });
}

std::unique_ptr<Edit> removeBlock(Id<Block> id, Id<Athlete> owner)
{
    return plainEdit(EditText::tr("remove a block"),
                     [id, owner](Transaction& tx) { return BlockRepository(tx.database()).remove(tx, id, owner); });
}

std::unique_ptr<Edit> addTemplate(const BlockTemplate& shape)
{
    return plainEdit(EditText::tr("keep template %1").arg(shape.name), [shape](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(shape)));
        STEELYARD_CHECK(BlockRepository(tx.database()).insert(tx, shape));
        return {};
    });
}

std::unique_ptr<Edit> removeTemplate(const Row<BlockTemplate>& shape)
{
    return plainEdit(EditText::tr("remove template %1").arg(shape.value.name),
                     [id = shape.id](Transaction& tx) { return BlockRepository(tx.database()).remove(tx, id); });
}

std::unique_ptr<Edit> setRuleThreshold(const QString& rule, const QString& name, double value)
{
    return plainEdit(EditText::tr("change a threshold"), [rule, name, value](Transaction& tx) {
        return RuleSettingRepository(tx.database()).put(tx, rule, name, value);
    });
}

}  // namespace steelyard
