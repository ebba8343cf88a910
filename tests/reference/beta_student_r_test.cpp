// The beta and Student distributions against R (qt, pbeta, qbeta, dbeta).
#include "core/numerics/beta.h"
#include "core/numerics/student.h"
#include "tests/support/r_script.h"

namespace steelyard {
namespace {

TEST(BetaAndStudentAgainstR, QuantilesAndProbabilitiesAgree)
{
    const auto answer = testing_support::runR(
        "x <- scan(file('stdin'), quiet = TRUE); cat(format(c(qt(.975, 9), qt(.05, 22), pbeta(.5, 4, 6), dbeta(.3, 2, "
        "7), "
        "qbeta(c(.05, .95), 7, 3), qbeta(.05, 3, 3)), digits = 17))",
        {0});
    ASSERT_EQ(answer.size(), 7u);
    EXPECT_NEAR(studentQuantile(0.975, 9), answer[0], 1e-11);
    EXPECT_NEAR(studentQuantile(0.05, 22), answer[1], 1e-11);
    EXPECT_NEAR(betaCdf(0.5, 4, 6), answer[2], 1e-13);
    EXPECT_NEAR(betaDensity(0.3, 2, 7), answer[3], 1e-12);
    EXPECT_NEAR(betaQuantile(0.05, 7, 3), answer[4], 1e-12);
    EXPECT_NEAR(betaQuantile(0.95, 7, 3), answer[5], 1e-12);
    EXPECT_NEAR(betaQuantile(0.05, 3, 3), answer[6], 1e-12);
    EXPECT_EQ(betaCdf(-1, 2, 2), 0);
    EXPECT_EQ(betaCdf(2, 2, 2), 1);
    EXPECT_EQ(betaDensity(2, 2, 2), 0);
}

}  // namespace
}  // namespace steelyard
