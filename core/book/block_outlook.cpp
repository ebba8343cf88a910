#include "core/book/block_outlook.h"

#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

namespace steelyard {

Result<BlockOutlook> readBlockOutlook(Database& database, const BlockOutlookRequest& request)
{
    STEELYARD_TRY(const auto library, LibraryRepository(database).read());
    STEELYARD_TRY(const auto settings, RuleSettingRepository(database).all());
    STEELYARD_TRY(const auto parameters, readReadingParameters(database, request.today));
    STEELYARD_TRY(const auto log, readAthleteLog(database, library, request.athlete, request.today));
    std::optional<Gym> gym;
    if (log.athlete.value.gym) {
        STEELYARD_TRY(auto row, GymRepository(database).find(*log.athlete.value.gym));
        gym = std::move(row.value);
    }
    const VerdictThresholds thresholds = readingThresholds(settings);
    LifterTracker tracker(parameters, thresholds, log.athlete.value.experience);
    tracker.advance(log, countLines(log, request.today), request.today);
    BlockOutlook outlook;
    outlook.forecast = forecastBlock(
        {log, library, gym ? &*gym : nullptr, tracker, request.today, settings, request.wording}, request.block);
    outlook.changes = reforecast(request.block, outlook.forecast);
    return outlook;
}

}  // namespace steelyard
