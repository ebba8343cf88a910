#include "core/numerics/lanes.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using Exact = long double (*)(long double);

// Vectors stay inside: passed between functions that aren't inlined they crash some compilers.
template <class Real>
Real ourLog(Real x)
{
    return lanesLog(lanesOf(x))[2];
}
template <class Real>
Real ourExp(Real x)
{
    return lanesExp(lanesOf(x))[1];
}
template <class Real>
Real ourErfcx(Real x)
{
    return lanesErfcx(lanesOf(x))[3];
}

const Exact kExactLog = [](long double x) { return std::log(x); };
const Exact kExactExp = [](long double x) { return std::exp(x); };
const Exact kExactErfcx = [](long double x) { return std::exp(x * x) * std::erfc(x); };

template <class Real>
void expectClose(Real (*ours)(Real), Exact exact, double from, double to, double share)
{
    for (int i = 0; i < 40000; ++i) {
        const auto x = static_cast<Real>(from + (to - from) * i / 40000);
        const auto got = static_cast<double>(ours(x));
        const auto right = static_cast<double>(exact(static_cast<long double>(x)));
        ASSERT_NEAR(got, right, share * std::abs(right) + 1e-300) << x;
    }
}

TEST(Lanes, LogarithmsAndExponentialsAgreeWithTheLibrarys)
{
    expectClose<double>(ourLog, kExactLog, 1e-6, 0.9, 1e-15);
    expectClose<double>(ourLog, kExactLog, 1.1, 5000, 1e-15);
    expectClose<double>(ourExp, kExactExp, -690, 690, 1e-14);
    expectClose<double>(ourExp, kExactExp, -1, 1, 1e-15);
    for (const double x : {1e-290, 1e-30, 1.0, 1e30, 1e290}) EXPECT_NEAR(ourLog(x), std::log(x), 1e-12);
    EXPECT_EQ(ourExp(-5000.0), 0);
}

TEST(Lanes, SoDoThoseOfFloatsToTheirDigits)
{
    expectClose<float>(ourLog, kExactLog, 1e-6, 0.9, 4e-7);
    expectClose<float>(ourLog, kExactLog, 1.1, 5000, 4e-7);
    expectClose<float>(ourExp, kExactExp, -86, 86, 4e-7);
    expectClose<float>(ourErfcx, kExactErfcx, 0, 9, 6e-7);
    for (const float x : {1e-37F, 1e-20F, 1.0F, 1e20F, 1e37F}) EXPECT_NEAR(ourLog(x), std::log(x), 1e-5);
    EXPECT_EQ(ourExp(-5000.0F), 0);
    EXPECT_EQ(lanesSqrt(lanesOf(90000.0F))[7], 300);
}

TEST(Lanes, TheScaledTailAgreesWithErfc)
{
    expectClose<double>(ourErfcx, kExactErfcx, 0, 9, 4e-15);
    // Asymptotic series (Abramowitz & Stegun 1964, 7.1.23) far out.
    for (const double x : {30.0, 100.0, 1000.0}) {
        const double y = 1 / (2 * x * x);
        const double right = 1 - y + 3 * y * y - 15 * y * y * y + 105 * y * y * y * y;
        EXPECT_NEAR(ourErfcx(x) * x * std::sqrt(std::acos(-1.0)), right, 1e-12);
        EXPECT_NEAR(ourErfcx(static_cast<float>(x)) * x * std::sqrt(std::acos(-1.0)), right, 1e-6);
    }
}

TEST(Lanes, SumsAndMaximaTakeAll)
{
    const double four[] = {1, 20, 300, 4000};
    const double below[] = {-1, -20, -300, -4000};
    const double sum = sumOfLanes(loadLanes(four));
    const double most = mostOfLanes(loadLanes(four));
    const double least = mostOfLanes(loadLanes(below));
    const double root = lanesSqrt(lanesOf(90000.0))[2];
    EXPECT_EQ(sum, 4321);
    EXPECT_EQ(most, 4000);
    EXPECT_EQ(least, -1);
    EXPECT_EQ(root, 300);
    const float eight[] = {1, 2, 4, 8, 16, 32, 64, 128};
    const float sumOfEight = sumOfLanes(loadLanes(eight));
    const float mostOfEight = mostOfLanes(loadLanes(eight));
    EXPECT_EQ(sumOfEight, 255);
    EXPECT_EQ(mostOfEight, 128);
}

TEST(Lanes, MovesEveryNumberUpAndKeepsTheFirst)
{
    double four[] = {1, 2, 3, 4};
    storeLanes(four, movedUpLanes(loadLanes(four)));
    EXPECT_THAT(four, testing::ElementsAre(1, 1, 2, 3));
    float eight[] = {1, 2, 3, 4, 5, 6, 7, 8};
    storeLanes(eight, movedUpLanes(loadLanes(eight)));
    EXPECT_THAT(eight, testing::ElementsAre(1, 1, 2, 3, 4, 5, 6, 7));
}

}  // namespace
}  // namespace steelyard
