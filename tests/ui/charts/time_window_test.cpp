#include "ui/charts/time_window.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TimeWindow year()
{
    TimeWindow window;
    window.setWhole(1000, 1400);
    return window;
}

TEST(TimeWindow, ZoomsAroundADayThatStaysWhereItWas)
{
    TimeWindow window = year();
    window.zoom(0.5, 1100);
    EXPECT_DOUBLE_EQ(window.width(), 200);
    EXPECT_DOUBLE_EQ((1100 - window.low()) / window.width(), 0.25);
    window.zoom(2, 1100);
    EXPECT_TRUE(window.isWhole());
}

TEST(TimeWindow, NeverLeavesTheWhole)
{
    TimeWindow window = year();
    window.zoom(0.25, 1400);
    EXPECT_DOUBLE_EQ(window.high(), 1400);
    window.pan(50);
    EXPECT_DOUBLE_EQ(window.high(), 1400);
    window.pan(-10'000);
    EXPECT_DOUBLE_EQ(window.low(), 1000);
    EXPECT_DOUBLE_EQ(window.width(), 100);
    window.zoom(100, 1010);
    EXPECT_TRUE(window.isWhole());
}

TEST(TimeWindow, IsNeverNarrowerThanTwoWeeksUnlessTheWholeIs)
{
    TimeWindow window = year();
    for (int i = 0; i < 50; ++i) window.zoom(0.5, 1200);
    EXPECT_DOUBLE_EQ(window.width(), TimeWindow::kLeastDays);
    window.setWhole(10, 17);
    window.zoom(0.5, 12);
    EXPECT_DOUBLE_EQ(window.width(), 7);
}

TEST(TimeWindow, PansJustFarEnoughToShowADay)
{
    TimeWindow window = year();
    window.zoom(0.25, 1050);
    const double low = window.low();
    window.show(low + 10);
    EXPECT_DOUBLE_EQ(window.low(), low);
    window.show(1300);
    EXPECT_DOUBLE_EQ(window.high(), 1300);
    EXPECT_DOUBLE_EQ(window.width(), 100);
}

TEST(TimeWindow, KeepsItsPartWhenTheAxisIsTheSameAndStartsOverWhenItIsAnother)
{
    TimeWindow window = year();
    window.zoom(0.5, 1100);
    const double low = window.low();
    window.setWhole(1000, 1400);
    EXPECT_DOUBLE_EQ(window.low(), low);
    window.setWhole(1000, 1401);
    EXPECT_TRUE(window.isWhole());
}

}  // namespace
}  // namespace steelyard
