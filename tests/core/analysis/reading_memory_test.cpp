#include "core/analysis/reading_memory.h"

#include "core/analysis/line_numbers.h"
#include "core/analysis/regime_engine.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::wobble;

const QDate kReadOn(2026, 6, 1);

// Two lines over two years; of unknown experience, so that they read each other.
LogBuilder twoLines()
{
    LogBuilder builder;
    builder.experience(std::nullopt);
    builder.line(QStringLiteral("Arm curl")).exposures(200, kReadOn.addDays(-3), 4, [](int i) {
        return MadeSet{.load = 40 + 0.05 * i + wobble(i), .reps = 10 + i % 2, .off = 0, .rir = 1};
    });
    builder.line(QStringLiteral("Row")).exposures(100, kReadOn.addDays(-3), 7, [](int i) {
        return MadeSet{.load = 60 + wobble(i), .reps = 8 + i % 3, .off = 0, .rir = 2};
    });
    return builder;
}

void expectEqual(const std::vector<LineReading>& a, const std::vector<LineReading>& b)
{
    ASSERT_EQ(a.size(), b.size());
    for (std::size_t i = 0; i < a.size(); ++i) {
        EXPECT_EQ(a[i].verdict, b[i].verdict);
        EXPECT_EQ(a[i].since, b[i].since);
        EXPECT_EQ(a[i].rate, b[i].rate);
        EXPECT_EQ(a[i].capacity, b[i].capacity);
        EXPECT_EQ(a[i].next, b[i].next);
        EXPECT_EQ(a[i].why, b[i].why);
    }
}

TEST(ReadingMemory, ANewSessionCostsOneStepAndChangesNothingElse)
{
    const RegimeEngine engine;
    ReadingMemory memory;
    LogBuilder builder = twoLines();
    (void)engine.readAll(builder.build(), kReadOn, memory);
    EXPECT_GT(memory.weeksReplayed(), 100);
    builder.exposure(kReadOn, {{.load = 61, .reps = 9, .off = 0, .rir = 2}});
    const auto kept = engine.readAll(builder.build(), kReadOn, memory);
    EXPECT_LE(memory.weeksReplayed(), 1);
    expectEqual(kept, engine.readAll(builder.build(), kReadOn));
}

TEST(ReadingMemory, AnEditReplaysFromItsDate)
{
    const RegimeEngine engine;
    for (const int back : {1, 6, 20, 45, 90, 180}) {
        ReadingMemory memory;
        AthleteLog log = twoLines().build();
        (void)engine.readAll(log, kReadOn, memory);
        auto& exposures = log.lines.front().exposures;
        Exposure& edited = exposures[exposures.size() - static_cast<std::size_t>(back)];
        edited.sets.front().set.reps += 2;
        const qint64 weeks = edited.date.daysTo(kReadOn) / 7;
        const auto kept = engine.readAll(log, kReadOn, memory);
        EXPECT_LE(memory.weeksReplayed(), 3 * weeks + 10) << back;
        expectEqual(kept, engine.readAll(log, kReadOn));
    }
}

TEST(ReadingMemory, EverythingAReadingRestsOnBreaksTheSeal)
{
    const RegimeEngine engine;
    const std::vector<std::function<void(AthleteLog&)>> changes{
        [](AthleteLog& log) { log.athlete.value.experience = Experience::Novice; },
        [](AthleteLog& log) { log.lines.front().variant.value.band.high = 9; },
        [](AthleteLog& log) { log.lines.front().variant.value.loading = Loading::Added; },
        [](AthleteLog& log) { log.lines.front().exposures.front().sets.front().set.off = 5; },
        [](AthleteLog& log) { log.lines.front().exposures.front().sets.front().set.failed = true; },
        [](AthleteLog& log) { log.lines.front().exposures.front().sets.front().set.marks.set(Mark::Swing, 9); },
        [](AthleteLog& log) { log.lines.front().exposures.front().sets.front().set.effort.reset(); },
        [](AthleteLog& log) { log.lines.erase(log.lines.begin()); },
        [](AthleteLog& log) { log.lines.front().exposures.erase(log.lines.front().exposures.begin()); },
    };
    for (const auto& change : changes) {
        ReadingMemory memory;
        AthleteLog log = twoLines().build();
        (void)engine.readAll(log, kReadOn, memory);
        change(log);
        expectEqual(engine.readAll(log, kReadOn, memory), engine.readAll(log, kReadOn));
    }
}

TEST(ReadingMemory, ReadsEarlierDaysToo)
{
    const RegimeEngine engine;
    ReadingMemory memory;
    const AthleteLog log = twoLines().build();
    for (const int back : {0, 100, 7, 300, 0}) {
        const QDate day = kReadOn.addDays(-back);
        expectEqual(engine.readAll(log, day, memory), engine.readAll(log, day));
    }
}

}  // namespace
}  // namespace steelyard
