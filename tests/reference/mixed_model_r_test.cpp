// One lifter's regression against a mixed model over many: where a mixed model has estimated the spreads, what it expects of one
// subject (its random effects, shrunken) is what our regression says of that subject alone with those spreads as priors.
// R's package nlme (lme), run here, on two open data sets it carries: Machines, six workers each on three machines three times
// (Milliken and Johnson 1984), and Orthodont, the growth of 27 children from 8 to 14 years (Potthoff and Roy 1964).
#include "core/trials/arm_regression.h"
#include "tests/support/r_script.h"

#include <cmath>

namespace steelyard {
namespace {

constexpr double kKnown = 1e9;  // sessions' worth: as good as given

TEST(MixedModelAgainstR, AWorkersDifferencesOfThreeMachinesAreTheShrunkenOnes)
{
    const auto answer = testing_support::runR(
        R"(suppressMessages(library(nlme)); m <- Machines; m$Worker <- factor(m$Worker, ordered = FALSE)
           m$pair <- interaction(m$Worker, m$Machine); f <- lme(score ~ Machine + Worker, random = ~1 | pair, data = m)
           s <- as.numeric(VarCorr(f)[, 2]); means <- c(0, fixef(f)[c('MachineB', 'MachineC')])
           b <- function(w, k) ranef(f)[paste0(w, '.', k), 1]
           out <- c(s, sqrt(2 / (3 / s[2]^2 + 1 / s[1]^2)))
           for (w in levels(m$Worker)) {
             mine <- m[m$Worker == w, ]; arm <- as.integer(mine$Machine)
             out <- c(out, b(w, 'B') - b(w, 'A'), b(w, 'C') - b(w, 'A'), b(w, 'C') - b(w, 'B'))
             for (i in seq_len(nrow(mine))) out <- c(out, arm[i] - 1, mine$score[i] - means[arm[i]])
           }
           cat(format(out, digits = 17)))",
        {});
    constexpr std::size_t kRows = 9;
    constexpr std::size_t kPerWorker = 3 + 2 * kRows;
    ASSERT_EQ(answer.size(), 3 + 6 * kPerWorker);
    RegressionPriors priors;
    priors.differenceSd = std::sqrt(2.0) * answer[0];  // of two effects that each have this one
    priors.spread = answer[1];
    priors.spreadWorth = kKnown;
    priors.trendSd = 0;
    priors.levelSd = 1e5;
    for (std::size_t worker = 0; worker < 6; ++worker) {
        const std::size_t from = 3 + worker * kPerWorker;
        ArmValues values{.arms = 3, .arm = {}, .value = {}};
        for (std::size_t row = 0; row < kRows; ++row) {
            values.arm.push_back(static_cast<std::size_t>(answer[from + 3 + 2 * row]));
            values.value.push_back(answer[from + 4 + 2 * row]);
        }
        const auto fit = regressArms(values, priors);
        ASSERT_TRUE(fit);
        EXPECT_NEAR(fit->difference(1, 0).mean, answer[from], 1e-5) << worker;
        EXPECT_NEAR(fit->difference(2, 0).mean, answer[from + 1], 1e-5) << worker;
        EXPECT_NEAR(fit->difference(2, 1).mean, answer[from + 2], 1e-5) << worker;
        EXPECT_NEAR(fit->difference(1, 0).scale, answer[2], 1e-5) << worker;
    }
}

TEST(MixedModelAgainstR, AChildsTrendIsTheShrunkenOne)
{
    const auto answer = testing_support::runR(
        R"(suppressMessages(library(nlme)); o <- Orthodont; o$Subject <- factor(o$Subject, ordered = FALSE)
           f <- lme(distance ~ age + Subject, random = ~0 + I(age - 11) | Subject, data = o)
           out <- as.numeric(VarCorr(f)[, 2])
           for (s in levels(o$Subject)) {
             mine <- o[o$Subject == s, ]; mine <- mine[order(mine$age), ]
             out <- c(out, ranef(f)[s, 1], mine$distance - fixef(f)['age'] * mine$age)
           }
           cat(format(out, digits = 17)))",
        {});
    constexpr std::size_t kChildren = 27;
    constexpr std::size_t kAges = 4;
    constexpr double kYears = 6;  // from the first to the last
    ASSERT_EQ(answer.size(), 2 + kChildren * (1 + kAges));
    RegressionPriors priors;
    priors.trendSd = kYears * answer[0];
    priors.spread = answer[1];
    priors.spreadWorth = kKnown;
    priors.levelSd = 1e5;
    for (std::size_t child = 0; child < kChildren; ++child) {
        const auto* const own = &answer[2 + child * (1 + kAges)];
        const auto fit = regressArms(
            {.arms = 2, .arm = {0, 0, 0, 0}, .value = std::vector<double>(own + 1, own + 1 + kAges)}, priors);
        ASSERT_TRUE(fit);
        EXPECT_NEAR(fit->trend(), kYears * own[0], 1e-5) << child;
    }
}

}  // namespace
}  // namespace steelyard
