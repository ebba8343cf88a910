#include "core/planning/trial_in_block.h"

#include "core/planning/block_layout.h"

#include <algorithm>

namespace steelyard {
namespace {

std::optional<Id<Exercise>> exerciseOf(const Library& library, Id<Variant> id)
{
    const auto* variant = library.find(id);
    return variant ? std::optional(variant->value.exercise) : std::nullopt;
}

// Copies of the blocks that the sessions are written into.
class TrialLayer {
public:
    TrialLayer(const TrialGround& ground, const Trial& trial)
        : m_ground(ground), m_trial(trial), m_blocks(ground.blocks)
    {}

    // What had to make room.
    std::optional<Slot> lay(const TrialDay& day);
    // What stood there of the trial, taken out; a day that is empty then and has no title is a rest day.
    std::optional<Slot> takeOut(QDate date);
    // An ordinary slot back to a day, where the lift isn't planned already.
    void putBack(const Slot& slot, QDate date);
    void carry(std::size_t arm);
    [[nodiscard]] LaidTrial finish()
    {
        for (std::size_t i = 0; i < m_blocks.size(); ++i)
            if (m_blocks[i] != m_ground.blocks[i]) m_laid.blocks.push_back(std::move(m_blocks[i]));
        return std::move(m_laid);
    }

private:
    [[nodiscard]] bool isArmsLift(const Slot& slot) const
    {
        return std::ranges::any_of(m_trial.arms, [&](const TrialArm& arm) {
            return slot.variant == arm.variant && slot.grip == arm.grip && slot.standard == arm.standard;
        });
    }
    [[nodiscard]] Block* blockWith(QDate date)
    {
        // The newest first: where two overlap, the later one is the plan.
        for (auto row = m_blocks.rbegin(); row != m_blocks.rend(); ++row)
            if (weekOfBlock(row->value, date)) return &row->value;
        return nullptr;
    }
    [[nodiscard]] PlannedDay* trainingDay(Block& block, QDate date);
    [[nodiscard]] bool isOfIt(const Slot& slot) const { return isOfTrial(m_trial, m_ground.library, slot.variant); }
    void carryIntoDay(PlannedDay& day, std::size_t arm);

