// The normal tail against SciPy (recorded), against arithmetic with thousands of digits (recorded) and against R's pnorm,
// from where the tail is all there is to where it has long left the range of numbers.
#include "core/numerics/distribution.h"
#include "tests/support/r_script.h"
#include "tests/support/reference_table.h"

#include <cmath>

namespace steelyard {
namespace {

constexpr double kTailTolerance = 1e-13;

// Relative: where theirs is 0, ours must be.
void expectSame(double ours, double theirs, const char* what, double at)
{
    EXPECT_LE(std::abs(ours - theirs), kTailTolerance * std::abs(theirs)) << what << " at " << at << ": " << ours;
}

TEST(NormalTailAgainstScipy, LogOfTheTailAgreesTo13Digits)
{
    const auto table = testing_support::readReference("normal_tail_scipy.csv");
    ASSERT_EQ(table.rows.size(), 18u);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const double a = table.number(row, "a");
        expectSame(normalLogCdf(-a), table.number(row, "log_Phi_minus_a"), "log of the tail", a);
    }
}

// SciPy has no hazard, and the quotient of its density and tail loses digits far out; so do R's.
TEST(NormalTailAgainstExactArithmetic, LogOfTheTailHazardAndItsSlopeAgreeTo13Digits)
{
    const auto table = testing_support::readReference("normal_tail_exact.csv");
    ASSERT_EQ(table.rows.size(), 20u);
    for (std::size_t row = 0; row < table.rows.size(); ++row) {
        const double a = table.number(row, "a");
        expectSame(normalLogCdf(-a), table.number(row, "log_tail"), "log of the tail", a);
        expectSame(normalHazard(a), table.number(row, "hazard"), "hazard", a);
        expectSame(normalHazardSlope(a), table.number(row, "slope"), "slope", a);
    }
}

TEST(NormalTailAgainstR, LogOfTheProbabilityAgreesTo13DigitsOnBothSides)
{
    const char* const script = R"(
cat(format(pnorm(scan(file("stdin"), quiet = TRUE), log.p = TRUE), digits = 17)))";
    std::vector<double> z;
    for (double at = -60.0; at <= 8.0; at += 0.1234) z.push_back(at);
    for (const double far : {-1e5, -1e3, -200.0, 20.0, 37.0}) z.push_back(far);
    const auto answer = testing_support::runR(script, z);
    ASSERT_EQ(answer.size(), z.size());
    for (std::size_t i = 0; i < z.size(); ++i)
        expectSame(normalLogCdf(z[i]), answer[i], "log of the probability", z[i]);
}

}  // namespace
}  // namespace steelyard
