#include "core/numerics/lanes.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace steelyard {
namespace {

using Real = double (*)(double);
using Exact = long double (*)(long double);

// Vectors stay inside: passed between functions that aren't inlined they crash some compilers.
const Real kLog = [](double x) { return lanesLog(lanesOf(x))[2]; };
const Real kExp = [](double x) { return lanesExp(lanesOf(x))[1]; };
const Real kErfcx = [](double x) { return lanesErfcx(lanesOf(x))[3]; };

const Exact kExactLog = [](long double x) { return std::log(x); };
const Exact kExactExp = [](long double x) { return std::exp(x); };

void expectClose(Real ours, Exact exact, double from, double to, double share)
{
    for (int i = 0; i < 40000; ++i) {
        const double x = from + (to - from) * i / 40000;
        const double got = ours(x);
        const auto right = static_cast<double>(exact(static_cast<long double>(x)));
        ASSERT_NEAR(got, right, share * std::abs(right) + 1e-300) << x;
    }
}

TEST(Lanes, LogarithmsAndExponentialsAgreeWithTheLibrarys)
{
    expectClose(kLog, kExactLog, 1e-6, 0.9, 1e-15);
    expectClose(kLog, kExactLog, 1.1, 5000, 1e-15);
    expectClose(kExp, kExactExp, -690, 690, 1e-14);
    expectClose(kExp, kExactExp, -1, 1, 1e-15);
    for (const double x : {1e-290, 1e-30, 1.0, 1e30, 1e290}) EXPECT_NEAR(kLog(x), std::log(x), 1e-12);
    EXPECT_EQ(kExp(-5000), 0);
}

TEST(Lanes, TheScaledTailAgreesWithErfc)
{
    const Exact exact = [](long double x) { return std::exp(x * x) * std::erfc(x); };
    expectClose(kErfcx, exact, 0, 9, 4e-15);
    // Asymptotic series (Abramowitz & Stegun 1964, 7.1.23) far out.
    for (const double x : {30.0, 100.0, 1000.0}) {
        const double y = 1 / (2 * x * x);
        EXPECT_NEAR(kErfcx(x) * x * std::sqrt(std::acos(-1.0)),
                    1 - y + 3 * y * y - 15 * y * y * y + 105 * y * y * y * y, 1e-12);
    }
}

TEST(Lanes, SumsAndMaximaTakeAllFour)
{
    const double four[] = {1, 20, 300, 4000};
    const double below[] = {-1, -20, -300, -4000};
    const double sum = sumOfLanes(loadLanes(four));
    const double most = mostOfLanes(loadLanes(four));
    const double least = mostOfLanes(loadLanes(below));
    const double root = lanesSqrt(lanesOf(90000))[2];
    EXPECT_EQ(sum, 4321);
    EXPECT_EQ(most, 4000);
    EXPECT_EQ(least, -1);
    EXPECT_EQ(root, 300);
}

}  // namespace
}  // namespace steelyard
