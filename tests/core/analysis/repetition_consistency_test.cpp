#include "core/analysis/repetition_consistency.h"

#include "tests/support/log_builder.h"

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

std::vector<Repetition> travelling(const std::vector<double>& millimetres)
{
    std::vector<Repetition> list;
    for (const double mm : millimetres)
        list.push_back({.number = static_cast<int>(list.size()) + 1,
                        .source = RepetitionSource::Measured,
                        .travelMm = Decimal::nearest(mm, 1)});
    return list;
}

// Weir 2005, JSCR 19(1):231-240, the worked example of typical_error_test.cpp: each pair of trials as a set of two repetitions
// gives its SEM, 7.557.
TEST(RepetitionConsistency, AgreesWithThePublishedExampleWhenPairsAreSetsOfTwo)
{
    std::vector<std::vector<Repetition>> sets;
    const std::vector<std::pair<double, double>> trials{{146, 140}, {148, 152}, {170, 152}, {90, 99},
                                                        {157, 145}, {156, 153}, {176, 167}, {205, 218}};
    for (const auto& [first, second] : trials) sets.push_back(travelling({second, first}));
    const auto found = repetitionConsistency(sets, RepetitionQuantity::Travel);
    ASSERT_TRUE(found);
    EXPECT_NEAR(found->typicalError, 7.557, 0.001);
    EXPECT_EQ(found->pairs, 8);
    EXPECT_EQ(found->sets, 8);
}

TEST(RepetitionConsistency, LeavesDifferencesBetweenDaysOut)
{
    const std::vector<std::vector<Repetition>> near{travelling({500, 504, 499, 503}), travelling({501, 498, 502, 500})};
    std::vector<std::vector<Repetition>> apart = near;
    for (Repetition& one : apart[1]) one.travelMm = Decimal::nearest(*one.travel() + 80, 1);
    EXPECT_NEAR(repetitionConsistency(apart, RepetitionQuantity::Travel)->typicalError,
                repetitionConsistency(near, RepetitionQuantity::Travel)->typicalError, 1e-9);
}

TEST(RepetitionConsistency, TheCoefficientOfVariationIsTheSameAtEverySize)
{
    const std::vector<double> values{500, 515, 490, 505, 498, 511};
    std::vector<double> doubled;
    for (const double value : values) doubled.push_back(2 * value);
    const std::vector<std::vector<Repetition>> small{travelling(values)};
    const std::vector<std::vector<Repetition>> large{travelling(doubled)};
    const auto one = repetitionConsistency(small, RepetitionQuantity::Travel);
    const auto two = repetitionConsistency(large, RepetitionQuantity::Travel);
    ASSERT_TRUE(one && two);
    EXPECT_NEAR(one->variation, two->variation, 1e-12);
    EXPECT_NEAR(2 * one->typicalError, two->typicalError, 1e-9);
}

TEST(RepetitionConsistency, IsNotSaidOfTooFewPairs)
{
    EXPECT_FALSE(repetitionConsistency(std::vector<std::vector<Repetition>>{travelling({500, 505, 495, 500})},
                                       RepetitionQuantity::Travel));
    EXPECT_TRUE(repetitionConsistency(std::vector<std::vector<Repetition>>{travelling({500, 505, 495, 500, 499})},
                                      RepetitionQuantity::Travel));
    EXPECT_FALSE(repetitionConsistency(std::vector<std::vector<Repetition>>{travelling({500, 505, 495, 500, 499})},
                                       RepetitionQuantity::Lowering));
}

TEST(RepetitionConsistency, AGapPairsWithNothing)
{
    auto set = travelling({500, 505, 495, 500, 499, 502, 503});
    set[2].travelMm.reset();
    set[6].partWay = true;
    const auto found = repetitionConsistency(std::vector<std::vector<Repetition>>{set}, RepetitionQuantity::Travel);
    EXPECT_FALSE(found);  // 500-505, 500-499, 499-502
    EXPECT_EQ(valueOf(set[6], RepetitionQuantity::Travel), std::nullopt);
}

TEST(RepetitionConsistency, RhythmIsLiftingAndLoweringTogether)
{
    Repetition one{.liftingSeconds = Decimal::parse(u"1.25"), .loweringSeconds = Decimal::parse(u"2.5")};
    EXPECT_DOUBLE_EQ(valueOf(one, RepetitionQuantity::Rhythm).value(), 3.75);
    EXPECT_DOUBLE_EQ(valueOf(one, RepetitionQuantity::Lowering).value(), 2.5);
    one.liftingSeconds.reset();
    EXPECT_FALSE(valueOf(one, RepetitionQuantity::Rhythm));
}

TEST(RepetitionConsistency, HoldsLikeAgainstLike)
{
    testing_support::LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    builder.exposure(QDate(2026, 2, 2), {{.load = 20, .reps = 3, .kind = SetKind::WarmUp}, {.load = 40, .reps = 3}});
    builder.exposure(QDate(2026, 2, 5), {{.load = 44, .reps = 3}, {.load = 50, .reps = 3}, {.load = 40, .reps = 3}});
    const AthleteLog log = builder.build();
    std::vector<SetRepetitions> all;
    for (const int id : {1, 2, 3, 4}) all.push_back({Id<SetEntry>(id), travelling({500.0 + id})});
    const auto like = likeSets(log.lines[0], all, Id<SetEntry>(2));
    ASSERT_EQ(like.size(), 2U);  // its own and the 44 kg; the 50 are too far, the fifth has none
    EXPECT_EQ(like[0], all[1].repetitions);
    EXPECT_EQ(like[1], all[2].repetitions);
    EXPECT_EQ(lineRepetitions(log.lines[0], all).size(), 4U);
    EXPECT_TRUE(likeSets(log.lines[0], all, Id<SetEntry>(99)).empty());
}

}  // namespace
}  // namespace steelyard
