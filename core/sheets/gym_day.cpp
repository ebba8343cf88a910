#include "core/sheets/gym_day.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace steelyard {
namespace {

// Counts singles until the end: a belt may take one disc of a pair.
using KitKey = std::tuple<KitKind, Implement, Mass>;
struct KitCount {
    Load mass;
    int singles = 0;
};
using KitCounts = std::map<KitKey, KitCount>;

void count(KitCounts& counts, KitKind kind, Implement implement, const Load& mass, int singles)
{
    KitCount& entry = counts[{kind, implement, mass.mass()}];
    entry.mass = mass;
    entry.singles += singles;
}

void countKit(KitCounts& counts, const SheetExercise& exercise)
{
    if (!exercise.target.load) return;
    const SheetLoad& load = *exercise.target.load;
    switch (load.picture) {
    case LoadPicture::Bar:
        if (load.bar) count(counts, KitKind::Bar, exercise.implement, *load.bar, 1);
        for (const Load& plate : load.plates) count(counts, KitKind::Disc, Implement::StraightBar, plate, 2);
        return;
    case LoadPicture::Belt:
        for (const Load& plate : load.plates) count(counts, KitKind::Disc, Implement::StraightBar, plate, 1);
        return;
    case LoadPicture::Dumbbells:
        count(counts, KitKind::Dumbbells, Implement::Dumbbells, load.load, 2);
        return;
    case LoadPicture::BarUnknown:
    case LoadPicture::Pin:
    case LoadPicture::BodyOnly:
    case LoadPicture::Counterweight:
        return;
    }
}

bool isOnRun(const LoadRun& run, Mass mass)
{
    const Mass above = mass - run.first.mass();
    return above >= Mass() && mass <= run.last.mass() && run.step.mass() > Mass()
           && above.steps() % run.step.mass().steps() == 0;
}

int inGym(const Gym& gym, const KitKey& key)
{
    const auto& [kind, implement, mass] = key;
    int there = 0;
    if (kind == KitKind::Bar)
        for (const GymBar& bar : gym.bars) there += bar.implement == implement && bar.mass.mass() == mass ? 1 : 0;
    if (kind == KitKind::Disc)
        for (const PlatePairs& disc : gym.plates) there += disc.plate.mass() == mass ? disc.pairs : 0;
    if (kind == KitKind::Dumbbells)
        for (const LoadRun& run : gym.dumbbells) there += isOnRun(run, mass) ? 1 : 0;
    return there;
}

std::vector<NeededKit> kitOf(const GymTurn& turn, const Gym& gym)
{
    KitCounts counts;
    for (const GymTurnUse& use : turn.uses) countKit(counts, *use.exercise);
    std::vector<NeededKit> kit;
    for (const auto& [key, entry] : counts) {
        const KitKind kind = std::get<KitKind>(key);
        const int needed = kind == KitKind::Bar ? entry.singles : (entry.singles + 1) / 2;
        kit.push_back({kind, std::get<Implement>(key), entry.mass, needed, inGym(gym, key)});
    }
    std::ranges::stable_sort(kit, [](const NeededKit& a, const NeededKit& b) {
        return a.kind != b.kind ? a.kind < b.kind : a.mass.mass() > b.mass.mass();
    });
    return kit;
}

void addSheet(GymGroup& group, const SessionSheet& sheet)
{
    ++group.athletes;
    if (group.turns.size() < sheet.exercises.size()) group.turns.resize(sheet.exercises.size());
    for (std::size_t i = 0; i < sheet.exercises.size(); ++i)
        group.turns[i].uses.push_back({sheet.athlete, &sheet.exercises[i]});
}

}  // namespace

std::vector<GymGroup> gymGroups(std::span<const SessionSheet> sheets, std::span<const Row<Gym>> gyms)
{
    std::vector<GymGroup> groups;
    for (const SessionSheet& sheet : sheets) {
        auto at = std::ranges::find_if(groups, [&](const GymGroup& group) {
            return group.date == sheet.date && group.gym == sheet.gym && group.group == sheet.group;
        });
        if (at == groups.end()) at = groups.insert(groups.end(), GymGroup{sheet.date, sheet.gym, sheet.group, 0, {}});
        addSheet(*at, sheet);
    }
    for (GymGroup& group : groups) {
        const auto gym = std::ranges::find_if(gyms, [&](const Row<Gym>& row) { return row.value.name == group.gym; });
        if (gym == gyms.end()) continue;
        for (GymTurn& turn : group.turns) turn.kit = kitOf(turn, gym->value);
    }
    return groups;
}

}  // namespace steelyard
