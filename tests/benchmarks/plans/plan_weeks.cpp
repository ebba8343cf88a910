// How often simulated lifters who follow the program's plans for 26 weeks reach what was planned: by experience, rule, band and
// week; whether every load could be loaded and no rise was over a tenth; and how long a whole block takes to forecast.
//
//   plan_weeks [LIFTERS] [SEED]     // of each experience and rule; 12 and 1 unless said
//
// What is measured, and how the lifters are made, stands in tests/support/plan_following.h and plan_lifter.h.
#include "tests/benchmarks/benchmark_support.h"
#include "tests/support/log_builder.h"
#include "tests/support/plan_following.h"

#include <cstdio>

namespace steelyard {
namespace {

using testing_support::Equipment;
using testing_support::FollowCase;
using testing_support::Followed;
using testing_support::FollowedSet;
using testing_support::followPlan;
using testing_support::HitShare;

constexpr std::array kLevels{"novice", "intermediate", "advanced"};
constexpr std::array<RepBand, 4> kBands{{{5, 8}, {8, 12}, {12, 15}, {15, 20}}};
constexpr int kWeeks = 26;
constexpr int kWeeksOfRow = 4;

struct Totals {
    HitShare all;
    std::array<HitShare, 4> bySet;
    HitShare exposures;  // all repetitions of a session, to the sum of its targets
    HitShare covered;    // first sets within their interval of 80 %
    std::array<HitShare, (kWeeks + kWeeksOfRow - 1) / kWeeksOfRow> byWeeks;
    std::array<HitShare, testing_support::kBlockWeeks> byHorizon;
    double chances = 0;
    int unloadable = 0;
    int jumps = 0;
    double rise = 0;
    int lifters = 0;
};

void addExposures(Totals& totals, const Followed& followed)
{
    int target = 0;
    int reps = 0;
    for (std::size_t i = 0; i < followed.sets.size(); ++i) {
        target += followed.sets[i].target;
        reps += followed.sets[i].reps;
        const bool last = i + 1 == followed.sets.size() || followed.sets[i + 1].number == 1;
        if (!last) continue;
        FollowedSet whole;
        whole.target = target;
        whole.reps = reps;
        totals.exposures.add(whole);
        target = reps = 0;
    }
}

void add(Totals& totals, const Followed& followed)
{
    for (const FollowedSet& set : followed.sets) {
        totals.all.add(set);
        totals.bySet[static_cast<std::size_t>(std::min(set.number, 4)) - 1].add(set);
        totals.byWeeks[static_cast<std::size_t>(set.week / kWeeksOfRow)].add(set);
        totals.byHorizon[static_cast<std::size_t>(set.horizon)].add(set);
        if (set.number != 1) continue;
        totals.chances += set.chance;
        ++totals.covered.sets;
        totals.covered.reached += set.reps >= set.within80.low - 0.5 && set.reps <= set.within80.high + 0.5 ? 1 : 0;
    }
    addExposures(totals, followed);
    totals.unloadable += followed.unloadable;
    totals.jumps += followed.jumps;
    totals.rise += followed.firstKg > 0 ? followed.lastKg / followed.firstKg - 1 : 0;
    ++totals.lifters;
}

void printHead()
{
    std::printf("%-14s %-15s %5s %6s %5s %5s %5s %7s %6s |", "lifters", "rule", "sets", "reach", "set1", "set2", "set3",
                "session", "in 80%");
    for (int week = 0; week < kWeeks; week += kWeeksOfRow) std::printf(" w%02d-", week + 1);
    std::printf("| %5s %4s %4s\n", "rise", "jump", "load");
}

void printRow(const char* name, const char* rule, const Totals& totals)
{
    const auto percent = [](const HitShare& hits) { return 100 * hits.share(); };
    std::printf("%-14s %-15s %5d %6.1f %5.1f %5.1f %5.1f %7.1f %6.1f |", name, rule, totals.all.sets,
                percent(totals.all), percent(totals.bySet[0]), percent(totals.bySet[1]), percent(totals.bySet[2]),
                percent(totals.exposures), percent(totals.covered));
    for (const HitShare& hits : totals.byWeeks) std::printf(" %4.0f", percent(hits));
    std::printf("| %5.1f %4d %4d\n", 100 * totals.rise / std::max(1, totals.lifters), totals.jumps, totals.unloadable);
}

void printHorizons(const char* name, const Totals& totals)
{
    std::printf("  %-14s by weeks since written:", name);
    for (const HitShare& hits : totals.byHorizon)
        if (hits.sets > 0) std::printf(" %5.1f", 100 * hits.share());
    std::printf("   first sets stated %.1f, came %.1f\n", 100 * totals.chances / std::max(1, totals.bySet[0].sets),
                100 * totals.bySet[0].share());
}

void printTable(bool everyWeek, int lifters, unsigned seed)
{
    std::printf("\nLoads written %s; %% of sets that reached their target\n",
                everyWeek ? "every week" : "once a block");
    printHead();
    std::vector<std::pair<const char*, Totals>> levels;
    for (std::size_t level = 0; level < kLevels.size(); ++level) {
        Totals ofLevel;
        for (const ProgressionRule* rule : progressionRules()) {
            Totals totals;
            for (int i = 0; i < lifters; ++i) {
                FollowCase what{
                    .experience = static_cast<Experience>(level), .rule = rule->id(), .everyWeek = everyWeek};
                what.band = kBands[static_cast<std::size_t>(i) % kBands.size()];
                what.reserve = i % 3 == 0 ? 1 : 2;
                what.equipment = static_cast<Equipment>(i / 4 % 3);
                what.experienceKnown = i % 2 == 0;
                what.seed = 1000 * seed + static_cast<unsigned>(i) + 500'000 * static_cast<unsigned>(level);
                const Followed followed = followPlan(what);
                add(totals, followed);
                add(ofLevel, followed);
            }
            printRow(kLevels[level], qPrintable(rule->id()), totals);
        }
        printRow(kLevels[level], "all", ofLevel);
        levels.emplace_back(kLevels[level], ofLevel);
    }
    for (const auto& [name, totals] : levels) printHorizons(name, totals);
}

// Two years of fourteen lines, each twice a week, and a block of six weeks with four days of seven slots.
struct FullWeeks {
    static constexpr int kLines = 14;
    static constexpr int kSlots = 7;
    const QDate today{2027, 1, 4};
    AthleteLog log = logOf(today);
    Library library;
    Block block{log.athlete.id, QStringLiteral("block"), {}, today, {}};

