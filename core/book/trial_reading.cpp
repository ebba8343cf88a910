#include "core/book/trial_reading.h"

#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

namespace steelyard {

TrialAnalysis LifterTrials::analyse(const Trial& trial, const Wording& wording) const
{
    return analyseTrial(trial, log, library, parameters, thresholds, asOf, wording);
}

Result<LifterTrials> readTrials(Database& database, Id<Athlete> athlete, QDate asOf)
{
    STEELYARD_TRY(auto library, LibraryRepository(database).read());
    STEELYARD_TRY(const auto settings, RuleSettingRepository(database).all());
    STEELYARD_TRY(const auto parameters, readReadingParameters(database, asOf));
    STEELYARD_TRY(auto log, readAthleteLog(database, library, athlete, asOf));
    return LifterTrials{std::move(library), std::move(log), parameters, readingThresholds(settings), asOf};
}

std::vector<BlockChange> blockChanges(const LaidTrial& laid)
{
    std::vector<BlockChange> changes;
    changes.reserve(laid.blocks.size());
    for (const Row<Block>& row : laid.blocks) changes.push_back({row.id, row.value});
    return changes;
}

}  // namespace steelyard
