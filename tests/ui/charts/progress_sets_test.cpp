#include "tests/support/progress_case.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::MadeSet;
using testing_support::ProgressCase;

const QDate kFirst(2026, 3, 2);

TEST(ProgressSets, TellHowNearToFailureEachSetWentAndWhoWatched)
{
    ProgressCase c;
    c.session(kFirst, {{.load = 40, .reps = 9, .off = 0, .rir = 1},
                       {.load = 40, .reps = 8, .off = 2, .rir = 1.5},
                       {.load = 40, .reps = 7, .rir = 4.5},
                       {.load = 40, .reps = 6},
                       {.load = 40, .reps = 5, .off = 0, .failed = true}});
    const auto sets = c.build().sets;
    ASSERT_EQ(sets.size(), 5u);
    const SetEffort expected[]{SetEffort::Near, SetEffort::Some, SetEffort::Far, SetEffort::Unknown, SetEffort::Near};
    for (std::size_t i = 0; i < sets.size(); ++i) {
        EXPECT_EQ(sets[i].effort, expected[i]) << i;
        EXPECT_EQ(sets[i].number, static_cast<int>(i) + 1);
        EXPECT_EQ(sets[i].of, 5);
        EXPECT_EQ(sets[i].watched, i != 2 && i != 3);
    }
    EXPECT_EQ(sets[1].counted, 6);
    EXPECT_EQ(sets[1].reps, 8);
}

TEST(ProgressSets, LeaveWarmUpsAndDeloadSetsOut)
{
    ProgressCase c;
    c.session(kFirst, {{.load = 40, .reps = 9, .off = 0, .rir = 1},
                       {.load = 20, .reps = 10, .kind = SetKind::WarmUp},
                       {.load = 30, .reps = 8, .kind = SetKind::Deload}});
    EXPECT_EQ(c.build().sets.size(), 1u);
}

TEST(ProgressSets, StandOnTheScale)
{
    ProgressCase c;
    for (int i = 0; i < 6; ++i)
        c.session(kFirst.addDays(3 * i),
                  {{.load = 40, .reps = 10, .off = 0, .rir = 1}, {.load = 40, .reps = 6, .off = 2, .rir = 0}});
    const ProgressSpec spec = c.build();
    EXPECT_LE(spec.reps.axis.low, 4);
    EXPECT_GE(spec.reps.axis.high, 10);
}

TEST(ProgressSets, SeriesAreOfTheLoadsUsedMostAndSayTheBestOfEachSession)
{
    ProgressCase c;
    for (int i = 0; i < 8; ++i) {
        const double heavy = i % 2 == 0 ? 50 : 45;
        c.session(kFirst.addDays(3 * i), {{.load = heavy, .reps = 5 + i, .off = 0, .rir = 1},
                                          {.load = 40, .reps = 8, .off = 0, .rir = 1},
                                          {.load = 40, .reps = 10 + i, .off = 1, .rir = 1}});
    }
    c.session(kFirst.addDays(30), {{.load = 60, .reps = 2, .off = 0, .rir = 1}});
    const auto series = c.build().loadSeries;
    ASSERT_EQ(series.size(), 3u);  // 60 was used once
    EXPECT_EQ(series[0].label, QStringLiteral("40"));
    EXPECT_EQ(series[0].sets, 16);
    EXPECT_EQ(series[1].label, QStringLiteral("50"));  // of equals the heavier
    EXPECT_EQ(series[2].label, QStringLiteral("45"));
    ASSERT_EQ(series[0].runs.size(), 1u);
    ASSERT_EQ(series[0].runs[0].size(), 8u);
    EXPECT_EQ(series[0].runs[0][3], QPointF(chartDay(kFirst.addDays(9)), 12));  // 13 less one off standard
}

TEST(ProgressSets, SeriesBeginAnewAfterALongTimeAndLeaveOutWhatCanNotBeCompared)
{
    ProgressCase c;
    for (const int day : {0, 4, 8, 60, 64})
        c.session(kFirst.addDays(day), {{.load = 40, .reps = 8, .off = 0, .rir = 1}});
    c.reading.points[1].offStandard = true;
    const auto series = c.build().loadSeries;
    ASSERT_EQ(series.size(), 1u);
    ASSERT_EQ(series[0].runs.size(), 2u);
    EXPECT_EQ(series[0].runs[0].size(), 2u);
    EXPECT_EQ(series[0].runs[1].front().x(), chartDay(kFirst.addDays(60)));
}

TEST(ProgressSets, NotesStandAtTheirSessionOnceEach)
{
    ProgressCase c;
    for (int i = 0; i < 3; ++i) c.session(kFirst.addDays(3 * i), {{.load = 40, .reps = 8, .off = 0, .rir = 1}});
    c.notes = {QString(), QStringLiteral("slept badly"), QString()};
    const auto notes = c.build().notes;
    ASSERT_EQ(notes.size(), 1u);
    EXPECT_EQ(notes[0].date, kFirst.addDays(3));
    EXPECT_EQ(notes[0].label, QStringLiteral("slept badly"));
    EXPECT_TRUE(notes[0].tip.contains(QStringLiteral("slept badly")));
}

}  // namespace
}  // namespace steelyard
