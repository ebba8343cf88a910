#include "core/numerics/lanes.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace steelyard {
namespace {

void expectClose(Lanes (*ours)(Lanes), long double (*exact)(long double), double from, double to, double share)
{
    for (int i = 0; i < 40000; ++i) {
        const double x = from + (to - from) * i / 40000;
        const double got = ours(lanesOf(x))[2];
        const auto right = static_cast<double>(exact(static_cast<long double>(x)));
        ASSERT_NEAR(got, right, share * std::abs(right) + 1e-300) << x;
    }
}

TEST(Lanes, LogarithmsAndExponentialsAgreeWithTheLibrarys)
{
    expectClose([](Lanes x) { return lanesLog(x); }, std::log, 1e-6, 0.9, 1e-15);
    expectClose([](Lanes x) { return lanesLog(x); }, std::log, 1.1, 5000, 1e-15);
    expectClose([](Lanes x) { return lanesExp(x); }, std::exp, -690, 690, 1e-14);
    expectClose([](Lanes x) { return lanesExp(x); }, std::exp, -1, 1, 1e-15);
    for (const double x : {1e-290, 1e-30, 1.0, 1e30, 1e290}) EXPECT_NEAR(lanesLog(lanesOf(x))[0], std::log(x), 1e-12);
    EXPECT_EQ(lanesExp(lanesOf(-5000))[1], 0);
}

TEST(Lanes, TheScaledTailAgreesWithErfc)
{
    const auto exact = [](long double x) { return std::exp(x * x) * std::erfc(x); };
    expectClose([](Lanes x) { return lanesErfcx(x); }, exact, 0, 9, 4e-15);
    // Asymptotic series (Abramowitz & Stegun 1964, 7.1.23) far out.
    for (const double x : {30.0, 100.0, 1000.0}) {
        const double y = 1 / (2 * x * x);
        EXPECT_NEAR(lanesErfcx(lanesOf(x))[3] * x * std::sqrt(std::acos(-1.0)), 1 - y + 3 * y * y - 15 * y * y * y,
                    1e-12);
    }
}

TEST(Lanes, SumsAndMaximaTakeAllFour)
{
    const Lanes four{1, 20, 300, 4000};
    EXPECT_EQ(sumOfLanes(four), 4321);
    EXPECT_EQ(mostOfLanes(four), 4000);
    EXPECT_EQ(mostOfLanes(-four), -1);
    EXPECT_EQ(lanesSqrt(four * four)[2], 300);
}

}  // namespace
}  // namespace steelyard
