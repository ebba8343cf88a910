#include "core/samples/club_people.h"

#include <algorithm>
#include <array>
#include <map>

namespace steelyard {
namespace {

constexpr std::array kFirstNames{"Ada",    "Basil",  "Cosima",  "Dunstan", "Edda",    "Florian", "Greta", "Horace",
                                 "Imke",   "Jasper", "Katrin",  "Ludo",    "Maren",   "Norbert", "Oona",  "Piers",
                                 "Quilla", "Rufus",  "Sunniva", "Tilman",  "Una",     "Volker",  "Wanda", "Xaver",
                                 "Yrsa",   "Zoë",    "Ansgar",  "Birte",   "Caspian", "Dörte"};
constexpr std::array kLastNames{"Fulcrum", "Plumbline",    "Notch",  "Counterpoise", "Beam",
                                "Hook",    "Quarterpound", "Ledger", "Scruple",      "Bushel",
                                "Fathom",  "Cubit",        "Ell",    "Dram",         "Pennyweight",
                                "Firkin",  "Hogshead",     "Poise",  "Knifeedge",    "Pivot"};

}  // namespace

Athlete inventAthlete(const ClubPlace& place, ClubRandom& random)
{
    const int index = place.index;
    const auto first = static_cast<std::size_t>(index) % kFirstNames.size();
    // Steps that share no factor with the counts go through all 600 pairs before one returns.
    const auto last = (static_cast<std::size_t>(index) * 7 + static_cast<std::size_t>(index) / kFirstNames.size())
                      % kLastNames.size();
    Athlete athlete;
    athlete.name = QString::fromUtf8(kFirstNames[first]) + u' ' + QString::fromUtf8(kLastNames[last]);
    athlete.sex = random.chance(0.5) ? Sex::Female : Sex::Male;
    athlete.born = place.lastDay.addDays(-random.integer(19 * 365, 62 * 365));
    athlete.height =
        lengthFromMillimetres(athlete.sex == Sex::Female ? random.integer(1550, 1780) : random.integer(1660, 1950));
    const double roll = random.uniform();
    athlete.experience = roll < 0.3 ? Experience::Novice : roll < 0.8 ? Experience::Intermediate : Experience::Advanced;
    if (!place.gyms.empty()) {
        const auto& gym = place.gyms[static_cast<std::size_t>(index) % place.gyms.size()];
        athlete.gym = gym.id;
        if (!gym.value.plates.empty()) athlete.unit = gym.value.plates.front().plate.unit();
    }
    static constexpr std::array kGroups{"Early birds", "Evening", "Platform"};
    athlete.group = QString::fromLatin1(kGroups[static_cast<std::size_t>(index) % kGroups.size()]);
    athlete.daysPerWeek = random.integer(2, 4);
    athlete.minutesPerDay = 15 * random.integer(3, 6);
    athlete.consents = {HealthConsent::given(place.lastDay.addYears(-1))};
    // Every third lifter has agreed on sets a week for what they care about.
    if (index % 3 == 0)
        for (const char* key : {"biceps", "chest", "quadriceps"}) {
            const auto muscle = std::ranges::find(place.library.muscles, QString::fromLatin1(key),
                                                  [](const Row<Muscle>& row) { return row.value.key; });
            if (muscle != place.library.muscles.end()) athlete.aims.push_back({muscle->id, 5, 12});
        }
    return athlete;
}

LifterHabits inventHabits(ClubRandom& random)
{
    LifterHabits habits;
    habits.watchedShare = random.chance(0.15) ? 0.1 : random.uniform(0.6, 1.0);
    habits.saysEffort = random.chance(0.12) ? 0.0 : random.uniform(0.8, 1.0);
    habits.usesRpe = random.chance(0.2);
    habits.dayNoise = random.uniform(0.012, 0.026);
    habits.ratesExercises = random.uniform(0.2, 0.8);
    return habits;
}

double usualStrengthKg(const QString& muscle)
{
    static const std::map<QString, double> usual{
        {QStringLiteral("chest"), 62},      {QStringLiteral("lats"), 58},         {QStringLiteral("triceps"), 34},
        {QStringLiteral("biceps"), 32},     {QStringLiteral("side_deltoid"), 14}, {QStringLiteral("quadriceps"), 95},
        {QStringLiteral("hamstrings"), 70}, {QStringLiteral("glutes"), 105},      {QStringLiteral("upper_back"), 62},
        {QStringLiteral("calves"), 90}};
    const auto found = usual.find(muscle);
    return found == usual.end() ? 30.0 : found->second;
}

}  // namespace steelyard
