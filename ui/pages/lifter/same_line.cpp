#include "ui/pages/lifter/same_line.h"

#include "core/storage/athlete_repository.h"
#include "core/storage/database.h"
#include "core/storage/logbook_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct SameLineText {
    Q_DECLARE_TR_FUNCTIONS(SameLineText)
};

struct Wanted {
    Id<Athlete> athlete;
    Id<LiftLine> line;
};

Result<std::vector<Wanted>> whoTrains(const QString& bookPath, const LiftLine& wanted)
{
    STEELYARD_TRY(const auto database, Database::openReader(bookPath));
    STEELYARD_TRY(const auto athletes, AthleteRepository(*database).all());
    const LogbookRepository logbook(*database);
    std::vector<Wanted> found;
    for (const Row<Athlete>& athlete : athletes) {
        if (athlete.value.archived) continue;
        STEELYARD_TRY(const auto lines, logbook.lines(athlete.id));
        for (const Row<LiftLine>& line : lines)
            if (line.value.variant == wanted.variant && line.value.grip == wanted.grip
                && line.value.standard == wanted.standard)
                found.push_back({athlete.id, line.id});
    }
    return found;
}

}  // namespace

Result<std::vector<LifterOnLine>> readSameLine(const QString& bookPath, const LiftLine& line, QDate asOf,
                                               const Progress& progress)
{
    STEELYARD_TRY(const auto wanted, whoTrains(bookPath, line));
    std::vector<LifterOnLine> all;
    for (const Wanted& one : wanted) {
        if (progress.cancelled())
            return fail(ErrorCode::Cancelled, SameLineText::tr("Reading the other lifters was stopped."));
        const auto read = static_cast<double>(all.size()) / static_cast<double>(wanted.size());
        STEELYARD_TRY(const LifterReading lifter, readLifter(bookPath, one.athlete, asOf, progress.part(read, read)));
        const auto at = std::ranges::find(lifter.log.lines, one.line, &LineRecord::id);
        if (at != lifter.log.lines.end())
            all.push_back({one.athlete,
                           {lifter.log.athlete.value.name,
                            lifter.readings[static_cast<std::size_t>(at - lifter.log.lines.begin())].trend}});
        progress.report(static_cast<double>(all.size()) / static_cast<double>(wanted.size()));
    }
    return all;
}

}  // namespace steelyard
