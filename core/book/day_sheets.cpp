#include "core/book/day_sheets.h"

#include "core/base/text.h"
#include "core/book/sheet_targets.h"
#include "core/sheets/sheets_for_day.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <tuple>

namespace steelyard {
namespace {

struct DaySheetsText {
    Q_DECLARE_TR_FUNCTIONS(DaySheetsText)
};

Result<std::vector<Row<Athlete>>> athletesAsked(Database& database, const DaySheetsRequest& request)
{
    const AthleteRepository repository(database);
    if (request.athlete) {
        STEELYARD_TRY(auto row, repository.findByName(cleanName(*request.athlete)));
        return std::vector{std::move(row)};
    }
    STEELYARD_TRY(auto rows, repository.all());
    std::erase_if(rows, [](const Row<Athlete>& row) { return row.value.archived; });
    return rows;
}

// Sheets with loads and repetitions that are likely.
class LikelySheetMaker {
public:
    LikelySheetMaker(const Library& library, std::span<const Row<Gym>> gyms, SheetTargets targets)
        : m_maker(library, gyms), m_targets(std::move(targets))
    {}
    [[nodiscard]] std::optional<SessionSheet> make(const AthleteLog& log, QDate date)
    {
        return m_maker.make(log, date, m_targets.readingFor(log, date));
    }

private:
    DaySheetMaker m_maker;
    SheetTargets m_targets;
};

void addSheetsOf(const AthleteLog& log, const DaySheetsRequest& request, LikelySheetMaker& maker,
                 std::vector<DaySheet>& sheets)
{
    const std::size_t before = sheets.size();
    for (int day = 0; day < request.days; ++day) {
        const QDate date = request.from.addDays(day);
        const bool expected = isExpected(log, date);
        if (!expected && !request.alsoUnexpected) continue;
        if (auto sheet = maker.make(log, date)) sheets.push_back({log.athlete.id, expected, *std::move(sheet)});
    }
    if (request.athlete && sheets.size() == before)
        if (auto sheet = maker.make(log, request.from)) sheets.push_back({log.athlete.id, false, *std::move(sheet)});
}

}  // namespace

Result<std::vector<DaySheet>> readDaySheets(Database& database, const DaySheetsRequest& request,
                                            const Progress& progress)
{
    if (!request.from.isValid() || request.days < 1 || request.days > kMostSheetDays)
        return fail(
            ErrorCode::Invalid,
            DaySheetsText::tr("Sheets are made for a day on the calendar and at most %1 days.").arg(kMostSheetDays));
    STEELYARD_TRY(const auto athletes, athletesAsked(database, request));
    STEELYARD_TRY(const auto library, LibraryRepository(database).read());
    STEELYARD_TRY(const auto gyms, GymRepository(database).all());
    STEELYARD_TRY(auto targets, SheetTargets::read(database, library, gyms, request.from));
    LikelySheetMaker maker(library, gyms, std::move(targets));
    std::vector<DaySheet> sheets;
    for (std::size_t i = 0; i < athletes.size(); ++i) {
        if (progress.cancelled())
            return fail(ErrorCode::Cancelled, DaySheetsText::tr("Making the sheets was stopped."));
        STEELYARD_TRY(const auto log,
                      readAthleteLog(database, library, athletes[i].id, request.from.addDays(request.days - 1)));
        addSheetsOf(log, request, maker, sheets);
        progress.report(static_cast<double>(i + 1) / static_cast<double>(athletes.size()));
    }
    std::ranges::stable_sort(sheets, [](const DaySheet& a, const DaySheet& b) {
        return std::tuple(a.sheet.date, a.sheet.group, searchKey(a.sheet.athlete))
               < std::tuple(b.sheet.date, b.sheet.group, searchKey(b.sheet.athlete));
    });
    return sheets;
}

}  // namespace steelyard
