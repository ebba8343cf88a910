#include "core/book/template_fits.h"

#include "core/book/block_outlook.h"
#include "core/planning/block_ops.h"
#include "core/planning/usual_weekdays.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/gym_repository.h"
#include "core/storage/library_repository.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TemplateFitsText {
    Q_DECLARE_TR_FUNCTIONS(TemplateFitsText)
};

void countLoads(LifterFit& one)
{
    for (const PlannedWeek& week : one.fit.block.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList) {
                ++one.slots;
                one.loads += slot.load ? 1 : 0;
            }
}

// The blocks stay both; which one a day belongs to is for the coach to settle.
void remindOfBlockAhead(const AthleteLog& log, const TemplateFitsRequest& request, TemplateFit& fit)
{
    for (const Row<Block>& row : log.blocks)
        if (endOf(row.value) > request.start && row.value.start < endOf(fit.block))
            fit.differences.push_back({FitKind::Reminder,
                                       {},
                                       {},
                                       TemplateFitsText::tr("“%1” is planned up to %2 already.")
                                           .arg(row.value.name, request.wording.day(endOf(row.value).addDays(-1)))});
}

Result<LifterFit> readOne(Database& database, const Library& library, const TemplateFitsRequest& request,
                          Id<Athlete> athlete)
{
    STEELYARD_TRY(const auto log, readAthleteLog(database, library, athlete, request.today));
    std::optional<Gym> gym;
    if (log.athlete.value.gym) {
        STEELYARD_TRY(auto row, GymRepository(database).find(*log.athlete.value.gym));
        gym = std::move(row.value);
    }
    STEELYARD_TRY(TemplateFit fit,
                  fitTemplate(request.shape, {log, library, gym ? &*gym : nullptr, request.today, request.wording},
                              {request.name, request.start, usualWeekdays(log, request.today), {}}));
    STEELYARD_TRY(const auto outlook, readBlockOutlook(database, {athlete, fit.block, request.today, request.wording}));
    fit.block = withLoads(std::move(fit.block), outlook.changes);
    remindOfBlockAhead(log, request, fit);
    LifterFit one{athlete, log.athlete.value.name, std::move(fit)};
    countLoads(one);
    return one;
}

}  // namespace

Result<std::vector<LifterFit>> readTemplateFits(const TemplateFitsRequest& request, const Progress& progress)
{
    STEELYARD_TRY(const auto database, Database::openReader(request.bookPath));
    STEELYARD_TRY(const Library library, LibraryRepository(*database).read());
    std::vector<LifterFit> fits;
    fits.reserve(request.athletes.size());
    for (const Id<Athlete> athlete : request.athletes) {
        if (progress.cancelled())
            return fail(ErrorCode::Cancelled, TemplateFitsText::tr("Fitting the template was stopped."));
        STEELYARD_TRY(LifterFit one, readOne(*database, library, request, athlete));
        fits.push_back(std::move(one));
        progress.report(static_cast<double>(fits.size()) / static_cast<double>(request.athletes.size()));
    }
    return fits;
}

std::vector<Block> blocksOf(const std::vector<LifterFit>& fits)
{
    std::vector<Block> blocks;
    blocks.reserve(fits.size());
    std::ranges::transform(fits, std::back_inserter(blocks), [](const LifterFit& one) { return one.fit.block; });
    return blocks;
}

}  // namespace steelyard
