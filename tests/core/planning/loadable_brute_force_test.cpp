// Every load that can be set, listed the long way, against what the finder says: random bounded inventories of discs in kilograms
// and pounds, with collars or without, on straight, angled and odd bars; stacks with small plates on them; dumbbells; a belt.
// Pounds beside kilograms count only where the one unit doesn't reach over the load, or where it is just such a load.
#include "core/planning/loadable.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <iterator>
#include <random>
#include <set>

namespace steelyard {
namespace {

constexpr int kRounds = 300;

class BruteForce {
public:
    explicit BruteForce(unsigned seed) : m_random(seed) {}

    int number(int low, int high) { return std::uniform_int_distribution<int>(low, high)(m_random); }
    bool chance(int percent) { return number(1, 100) <= percent; }
    // In quarters of the unit.
    Load load(int lowQuarters, int highQuarters)
    {
        const int hundredths = 25 * number(lowQuarters, highQuarters);
        return Load::make(Decimal::fromScaled(hundredths, 2), chance(70) ? MassUnit::kg : MassUnit::lb).value();
    }
    Gym gym()
    {
        Gym gym;
        gym.bars = {{QStringLiteral("straight"), Implement::StraightBar, load(20, 90)},
                    {QStringLiteral("angled"), Implement::AngledBar, load(10, 60)},
                    {QStringLiteral("odd"), Implement::Other, load(10, 120)}};
        if (chance(50)) gym.collarPair = load(1, 20);
        for (int i = number(1, 4); i > 0; --i) gym.plates.push_back({load(2, 100), number(1, 2)});
        for (int i = number(1, 2); i > 0; --i) gym.stacks.push_back(run(true));
        for (int i = number(1, 2); i > 0; --i) gym.dumbbells.push_back(run(false));
        return gym;
    }
    LoadRun run(bool addOns)
    {
        const MassUnit unit = chance(70) ? MassUnit::kg : MassUnit::lb;
        const auto in = [&](int quarters) { return Load::make(Decimal::fromScaled(25 * quarters, 2), unit).value(); };
        const int first = number(4, 20);
        const int step = number(4, 20);
        LoadRun made{QStringLiteral("run"), in(first), in(step), in(first + step * number(2, 8))};
        if (addOns)
            for (int i = number(0, 4); i > 0; --i) made.addOns.push_back(load(1, 12));
        return made;
    }

private:
    std::mt19937 m_random;
};

// Sums of any part of these.
std::set<Mass> partSums(const std::vector<Mass>& masses)
{
    std::set<Mass> sums{Mass()};
    for (const Mass mass : masses) {
        const std::set<Mass> before = sums;
        for (const Mass sum : before) sums.insert(sum + mass);
    }
    return sums;
}

// Of one unit and of both.
struct Listed {
    std::set<Mass> usual;
    std::set<Mass> all;

