#include "core/book/kept_readings.h"

#include "core/flags/reading_thresholds.h"
#include "tests/support/rule_probe.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;
using testing_support::wobble;

const QDate kTypedOn(2026, 6, 1);

LogBuilder typedRecord()
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposures(60, kTypedOn, 4, [](int i) {
        return MadeSet{.load = 40 + 0.05 * i + wobble(i), .reps = 10, .off = 0, .rir = 1};
    });
    return builder;
}

void expectSameReview(const AthleteReview& a, const AthleteReview& b)
{
    ASSERT_EQ(a.lines.size(), b.lines.size());
    EXPECT_EQ(a.attention, b.attention);
    EXPECT_EQ(a.flags.size(), b.flags.size());
    for (std::size_t i = 0; i < a.lines.size(); ++i) {
        EXPECT_EQ(a.lines[i].reading.why, b.lines[i].reading.why);
        EXPECT_EQ(a.lines[i].reading.rate, b.lines[i].reading.rate);
        EXPECT_EQ(a.lines[i].reading.next, b.lines[i].reading.next);
    }
}

TEST(KeptReadings, SayWhatAReviewWithoutThemSays)
{
    KeptReadings kept;
    AthleteLog log = typedRecord().build();
    const ReadingParameters shipped;
    ReadingParameters learned;
    learned.filter.dayNoise = 0.02;
    learned.version = 3;
    const RuleSettings surer{{{QStringLiteral("stalled"), QStringLiteral("caution")}, 2}};
    for (const ReadingParameters& parameters : {shipped, learned, shipped})
        for (const RuleSettings& settings : {RuleSettings{}, surer, RuleSettings{}}) {
            const RegimeEngine engine(parameters, readingThresholds(settings));
            expectSameReview(kept.review(log, parameters, settings, kTypedOn, {}),
                             reviewAthlete(log, engine, settings, kTypedOn));
            log.lines.front().exposures.back().sets.front().set.reps += 1;
        }
}

TEST(KeptReadings, ATypedSetCostsNoMoreThanItsWeek)
{
    KeptReadings kept;
    AthleteLog log = typedRecord().build();
    (void)kept.review(log, {}, {}, kTypedOn, {});
    EXPECT_GT(kept.weeksReplayed(), 30);
    log.lines.front().exposures.back().sets.push_back(log.lines.front().exposures.back().sets.front());
    (void)kept.review(log, {}, {}, kTypedOn, {});
    EXPECT_LE(kept.weeksReplayed(), 1);
}

TEST(KeptReadings, RememberAFewLiftersAndForgetTheOldest)
{
    KeptReadings kept;
    AthleteLog log = typedRecord().build();
    for (const int lifter : {1, 2, 3, 4, 5, 1}) {
        log.athlete.id = Id<Athlete>(lifter);
        (void)kept.review(log, {}, {}, kTypedOn, {});
        EXPECT_GT(kept.weeksReplayed(), 30) << lifter;
    }
    log.athlete.id = Id<Athlete>(5);
    (void)kept.review(log, {}, {}, kTypedOn, {});
    EXPECT_EQ(kept.weeksReplayed(), 0);
}

}  // namespace
}  // namespace steelyard
