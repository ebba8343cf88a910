#include "core/analysis/verdict_rules.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const VerdictThresholds kLimits;
constexpr double kUsualLimit = 0.70;  // not a setting: what these cases are written for

Verdict decided(const RegimeChances& chances, std::optional<Verdict> said = {}, const LineGates& gates = {})
{
    return decideVerdict(gates, chances, kUsualLimit, said, kLimits).verdict;
}

TEST(VerdictRules, SayWhatIsLikelyEnough)
{
    EXPECT_EQ(decided({.rising = 0.61, .flat = 0.29, .falling = 0.10}), Verdict::Progressing);
    EXPECT_EQ(decided({.rising = 0.45, .flat = 0.45, .falling = 0.10}), Verdict::Holding);
    EXPECT_EQ(decided({.rising = 0.25, .flat = 0.60, .falling = 0.15}), Verdict::Stalled);
    EXPECT_EQ(decided({.rising = 0.25, .flat = 0.40, .falling = 0.35}), Verdict::Slipping);
}

TEST(VerdictRules, KeepAWordUntilItsChanceHasFallenForGood)
{
    const RegimeChances between{.rising = 0.37, .flat = 0.53, .falling = 0.10};
    EXPECT_EQ(decided(between), Verdict::Holding);
    EXPECT_EQ(decided(between, Verdict::Stalled), Verdict::Stalled);
    const RegimeChances rising{.rising = 0.53, .flat = 0.40, .falling = 0.07};
    EXPECT_EQ(decided(rising), Verdict::Holding);
    EXPECT_EQ(decided(rising, Verdict::Progressing), Verdict::Progressing);
    EXPECT_EQ(decided(rising, Verdict::Stalled), Verdict::Holding);
}

TEST(VerdictRules, AskForFactsFirst)
{
    const RegimeChances sure{.rising = 0.99, .flat = 0.01, .falling = 0};
    LineGates gates;
    gates.tooFew = true;
    EXPECT_EQ(decided(sure, {}, gates), Verdict::CantTell);
    gates = {};
    gates.mixed = true;
    EXPECT_EQ(decided(sure, {}, gates), Verdict::CantTell);
    gates = {};
    gates.afterLayoff = true;
    EXPECT_EQ(decided(sure, {}, gates), Verdict::Holding);
    EXPECT_EQ(decideVerdict({}, std::nullopt, kUsualLimit, {}, kLimits).reason, std::u16string_view(u"no_estimate"));
}

TEST(VerdictRules, WithoutEffortOnlyASureRiseIsSaid)
{
    LineGates gates;
    gates.effortUnknown = true;
    EXPECT_EQ(decided({.rising = 0.91, .flat = 0.09, .falling = 0}, {}, gates), Verdict::Progressing);
    EXPECT_EQ(decided({.rising = 0.80, .flat = 0.20, .falling = 0}, {}, gates), Verdict::CantTell);
    EXPECT_EQ(decided({.rising = 0.05, .flat = 0.90, .falling = 0.05}, {}, gates), Verdict::CantTell);
}

TEST(VerdictRules, AnEasyWeekLeavesTheWordAsItWas)
{
    LineGates easy;
    easy.deload = true;
    const RegimeChances down{.rising = 0.10, .flat = 0.80, .falling = 0.10};
    EXPECT_EQ(decided(down, {}, easy), Verdict::Holding);
    EXPECT_EQ(decided(down, Verdict::Stalled, easy), Verdict::Stalled);
    EXPECT_EQ(decided(down, Verdict::Progressing, easy), Verdict::Progressing);
}

TEST(VerdictRules, SoonerAndSurerMoveTheLimit)
{
    VerdictThresholds limits;
    for (const auto experience : {Experience::Novice, Experience::Intermediate, Experience::Advanced}) {
        limits.caution = Caution::Sooner;
        const double sooner = limits.notRising(experience);
        limits.caution = Caution::Usual;
        const double usual = limits.notRising(experience);
        limits.caution = Caution::Surer;
        EXPECT_LT(sooner, usual);
        EXPECT_LT(usual, limits.notRising(experience));
    }
}

TEST(VerdictRules, ShownChancesAreLessBoldThanTheFilters)
{
    double before = 0;
    for (double stated = 0; stated <= 1.0; stated += 0.01) {
        const RegimeChances shown = calibrated({.rising = 1 - stated, .flat = stated * 0.75, .falling = stated * 0.25});
        EXPECT_NEAR(shown.rising + shown.flat + shown.falling, 1, 1e-12);
        EXPECT_GE(shown.notRising(), before);
        if (stated > 0.01) {
            EXPECT_NEAR(shown.falling / shown.notRising(), 0.25, 1e-9);
        }
        before = shown.notRising();
    }
    EXPECT_LT(before, 0.9);
}

}  // namespace
}  // namespace steelyard
