#include "ui/pages/lifter/trials_reading.h"

#include "core/storage/athlete_repository.h"
#include "core/storage/trial_repository.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialsReadingText {
    Q_DECLARE_TR_FUNCTIONS(TrialsReadingText)
};

// Running ones first, then the newest.
bool comesBefore(const Row<Trial>& a, const Row<Trial>& b)
{
    const auto rank = [](const Row<Trial>& row) {
        return std::tuple(row.value.ending.has_value(), -row.value.designedOn.toJulianDay(), -row.id.value());
    };
    return rank(a) < rank(b);
}

tl::unexpected<Error> wasStopped()
{
    return fail(ErrorCode::Cancelled, TrialsReadingText::tr("Reading the trials was stopped."));
}

std::vector<JudgedTrial> endedOf(const std::vector<ShownTrial>& trials)
{
    std::vector<JudgedTrial> ended;
    for (const ShownTrial& shown : trials)
        if (shown.trial().ending) ended.push_back({shown.trial(), shown.analysis.verdict});
    return ended;
}

}  // namespace

Result<TrialsReading> readShownTrials(const QString& bookPath, Id<Athlete> athlete, QDate today,
                                      const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(bookPath));
    STEELYARD_TRY(auto record, readTrials(*database, athlete, today));
    std::vector<Row<Trial>> rows = record.log.trials;
    std::ranges::sort(rows, comesBefore);
    std::vector<ShownTrial> trials;
    for (Row<Trial>& row : rows) {
        if (progress.cancelled()) return wasStopped();
        TrialAnalysis analysis = record.analyse(row.value, format::wording());
        trials.push_back({std::move(row), std::move(analysis), {}});
    }
    const auto ended = endedOf(trials);
    for (ShownTrial& shown : trials)
        shown.earlier =
            earlierTrials(shown.trial(), shown.analysis.verdict, ended, shown.analysis.armNames, format::wording());
    return TrialsReading{std::move(record), std::move(trials)};
}

Result<std::vector<FactorWins>> readRosterWins(const QString& bookPath, QDate today, const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(bookPath));
    STEELYARD_TRY(const auto athletes, AthleteRepository(*database).all());
    std::vector<JudgedTrial> judged;
    Library library;
    for (const Row<Athlete>& athlete : athletes) {
        if (progress.cancelled()) return wasStopped();
        // Most lifters have none; only those who have are read as a whole.
        STEELYARD_TRY(const auto own, TrialRepository(*database).of(athlete.id));
        if (std::ranges::none_of(own, [](const Row<Trial>& row) { return row.value.ending.has_value(); })) continue;
        STEELYARD_TRY(auto record, readTrials(*database, athlete.id, today));
        for (const Row<Trial>& row : record.log.trials)
            if (row.value.ending) judged.push_back({row.value, record.analyse(row.value, format::wording()).verdict});
        library = std::move(record.library);
    }
    std::vector<FactorWins> all;
    for (const auto& row : EnumText<TrialFactor>::table)
        if (auto wins = rosterWins(judged, row.value, library); !wins.empty())
            all.push_back({row.value, std::move(wins)});
    return all;
}

}  // namespace steelyard
