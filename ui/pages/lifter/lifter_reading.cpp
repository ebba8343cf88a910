#include "ui/pages/lifter/lifter_reading.h"

#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LifterReadingText {
    Q_DECLARE_TR_FUNCTIONS(LifterReadingText)
};

}  // namespace

Result<LifterReading> readLines(AthleteLog log, const ReadingParameters& parameters, const RuleSettings& settings,
                                QDate asOf, const Progress& progress)
{
    auto engine = std::make_shared<const RegimeEngine>(parameters, readingThresholds(settings), format::wording(),
                                                       ReadingDepth::Course);
    LifterTracker state(engine->parameters(), engine->thresholds(), log.athlete.value.experience);
    auto readings = engine->readAll(log, asOf, state);
    if (progress.cancelled())
        return fail(ErrorCode::Cancelled, LifterReadingText::tr("Reading the record was stopped."));
    return LifterReading{std::move(log), std::move(engine), std::move(state), std::move(readings), asOf};
}

LineExplanation explainLineOf(const LifterReading& lifter, std::size_t line)
{
    return explainLine(*lifter.engine, lifter.log.lines[line], lifter.log, lifter.asOf);
}

std::vector<CapacityAhead> aheadOf(const LifterReading& lifter, std::size_t line)
{
    return lifter.engine->ahead(lifter.log.lines[line], lifter.log, lifter.readings[line], lifter.state, lifter.asOf);
}

std::optional<LineCurve> curveOf(const LifterReading& lifter, std::size_t line)
{
    return curveOfLine(*lifter.engine, lifter.log.lines[line], lifter.log, lifter.asOf);
}

Result<LifterReading> readLifter(const QString& bookPath, Id<Athlete> athlete, QDate asOf, const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(bookPath));
    STEELYARD_TRY(const Library library, LibraryRepository(*database).read());
    STEELYARD_TRY(auto log, readAthleteLog(*database, library, athlete, asOf));
    STEELYARD_TRY(const RuleSettings settings, RuleSettingRepository(*database).all());
    STEELYARD_TRY(const ReadingParameters parameters, readReadingParameters(*database, asOf));
    STEELYARD_TRY(auto repetitions, RepetitionRepository(*database).ofLifter(athlete));
    STEELYARD_TRY(auto lifter, readLines(std::move(log), parameters, settings, asOf, progress));
    lifter.repetitions = std::move(repetitions);
    return lifter;
}

}  // namespace steelyard
