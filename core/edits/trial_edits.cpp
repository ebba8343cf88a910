#include "core/edits/trial_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/block_repository.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialEditText {
    Q_DECLARE_TR_FUNCTIONS(TrialEditText)
};

Result<void> changeBlocks(Transaction& tx, const std::vector<BlockChange>& blocks)
{
    for (const BlockChange& change : blocks)
        STEELYARD_CHECK(BlockRepository(tx.database()).replace(tx, change.id, change.block));
    return {};
}

// The trial with nothing that may change while it runs: what is left is its design.
Trial designAlone(Trial trial)
{
    trial.looks.clear();
    trial.ending.reset();
    for (TrialDay& day : trial.days) day = {{}, day.block, day.arm, {}, false, {}};
    return trial;
}

Result<void> keepsDesign(const Trial& before, const Trial& after)
{
    if (designAlone(before) == designAlone(after)) return {};
    return fail(ErrorCode::Invalid,
                TrialEditText::tr("The design of a trial stands from its first day: arms, order and outcomes can't be "
                                  "changed. End it and set up another."));
}

std::unique_ptr<Edit> writeTrial(QString label, const Row<Trial>& before, const Trial& after,
                                 std::vector<BlockChange> blocks)
{
    return plainEdit(std::move(label), [before, after, blocks = std::move(blocks)](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(keepsDesign(before.value, after));
        STEELYARD_CHECK(TrialRepository(tx.database()).replace(tx, before.id, after));
        return changeBlocks(tx, blocks);
    });
}

}  // namespace

std::unique_ptr<Edit> designTrial(const Trial& trial, std::vector<BlockChange> blocks)
{
    return plainEdit(TrialEditText::tr("set up trial “%1”").arg(trial.question),
                     [trial, blocks = std::move(blocks)](Transaction& tx) -> Result<void> {
                         STEELYARD_CHECK(TrialRepository(tx.database()).insert(tx, trial));
                         return changeBlocks(tx, blocks);
                     });
}

std::unique_ptr<Edit> changeTrialDays(const Row<Trial>& before, const Trial& after, std::vector<BlockChange> blocks)
{
    return writeTrial(TrialEditText::tr("change a session of trial “%1”").arg(before.value.question), before, after,
                      std::move(blocks));
}

std::unique_ptr<Edit> lookAtTrial(const Row<Trial>& before, TrialLook look)
{
    const QString label = TrialEditText::tr("look at trial “%1” before its end").arg(before.value.question);
    return plainEdit(label, [before, look](Transaction& tx) -> Result<void> {
        if (before.value.ending)
            return fail(ErrorCode::Invalid,
                        TrialEditText::tr("This trial has ended: its results can be looked at freely."));
        Trial after = before.value;
        const auto place = std::ranges::upper_bound(after.looks, look.date, {}, &TrialLook::date);
        after.looks.insert(place, look);
        return TrialRepository(tx.database()).replace(tx, before.id, after);
    });
}

std::unique_ptr<Edit> endTrial(const Row<Trial>& before, const TrialEnding& ending, std::vector<BlockChange> blocks)
{
    Trial after = before.value;
    after.ending = ending;
    return writeTrial(TrialEditText::tr("end trial “%1”").arg(before.value.question), before, after, std::move(blocks));
}

std::unique_ptr<Edit> reopenTrial(const Row<Trial>& before)
{
    Trial after = before.value;
    after.ending.reset();
    return writeTrial(TrialEditText::tr("go on with trial “%1”").arg(before.value.question), before, after, {});
}

std::unique_ptr<Edit> removeTrial(const Row<Trial>& trial, std::vector<BlockChange> blocks)
{
    return plainEdit(
        TrialEditText::tr("remove trial “%1”").arg(trial.value.question),
        [id = trial.id, owner = trial.value.athlete, blocks = std::move(blocks)](Transaction& tx) -> Result<void> {
            STEELYARD_CHECK(TrialRepository(tx.database()).remove(tx, id, owner));
            return changeBlocks(tx, blocks);
        });
}

std::unique_ptr<Edit> carryTrialChoice(const Row<Trial>& trial, std::vector<BlockChange> blocks)
{
    return plainEdit(TrialEditText::tr("go on with the choice of trial “%1”").arg(trial.value.question),
                     [blocks = std::move(blocks)](Transaction& tx) { return changeBlocks(tx, blocks); });
}

}  // namespace steelyard
