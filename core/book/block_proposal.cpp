#include "core/book/block_proposal.h"

#include "core/analysis/regime_engine.h"
#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

namespace steelyard {

Result<BlockProposal> readProposal(Database& database, Id<Athlete> athlete, ProposalWishes wishes,
                                   const Progress& progress)
{
    STEELYARD_TRY(const auto library, LibraryRepository(database).read());
    STEELYARD_TRY(const auto settings, RuleSettingRepository(database).all());
    STEELYARD_TRY(const auto parameters, readReadingParameters(database, wishes.today));
    STEELYARD_TRY(const auto log, readAthleteLog(database, library, athlete, wishes.today));
    std::optional<Gym> gym;
    if (log.athlete.value.gym) {
        STEELYARD_TRY(const auto row, GymRepository(database).find(*log.athlete.value.gym));
        gym = row.value;
    }
    const RegimeEngine engine(parameters, readingThresholds(settings), wishes.wording, ReadingDepth::Numbers);
    const auto readings = engine.readAll(log, wishes.today);
    for (std::size_t i = 0; i < readings.size(); ++i)
        if (readings[i].verdict == Verdict::Progressing) wishes.progressing.push_back(log.lines[i].id);
    return proposeBlock(log, library, gym ? &*gym : nullptr, wishes, progress);
}

}  // namespace steelyard
