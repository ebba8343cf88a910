// Simulated lifters who follow the program's plans: what was planned beside what came of it, set by set. For tests and benchmarks.
//
//   const Followed followed = followPlan({.experience = Experience::Novice, .rule = u"load_by_step", .seed = 7});
//   followed.sets[40].reps >= followed.sets[40].target
//   followed.unloadable == 0 && followed.jumps == 0
//
// Blocks of six weeks, the last one easier. Loads and targets are written at the start of every week, or of every block. The first
// session builds up to a set in the band, as the plan says where nothing is on record. One session in twelve is missed.
#pragma once

#include "core/planning/block_forecast.h"
#include "core/planning/load_steps.h"
#include "tests/support/plan_lifter.h"

namespace steelyard::testing_support {

enum class Equipment { Bar, Dumbbells, Stack };
inline constexpr int kBlockWeeks = 6;

struct FollowCase {
    Experience experience = Experience::Intermediate;
    bool experienceKnown = true;
    QString rule = QStringLiteral("band_then_load");
    RepBand band = {8, 12};
    double reserve = 2;
    Equipment equipment = Equipment::Bar;
    bool everyWeek = true;  // false: written once a block
    int weeks = 26;
    unsigned seed = 1;
};

struct FollowedSet {
    int week = 0;     // from the first
    int horizon = 0;  // weeks since it was written
    int number = 1;
    int target = 0;
    int reps = 0;
    double chance = 0;     // first sets
    RepInterval within80;  // first sets
};

struct Followed {
    std::vector<FollowedSet> sets;  // of ordinary weeks, where a target was written
    int sessions = 0;
    int unloadable = 0;  // planned loads that this gym can't load
    int jumps = 0;       // rises over a tenth that weren't the smallest step
    double lastKg = 0;
    double firstKg = 0;
};

class PlanFollower {
public:
    explicit PlanFollower(const FollowCase& what)
        : m_case(what),
          m_lifter(what.experience, what.seed),
          m_random(what.seed + 77'777),
          m_gym(gymOf()),
          m_loads(&m_gym, MassUnit::kg),
          m_tracker(m_parameters, m_thresholds, what.experienceKnown ? std::optional(what.experience) : std::nullopt)
    {
        makeLine();
    }

    [[nodiscard]] Followed run()
    {
        for (int week = 0; week < m_case.weeks; ++week) {
            if (week % kBlockWeeks == 0) startBlock(week);
            if (m_case.everyWeek || week % kBlockWeeks == 0) write(week);
            for (std::size_t day = 0; day < 2; ++day) train(week, day);
        }
        return m_followed;
    }

private:
    static inline const QDate kFirstMonday{2027, 1, 4};

    static Load kilograms(double kg) { return Load::make(Decimal::nearest(kg, 3), MassUnit::kg).value(); }
    static Gym gymOf()
    {
        Gym gym{QStringLiteral("hall"), {}, std::nullopt, {}, {}, {}};
        gym.bars = {{QStringLiteral("bar"), Implement::StraightBar, kilograms(20)}};
        for (const double plate : {25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 1.25})
            gym.plates.push_back({kilograms(plate), plate == 20.0 ? 6 : 2});
        gym.dumbbells = {{QStringLiteral("dumbbells"), kilograms(4), kilograms(2), kilograms(120)}};
        gym.stacks = {{QStringLiteral("stack"), kilograms(5), kilograms(5), kilograms(250)}};
        return gym;
    }
    void makeLine()
    {
        Variant variant{Id<Exercise>(1), QStringLiteral("usual")};
        variant.band = m_case.band;
        variant.loading = m_case.equipment == Equipment::Bar         ? Loading::BarTotal
                          : m_case.equipment == Equipment::Dumbbells ? Loading::PerHand
                                                                     : Loading::Stack;
        variant.implement = m_case.equipment == Equipment::Bar ? Implement::StraightBar : Implement::Dumbbells;
        if (m_case.equipment == Equipment::Stack) variant.implement = Implement::Machine;
        m_library.exercises = {{Id<Exercise>(1), {}, {QStringLiteral("Press"), {}, false}}};
        m_library.variants = {{Id<Variant>(1), {}, variant}};
        m_library.grips = {{Id<Grip>(1), {}, {QStringLiteral("neutral"), {}, {}, {}}}};
        m_library.standards = {{Id<RepStandard>(1), {}, {Id<Variant>(1), {}, QStringLiteral("strict")}}};
        if (m_case.experienceKnown) m_log.athlete.value.experience = m_case.experience;
        m_log.lines.push_back({Id<LiftLine>(1),
                               {Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)},
                               QStringLiteral("press"),
                               m_library.exercises.front(),
                               m_library.variants.front(),
                               m_library.grips.front(),
                               m_library.standards.front(),
                               {}});
    }
    void startBlock(int week)
    {
        m_block = {Id<Athlete>(1), QStringLiteral("block"), {}, kFirstMonday.addDays(7 * week), {}};
        for (int i = 0; i < kBlockWeeks; ++i) {
            PlannedWeek planned{i + 1 == kBlockWeeks ? WeekKind::Deload : WeekKind::Normal, {}};
            for (const int weekday : {0, 3}) {
                Slot slot{Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
                slot.band = m_case.band;
                slot.sets = planned.kind == WeekKind::Deload ? 2 : 3;
                const double reserve = m_case.reserve + (planned.kind == WeekKind::Deload ? 2 : 0);
                slot.plannedRir = Decimal::nearest(reserve, 1);
                slot.progression = m_case.rule;
                planned.days.push_back({m_block.start.addDays(7 * i + weekday), {}, {slot}});
            }
            m_block.weeks.push_back(planned);
        }
        m_log.blocks.push_back({Id<Block>(week + 1), {}, m_block});
    }
    void write(int week)
    {
        const QDate monday = kFirstMonday.addDays(7 * week);
        m_forecast = forecastBlock({m_log, m_library, &m_gym, m_tracker, monday}, m_block);
        m_block = withLoads(m_block, reforecast(m_block, m_forecast));
        m_log.blocks.back().value = m_block;
        m_written = week;
        const Load* before = m_last ? &*m_last : nullptr;
        for (const SlotForecast& one : m_forecast.slotList) {
            if (!one.load.load || m_block.weeks[one.place.week].kind == WeekKind::Deload) continue;
            if (before) judge(*before, *one.load.load);
            before = &*one.load.load;
        }
    }
    void judge(const Load& before, const Load& planned)
    {
        const Variant& variant = m_library.variants.front().value;
        if (!m_loads.nearest(planned.mass(), variant).exact) ++m_followed.unloadable;
        const auto smallest = m_loads.next(before, variant, LoadChange::Harder);
        const bool jump = planned.kilograms() > before.kilograms() * (1 + kMostRise) + 1e-9;
        if (jump && (!smallest || smallest->mass() != planned.mass())) ++m_followed.jumps;
    }
    void train(int week, std::size_t day)
    {
        const std::size_t inBlock = static_cast<std::size_t>(week % kBlockWeeks);
        const QDate date = m_block.weeks[inBlock].days[day].date;
        m_lifter.passTo(static_cast<int>(kFirstMonday.daysTo(date)));
        if (week > 0 && std::bernoulli_distribution(1.0 / 12)(m_random)) return;
        const SlotForecast* planned = m_forecast.at({inBlock, day, 0});
        if (!planned) return;
        const bool easier = m_block.weeks[inBlock].kind == WeekKind::Deload;
        PlannedWork work{0, m_block.weeks[inBlock].days[day].slotList.front().sets,
                         planned->load.reserve.value_or(m_case.reserve)};
        if (easier) work.stopsAt = m_case.band.high;
        const Load load = planned->load.load ? *planned->load.load : builtUpTo(work.reserve);
        work.kg = load.kilograms();
        const auto done = m_lifter.train(work);
        if (!easier) remember(week, *planned, done);
        keep(date, load, done, easier);
    }
    [[nodiscard]] Load builtUpTo(double reserve) const
    {
        const double kg = m_lifter.loadForReps((m_case.band.low + m_case.band.high) / 2.0 + reserve);
        return m_loads.nearest(massFromGrams(std::llround(kg * 1000)), m_library.variants.front().value).load;
    }
    void remember(int week, const SlotForecast& planned, const std::vector<LiftedSet>& done)
    {
        ++m_followed.sessions;
        const SlotLoad& load = planned.load;
        for (std::size_t i = 0; i < done.size() && i < load.targetReps.size(); ++i) {
            FollowedSet set{week, week - m_written, static_cast<int>(i) + 1, load.targetReps[i], done[i].reps};
            set.chance = load.chance.value_or(0);
            set.within80 = load.within80.value_or(RepInterval{});
            m_followed.sets.push_back(set);
        }
    }
    void keep(QDate date, const Load& load, const std::vector<LiftedSet>& done, bool easier)
    {
        Exposure exposure{date, {}, {}};
        for (std::size_t i = 0; i < done.size(); ++i) {
            SetEntry set;
            set.number = static_cast<int>(i) + 1;
            set.load = load;
            set.reps = done[i].reps;
            set.off = 0;
            set.failed = done[i].failed;
            set.kind = easier ? SetKind::Deload : SetKind::Work;
            if (std::bernoulli_distribution(0.9)(m_random))
                set.effort = Effort{Effort::Scale::Rir, Decimal::nearest(done[i].reported, 1)};
            exposure.sets.push_back({Id<SetEntry>(++m_setIds), set.number, set});
        }
        LineRecord& line = m_log.lines.front();
        line.exposures.push_back(exposure);
        m_log.sessionDates.push_back(date);
        m_tracker.advance(m_log, countLines(m_log, date), date);
        if (easier) return;
        m_last = load;
        m_followed.lastKg = load.kilograms();
        if (m_followed.firstKg <= 0) m_followed.firstKg = load.kilograms();
    }

    FollowCase m_case;
    PlanLifter m_lifter;
    std::mt19937 m_random;
    Gym m_gym;
    LoadFinder m_loads;
    ReadingParameters m_parameters;
    VerdictThresholds m_thresholds;
    LifterTracker m_tracker;
    Library m_library;
    AthleteLog m_log{{Id<Athlete>(1), {}, {}}, {}, {}, {}, {}, {}};
    Block m_block{Id<Athlete>(1), {}, {}, {}, {}};
    BlockForecast m_forecast;
    int m_written = 0;
    std::optional<Load> m_last;
    std::int64_t m_setIds = 0;
    Followed m_followed;
};

[[nodiscard]] inline Followed followPlan(const FollowCase& what)
{
    return PlanFollower(what).run();
}

// How often targets were reached.
struct HitShare {
    int sets = 0;
    int reached = 0;
    void add(const FollowedSet& set)
    {
        ++sets;
        reached += set.reps >= set.target ? 1 : 0;
    }
    [[nodiscard]] double share() const { return sets > 0 ? static_cast<double>(reached) / sets : 0; }
};

}  // namespace steelyard::testing_support
