#include "core/book/sheet_targets.h"

#include "core/book/reading_numbers.h"
#include "core/flags/reading_thresholds.h"
#include "core/planning/block_forecast.h"
#include "core/storage/rule_setting_repository.h"

#include <algorithm>

namespace steelyard {
namespace {

// Where the planned day stands in its block.
PlanPlace placeOf(const Block& block, const PlannedDay& day)
{
    for (std::size_t week = 0; week < block.weeks.size(); ++week)
        for (std::size_t i = 0; i < block.weeks[week].days.size(); ++i)
            if (&block.weeks[week].days[i] == &day) return {week, i, 0};
    return {};
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

SheetReading SheetTargets::readingFor(const AthleteLog& log, QDate date)
{
    SheetReading reading{{}, m_numbers->settings};
    const auto planned = plannedDayOn(log, date);
    if (!planned) return reading;
    const auto& home = log.athlete.value.gym;
    const auto gym = std::ranges::find_if(m_gyms, [&](const Row<Gym>& row) { return home && row.id == *home; });
    const QDate before = date.addDays(-1);
    SlotLoads loads({log, *m_library, gym == m_gyms.end() ? nullptr : &gym->value, trackerOf(log, before), before,
                     m_numbers->settings});
    reading.ofSlots.reserve(planned->day->slotList.size());
    PlanPlace place = placeOf(*planned->block, *planned->day);
    for (const Slot& slot : planned->day->slotList) {
        const SlotOnDay asked{slot, date, planned->week, planned->block->easing, plannedPlace(*planned->block, place)};
        reading.ofSlots.push_back(slot.load ? loads.atPlannedLoad(asked) : loads.plan(asked));
        ++place.slot;
    }
    return reading;
}

}  // namespace steelyard