    FullWeeks()
    {
        for (const LineRecord& line : log.lines) {
            library.exercises.push_back(line.exercise);
            library.variants.push_back(line.variant);
            library.grips.push_back(line.grip);
            library.standards.push_back(line.standard);
        }
        for (int week = 0; week < testing_support::kBlockWeeks; ++week) {
            PlannedWeek planned{week + 1 == testing_support::kBlockWeeks ? WeekKind::Deload : WeekKind::Normal, {}};
            for (int day = 0; day < 4; ++day) planned.days.push_back({today.addDays(7 * week + day), {}, slotsOf(day)});
            block.weeks.push_back(planned);
        }
    }
    static AthleteLog logOf(QDate today)
    {
        testing_support::LogBuilder builder;
        for (int line = 0; line < kLines; ++line) {
            builder.line(QStringLiteral("Exercise %1").arg(line));
            for (int i = 208; i > 0; --i) {
                const double kg = 40 + 2.5 * ((208 - i) / 40);
                builder.exposure(today.addDays(-i * 7 / 2), {{.load = kg, .reps = 11 - i % 3, .off = 0, .rir = 2},
                                                             {.load = kg, .reps = 10 - i % 2, .off = 0, .rir = 2},
                                                             {.load = kg, .reps = 9, .off = 0, .rir = 1}});
            }
        }
        return builder.build();
    }
    [[nodiscard]] std::vector<Slot> slotsOf(int day) const
    {
        std::vector<Slot> all;
        for (int i = 0; i < kSlots; ++i) {
            const LiftLine& lift = log.lines[static_cast<std::size_t>(day % 2 * kSlots + i)].line;
            Slot slot{lift.variant, lift.grip, lift.standard};
            slot.plannedRir = Decimal(2);
            slot.progression = progressionRules()[static_cast<std::size_t>(i) % progressionRules().size()]->id();
            all.push_back(slot);
        }
        return all;
    }
};

void printTime()
{
    const FullWeeks full;
    const ReadingParameters parameters;
    const VerdictThresholds thresholds;
    const benchmark::Stopwatch reading;
    LifterTracker tracker(parameters, thresholds, Experience::Intermediate);
    tracker.advance(full.log, countLines(full.log, full.today), full.today);
    const double read = reading.processorSeconds();
    constexpr int kTimes = 5;
    std::size_t forecasts = 0;
    const benchmark::Stopwatch planning;
    for (int i = 0; i < kTimes; ++i)
        forecasts = forecastBlock({full.log, full.library, nullptr, tracker, full.today}, full.block).slotList.size();
    std::printf(
        "A block of %zu slots is forecast in %.1f ms (processor time); the record of two years it rests on is read in "
        "%.1f ms.\n",
        forecasts, 1000 * planning.processorSeconds() / kTimes, 1000 * read);
}

int measure(int argc, char** argv)
{
    const QCoreApplication app(argc, argv);
    const int lifters = argc > 1 ? QByteArray(argv[1]).toInt() : 12;
    const unsigned seed = argc > 2 ? QByteArray(argv[2]).toUInt() : 1;
    printTime();
    for (const bool everyWeek : {true, false}) printTable(everyWeek, lifters, seed);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    return steelyard::measure(argc, argv);
}
