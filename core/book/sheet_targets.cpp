#include "core/book/sheet_targets.h"

#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/planning/block_forecast.h"
#include "core/storage/rule_setting_repository.h"

#include <algorithm>

namespace steelyard {
namespace {

struct LoadedSlot {
    const Slot* slot = nullptr;
    PlanPlace place;
};

// The slots of that day that have a load.
std::vector<LoadedSlot> loadedSlotsOn(const Block& block, QDate date)
{
    std::vector<LoadedSlot> loaded;
    for (std::size_t week = 0; week < block.weeks.size(); ++week)
        for (std::size_t day = 0; day < block.weeks[week].days.size(); ++day) {
            const PlannedDay& planned = block.weeks[week].days[day];
            if (planned.date != date) continue;
            for (std::size_t i = 0; i < planned.slotList.size(); ++i)
                if (planned.slotList[i].load) loaded.push_back({&planned.slotList[i], {week, day, i}});
        }
    return loaded;
}

SheetExercise* exerciseOf(SessionSheet& sheet, const Slot& slot)
{
    const auto found = std::ranges::find_if(sheet.exercises, [&](const SheetExercise& exercise) {
        return exercise.lift && exercise.lift->variant == slot.variant && exercise.lift->grip == slot.grip
               && exercise.lift->standard == slot.standard && exercise.target.load
               && exercise.target.load->asked.mass() == slot.load->mass();
    });
    return found == sheet.exercises.end() ? nullptr : &*found;
}

}  // namespace

Result<SheetTargets> SheetTargets::read(Database& database, const Library& library, std::span<const Row<Gym>> gyms,
                                        QDate asOf)
{
    auto numbers = std::make_unique<Numbers>();
    STEELYARD_TRY(numbers->settings, RuleSettingRepository(database).all());
    STEELYARD_TRY(numbers->parameters, readReadingParameters(database, asOf));
    numbers->thresholds = readingThresholds(numbers->settings);
    return SheetTargets(library, gyms, std::move(numbers));
}

const LifterTracker& SheetTargets::trackerOf(const AthleteLog& log, QDate until)
{
    if (!m_read || m_read->athlete != log.athlete.id || m_read->until > until)
        m_read.emplace(Read{log.athlete.id, until,
                            LifterTracker(m_numbers->parameters, m_numbers->thresholds, log.athlete.value.experience)});
    m_read->tracker.advance(log, countLines(log, until), until);
    m_read->until = until;
    return m_read->tracker;
}

void SheetTargets::addTo(SessionSheet& sheet, const AthleteLog& log, QDate date)
{
    const auto planned = plannedDayOn(log, date);
    if (sheet.source != SheetSource::PlannedDay || !planned) return;
    const auto loaded = loadedSlotsOn(*planned->block, date);
    if (loaded.empty()) return;
    const auto& home = log.athlete.value.gym;
    const auto gym = std::ranges::find_if(m_gyms, [&](const Row<Gym>& row) { return home && row.id == *home; });
    const QDate before = date.addDays(-1);
    SlotLoads loads({log, *m_library, gym == m_gyms.end() ? nullptr : &gym->value, trackerOf(log, before), before,
                     m_numbers->settings});
    for (const LoadedSlot& one : loaded) {
        SheetExercise* exercise = exerciseOf(sheet, *one.slot);
        if (!exercise) continue;
        const SlotLoad likely = loads.atPlannedLoad(
            {*one.slot, date, planned->week, planned->block->easing, plannedPlace(*planned->block, one.place)});
        if (likely.targetReps.empty()) continue;
        exercise->target.reps = likely.targetReps;
        exercise->target.why = likely.why;
    }
}

}  // namespace steelyard