    const TrialGround& m_ground;
    const Trial& m_trial;
    std::vector<Row<Block>> m_blocks;
    LaidTrial m_laid;
};

PlannedDay* TrialLayer::trainingDay(Block& block, QDate date)
{
    if (isDayOff(block, date)) {
        m_laid.daysOff.push_back(date);
        return nullptr;
    }
    const auto& weekdays = m_ground.weekdays;
    if (!dayOn(block, date) && std::ranges::find(weekdays, date.dayOfWeek()) == weekdays.end()) {
        m_laid.noTraining.push_back(date);
        return nullptr;
    }
    const auto day = openDay(block, date);
    return day ? *day : nullptr;
}

std::optional<Slot> TrialLayer::lay(const TrialDay& session)
{
    if (session.date < m_ground.from || session.missed) return std::nullopt;
    Block* block = blockWith(session.date);
    if (!block) {
        m_laid.outside.push_back(session.date);
        return std::nullopt;
    }
    PlannedDay* day = trainingDay(*block, session.date);
    if (!day) return std::nullopt;
    auto& slotList = day->slotList;
    // The arm that stands there already comes before any other slot of the exercise, so that laying twice changes nothing.
    auto found = std::ranges::find_if(slotList, [&](const Slot& slot) { return isArmsLift(slot); });
    if (found == slotList.end()) found = std::ranges::find_if(slotList, [&](const Slot& slot) { return isOfIt(slot); });
    std::optional<Slot> replaced = found == slotList.end() ? std::nullopt : std::optional(*found);
    std::erase_if(slotList, [&](const Slot& slot) { return isOfIt(slot); });
    slotList.insert(slotList.begin(), slotOfArm(m_trial, session.arm, replaced ? &*replaced : nullptr));
    tidySupersets(*day);
    m_laid.laid.push_back(session.date);
    const auto week = weekOfBlock(*block, session.date);
    if (week && block->weeks[*week].kind != WeekKind::Normal) m_laid.easier.push_back(session.date);
    return replaced;
}

std::optional<Slot> TrialLayer::takeOut(QDate date)
{
    Block* block = date < m_ground.from ? nullptr : blockWith(date);
    const auto at = block ? dayOn(*block, date) : std::nullopt;
    if (!at) return std::nullopt;
    auto& days = block->weeks[at->week].days;
    PlannedDay& day = days[at->day];
    const auto found = std::ranges::find_if(day.slotList, [&](const Slot& slot) { return isArmsLift(slot); });
    if (found == day.slotList.end()) return std::nullopt;
    Slot taken = std::move(*found);
    day.slotList.erase(found);
    tidySupersets(day);
    if (day.slotList.empty() && day.title.isEmpty()) days.erase(days.begin() + static_cast<std::ptrdiff_t>(at->day));
    return taken;
}

void TrialLayer::putBack(const Slot& slot, QDate date)
{
    Block* block = date < m_ground.from ? nullptr : blockWith(date);
    if (!block) return;
    const auto day = openDay(*block, date);
    if (!day || std::ranges::any_of((*day)->slotList, [&](const Slot& other) { return isOfIt(other); })) return;
    Slot back = slot;
    back.superset = 0;
    (*day)->slotList.insert((*day)->slotList.begin(), back);
}

void TrialLayer::carryIntoDay(PlannedDay& day, std::size_t arm)
{
    const TrialArm& chosen = m_trial.arms[arm];
    bool stands = false;
    std::erase_if(day.slotList, [&](Slot& slot) {
        if (!isOfIt(slot)) return false;
        if (stands) return true;
        stands = true;
        Slot after = slot;
        after.variant = chosen.variant;
        after.grip = chosen.grip;
        after.standard = chosen.standard;
        after.band = chosen.band;
        if (!isSameLift(after, slot)) {
            after.load.reset();
            after.loadLocked = false;
        }
        slot = after;
        return false;
    });
    tidySupersets(day);
}

void TrialLayer::carry(std::size_t arm)
{
    for (Row<Block>& row : m_blocks)
        for (PlannedWeek& week : row.value.weeks)
            for (PlannedDay& day : week.days)
                if (day.date >= m_ground.from) carryIntoDay(day, arm);
}

}  // namespace

Slot slotOfArm(const Trial& trial, std::size_t arm, const Slot* base)
{
    const TrialArm& wanted = trial.arms.at(arm);
    Slot slot{.variant = wanted.variant, .grip = wanted.grip, .standard = wanted.standard};
    slot.sets = trial.sets;
    slot.band = wanted.band;
    slot.plannedRir = trial.plannedRir;
    if (!base) return slot;
    slot.restSeconds = base->restSeconds;
    slot.note = base->note;
    slot.progression = base->progression;
    return slot;
}

bool isOfTrial(const Trial& trial, const Library& library, Id<Variant> variant)
{
    const auto exercise = exerciseOf(library, variant);
    return exercise && std::ranges::any_of(trial.arms, [&](const TrialArm& arm) {
               return exerciseOf(library, arm.variant) == exercise;
           });
}

LaidTrial layTrial(const TrialGround& ground, const Trial& trial)
{
    TrialLayer layer(ground, trial);
    for (const TrialDay& day : trial.days) layer.lay(day);
    return layer.finish();
}

LaidTrial relayTrial(const TrialGround& ground, const Trial& before, const Trial& after)
{
    TrialLayer layer(ground, after);
    const auto isStill = [&](QDate date) { return dayOfTrial(after, date) != nullptr; };
    for (const TrialDay& day : before.days)
        if (!isStill(day.date)) layer.takeOut(day.date);
    for (std::size_t i = 0; i < after.days.size(); ++i) {
        const auto replaced = layer.lay(after.days[i]);
        // What stood on a day that was none of the trial's is an ordinary slot, even of an arm's lift.
        const bool moved = i < before.days.size() && !dayOfTrial(before, after.days[i].date);
        if (moved && replaced && !isStill(before.days[i].date)) layer.putBack(*replaced, before.days[i].date);
    }
    return layer.finish();
}

LaidTrial carryChoice(const TrialGround& ground, const Trial& trial, std::size_t arm)
{
    TrialLayer layer(ground, trial);
    if (arm < trial.arms.size()) layer.carry(arm);
    return layer.finish();
}

}  // namespace steelyard
