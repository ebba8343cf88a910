#include "core/book/fit_sample.h"

#include "core/analysis/parameter_fit.h"
#include "core/flags/reading_thresholds.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct FitSampleText {
    Q_DECLARE_TR_FUNCTIONS(FitSampleText)
};

// The lines of an athlete that are long enough, those with most sessions first, at most so many.
std::vector<FitLine> usableLines(const AthleteLog& log, const VerdictThresholds& thresholds, FitSpan span,
                                 std::size_t most)
{
    const auto sessions = [span](const LineRecord* record) {
        return std::ranges::count_if(record->exposures, [span](const Exposure& exposure) {
            return exposure.date >= span.first && exposure.date <= span.last;
        });
    };
    std::vector<const LineRecord*> records;
    for (const LineRecord& record : log.lines)
        if (sessions(&record) >= kLeastFitWeeks) records.push_back(&record);
    std::ranges::stable_sort(records, std::greater<>(), sessions);
    std::vector<FitLine> lines;
    for (const LineRecord* record : records) {
        if (lines.size() == most) break;
        FitLine line = fitLineOf(*record, log, thresholds, span);
        if (isLongEnough(line)) lines.push_back(std::move(line));
    }
    return lines;
}

// Everybody's first line, then everybody's second, ...
std::vector<FitLine> byTurns(std::vector<std::vector<FitLine>> everybody, std::size_t most)
{
    std::vector<FitLine> lines;
    for (std::size_t turn = 0; lines.size() < most; ++turn) {
        std::vector<FitLine> thisTurn;
        for (auto& of : everybody)
            if (turn < of.size()) thisTurn.push_back(std::move(of[turn]));
        if (thisTurn.empty()) break;
        // When not all find room, those at even distances, so that no part of the roster is left out.
        const std::size_t room = std::min(thisTurn.size(), most - lines.size());
        for (std::size_t i = 0; i < room; ++i) lines.push_back(std::move(thisTurn[i * thisTurn.size() / room]));
    }
    return lines;
}

FitSample keepSomeApart(std::vector<FitLine> lines)
{
    FitSample sample;
    const bool enough = lines.size() >= kLeastLinesToKeepApart;
    for (std::size_t i = 0; i < lines.size(); ++i)
        (enough && i % 5 == 4 ? sample.apart : sample.lines).push_back(std::move(lines[i]));
    return sample;
}

}  // namespace

Result<FitSample> readFitSample(Database& db, QDate asOf, const Progress& progress)
{
    STEELYARD_TRY(const Library library, LibraryRepository(db).read());
    STEELYARD_TRY(const RuleSettings settings, RuleSettingRepository(db).all());
    STEELYARD_TRY(auto athletes, AthleteRepository(db).all());
    std::erase_if(athletes, [](const Row<Athlete>& row) { return row.value.archived; });
    const VerdictThresholds thresholds = readingThresholds(settings);
    const FitSpan span{asOf.addDays(1 - 7 * kSampleWeeks), asOf};
    const std::size_t each = athletes.empty() ? 0 : (kMostSampleLines + athletes.size() - 1) / athletes.size();
    std::vector<std::vector<FitLine>> everybody;
    for (const Row<Athlete>& athlete : athletes) {
        if (progress.cancelled()) return fail(ErrorCode::Cancelled, FitSampleText::tr("Learning was stopped."));
        STEELYARD_TRY(const AthleteLog log, readAthleteLog(db, library, athlete.id, asOf));
        everybody.push_back(usableLines(log, thresholds, span, each));
        progress.report(static_cast<double>(everybody.size()) / static_cast<double>(athletes.size()));
    }
    return keepSomeApart(byTurns(std::move(everybody), kMostSampleLines));
}

}  // namespace steelyard
