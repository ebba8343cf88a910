// One line seen as several by the repetitions of each session's first working set.
#include "core/analysis/rep_band_split.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;

TEST(UsualBands, MeetWithoutAGapAndTakeEveryNumber)
{
    for (std::size_t band = 1; band < kUsualBands.size(); ++band)
        EXPECT_EQ(kUsualBands.at(band).low, kUsualBands.at(band - 1).high + 1);
    EXPECT_EQ(usualBandOf(1), 0U);
    EXPECT_EQ(usualBandOf(6), 0U);
    EXPECT_EQ(usualBandOf(7), 1U);
    EXPECT_EQ(usualBandOf(20), 2U);
    EXPECT_EQ(usualBandOf(21), 3U);
    EXPECT_EQ(usualBandOf(500), 3U);
    EXPECT_EQ(usualBandText(1), QStringLiteral("7–12"));
    EXPECT_EQ(usualBandText(3), QStringLiteral("more than 20"));
}

AthleteLog mixedLog()
{
    return LogBuilder()
        .line(QStringLiteral("Arm curl"))
        .exposure(QDate(2026, 1, 5), {{.load = 20, .reps = 15, .kind = SetKind::WarmUp}, {.load = 40, .reps = 6}})
        .exposure(QDate(2026, 1, 8), {{.load = 35, .reps = 10}, {.load = 35, .reps = 6}})
        .exposure(QDate(2026, 1, 12), {{.load = 42.5, .reps = 5}})
        .exposure(QDate(2026, 1, 15), {{.load = 60, .reps = 0, .failed = true}, {.load = 35, .reps = 10}})
        .exposure(QDate(2026, 1, 19), {{.load = 20, .reps = 25}})
        .build();
}

TEST(SplitByBand, PutsEverySessionWhereItsFirstWorkingSetWas)
{
    const AthleteLog log = mixedLog();
    const BandSplit split = splitByBand(log, 0);
    EXPECT_EQ(split.bands, (std::vector<std::size_t>{0, 1, 3}));
    ASSERT_EQ(split.log.lines.size(), 3U);
    const auto days = [&](std::size_t line) {
        std::vector<QDate> found;
        for (const Exposure& one : split.log.lines[line].exposures) found.push_back(one.date);
        return found;
    };
    EXPECT_EQ(days(0), (std::vector<QDate>{QDate(2026, 1, 5), QDate(2026, 1, 12)}));
    EXPECT_EQ(days(1), std::vector<QDate>{QDate(2026, 1, 8)});
    EXPECT_EQ(days(2), std::vector<QDate>{QDate(2026, 1, 19)}) << "a first set without a repetition is in no band";
    EXPECT_EQ(split.log.lines[0].exposures[0], log.lines[0].exposures[0]) << "whole, the warm-up too";
    EXPECT_NE(split.log.lines[0].id, split.log.lines[1].id);
}

TEST(SplitByBand, OfALineWithoutSessionsIsNothing)
{
    const AthleteLog log = LogBuilder().line(QStringLiteral("Row")).build();
    EXPECT_TRUE(splitByBand(log, 0).log.lines.empty());
}

}  // namespace
}  // namespace steelyard
