#include "core/trials/trial_analysis.h"

#include "tests/support/log_builder.h"
#include "tests/support/trial_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::madeTrial;

TEST(TrialAnalysis, GoesFromTheLogToTheWordInOneCall)
{
    LogBuilder log;
    Trial trial = madeTrial({.blocks = 8});
    Library library;
    for (std::size_t arm = 0; arm < 2; ++arm) {
        log.line(QStringLiteral("Arm curl"), arm == 0 ? QStringLiteral("supinated") : QStringLiteral("neutral"));
        const LineRecord& line = log.newestLine();
        trial.arms[arm] = {line.line.variant, line.line.grip, line.line.standard, {8, 12}};
        library.grips.push_back(line.grip);
        int done = 0;
        for (const TrialDay& day : trial.days) {
            if (day.arm != arm) continue;
            log.exposure(day.date, {{.load = 40, .reps = 10, .off = 0, .rir = 1},
                                    {.load = 40, .reps = 9, .off = 0, .rir = 1},
                                    {.load = 40, .reps = 8, .off = 0, .rir = 1}});
            log.felt((arm == 1 ? 8 : 5) + done++ % 2, {}, {});
        }
    }
    const auto analysis =
        analyseTrial(trial, log.build(), library, ReadingParameters{}, VerdictThresholds{}, trial.days.back().date);
    EXPECT_EQ(analysis.verdict.word, TrialWord::Prefer) << analysis.verdict.forCoach.toStdString();
    EXPECT_EQ(analysis.verdict.arm, 1u);
    EXPECT_TRUE(analysis.verdict.forCoach.contains(analysis.armNames[1]));
    EXPECT_TRUE(analysis.standing.finished);
    EXPECT_TRUE(analysis.record.deviations.empty());
}

}  // namespace
}  // namespace steelyard