    [[nodiscard]] const std::set<Mass>& around(Mass limit) const
    {
        const bool reaches = !usual.empty() && *usual.begin() <= limit && *usual.rbegin() >= limit;
        return reaches ? usual : all;
    }
};

template <class Of, class UnitOf>
std::vector<Of> ofOneUnit(const std::vector<Of>& rows, UnitOf unitOf)
{
    std::vector<Of> chosen;
    std::ranges::copy_if(rows, std::back_inserter(chosen), [&](const Of& row) { return unitOf(row) == MassUnit::kg; });
    return chosen.empty() ? rows : chosen;
}

Gym gymOfOneUnit(Gym gym)
{
    gym.plates = ofOneUnit(gym.plates, [](const PlatePairs& entry) { return entry.plate.unit(); });
    const auto unitOfRun = [](const LoadRun& run) { return run.first.unit(); };
    gym.dumbbells = ofOneUnit(gym.dumbbells, unitOfRun);
    gym.stacks = ofOneUnit(gym.stacks, unitOfRun);
    return gym;
}

std::set<Mass> onBar(const Gym& gym, Mass bar, bool collars)
{
    std::vector<Mass> pairs;
    for (const PlatePairs& plate : gym.plates)
        for (int i = 0; i < plate.pairs; ++i) pairs.push_back(2 * plate.plate.mass());
    const Mass empty = collars && gym.collarPair ? bar + gym.collarPair->mass() : bar;
    std::set<Mass> totals;
    for (const Mass sum : partSums(pairs)) totals.insert(empty + sum);
    return totals;
}

std::set<Mass> onBelt(const Gym& gym)
{
    std::vector<Mass> singles;
    for (const PlatePairs& plate : gym.plates)
        for (int i = 0; i < 2 * plate.pairs; ++i) singles.push_back(plate.plate.mass());
    return partSums(singles);
}

std::set<Mass> onRuns(const std::vector<LoadRun>& runs)
{
    std::set<Mass> totals;
    for (const LoadRun& run : runs) {
        std::vector<Mass> small;
        for (const Load& plate : run.addOns) small.push_back(plate.mass());
        for (Mass pin = run.first.mass(); pin <= run.last.mass(); pin = pin + run.step.mass())
            for (const Mass sum : partSums(small)) totals.insert(pin + sum);
    }
    return totals;
}

Mass distance(Mass a, Mass b)
{
    return a < b ? b - a : a - b;
}

bool holdsAbout(const std::set<Mass>& masses, Mass target)
{
    const auto from = masses.lower_bound(target - kSameLoad);
    return from != masses.end() && *from <= target + kSameLoad;
}

// The nearest of all, the neighbours of a target that can't be set, and the next one up.
void expectAsListed(const LoadFinder& loads, const Variant& variant, const Listed& listed, Mass target)
{
    const std::set<Mass>& all = holdsAbout(listed.all, target) ? listed.all : listed.around(target);
    const LoadChoice choice = loads.nearest(target, variant);
    ASSERT_TRUE(all.contains(choice.total)) << choice.total.steps();
    if (holdsAbout(listed.all, target))
        EXPECT_TRUE(choice.exact);
    else
        for (const Mass mass : all) EXPECT_GE(distance(mass, target), distance(choice.total, target));
    const Mass beyond = target + kSameLoad + Mass::fromSteps(1);
    const std::set<Mass>& further = listed.around(beyond);
    const auto above = further.lower_bound(beyond);
    const auto up = loads.next(Load::nearest(target, MassUnit::kg, Load::kMaxDecimals), variant, LoadChange::Harder);
    EXPECT_EQ(up.has_value(), above != further.end());
    if (up && above != further.end()) {
        EXPECT_LE(distance(up->mass(), *above), massFromGrams(10)) << "written with two or three decimals";
    }
    if (choice.exact) return;
    EXPECT_EQ(choice.below.has_value(), *all.begin() <= target);
    EXPECT_EQ(choice.above.has_value(), *all.rbegin() >= target);
}

// Bar, collars and both sides; pin and small plates; all that hangs on the belt.
Mass putTogether(const LoadChoice& choice, Mass empty, int sides)
{
    Mass total = choice.pin ? choice.pin->mass() : empty;
    for (const Load& plate : choice.plates) total = total + sides * plate.mass();
    return total;
}

Variant variantOf(Loading loading, Implement implement)
{
    Variant variant{.exercise = Id<Exercise>(1)};
    variant.loading = loading;
    variant.implement = implement;
    return variant;
}

class LoadsByBruteForce : public testing::TestWithParam<unsigned> {};

TEST_P(LoadsByBruteForce, BarsOfEveryKindWithAndWithoutCollars)
{
    BruteForce random(GetParam());
    for (int round = 0; round < kRounds; ++round) {
        const Gym gym = random.gym();
        const LoadFinder loads(&gym, MassUnit::kg);
        const GymBar& bar = gym.bars[static_cast<std::size_t>(random.number(0, 2))];
        const Variant variant = variantOf(Loading::BarTotal, bar.implement);
        const bool collars = bar.implement != Implement::Other;
        const Listed listed{onBar(gymOfOneUnit(gym), bar.mass.mass(), collars), onBar(gym, bar.mass.mass(), collars)};
        const Mass target = random.load(1, 500).mass();
        expectAsListed(loads, variant, listed, target);
        const LoadChoice choice = loads.nearest(target, variant);
        EXPECT_EQ(putTogether(choice, *listed.all.begin(), 2), choice.total);
    }
}

TEST_P(LoadsByBruteForce, StacksWithSmallPlatesOnThem)
{
    BruteForce random(GetParam());
    for (int round = 0; round < kRounds; ++round) {
        const Gym gym = random.gym();
        const LoadFinder loads(&gym, MassUnit::kg);
        const Variant variant = variantOf(Loading::Stack, Implement::Cable);
        const Mass target = random.load(1, 300).mass();
        expectAsListed(loads, variant, {onRuns(gymOfOneUnit(gym).stacks), onRuns(gym.stacks)}, target);
        const LoadChoice choice = loads.nearest(target, variant);
        ASSERT_TRUE(choice.pin);
        EXPECT_EQ(putTogether(choice, Mass(), 1), choice.total);
    }
}

TEST_P(LoadsByBruteForce, DumbbellsAndABelt)
{
    BruteForce random(GetParam());
    for (int round = 0; round < kRounds; ++round) {
        const Gym gym = random.gym();
        const LoadFinder loads(&gym, MassUnit::kg);
        const Mass target = random.load(1, 300).mass();
        const Variant dumbbells = variantOf(Loading::PerHand, Implement::Dumbbells);
        expectAsListed(loads, dumbbells, {onRuns(gymOfOneUnit(gym).dumbbells), onRuns(gym.dumbbells)}, target);
        const Variant belt = variantOf(Loading::Added, Implement::Bodyweight);
        expectAsListed(loads, belt, {onBelt(gymOfOneUnit(gym)), onBelt(gym)}, target);
        const LoadChoice choice = loads.nearest(target, belt);
        EXPECT_EQ(putTogether(choice, Mass(), 1), choice.total);
    }
}

INSTANTIATE_TEST_SUITE_P(OfManyGyms, LoadsByBruteForce, testing::Values(1U, 2U, 3U));

}  // namespace
}  // namespace steelyard
