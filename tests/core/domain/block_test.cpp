#include "core/domain/block.h"

#include <gtest/gtest.h>

#include <functional>

namespace steelyard {
namespace {

const QDate kMonday(2026, 3, 2);

Block soundBlock()
{
    Slot slot{.variant = Id<Variant>(1), .grip = Id<Grip>(1), .standard = Id<RepStandard>(1)};
    slot.superset = kMostSupersets;
    Block block{.athlete = Id<Athlete>(1), .name = QStringLiteral("Spring"), .start = kMonday};
    block.weeks = {{WeekKind::Normal, {{kMonday, {}, {slot}}}}, {WeekKind::Deload, {}}};
    block.minutesPerDay = 60;
    block.aims = {{Id<Muscle>(1), 4, 8}, {Id<Muscle>(2), 0, 0}};
    block.daysOff = {{kMonday.addDays(3), kMonday.addDays(5), {}}, {kMonday.addDays(6), kMonday.addDays(6), {}}};
    return block;
}

// The fields that the problems name, once each.
QStringList problemsAfter(const std::function<void(Block&)>& change)
{
    Block block = soundBlock();
    change(block);
    QStringList fields;
    for (const Problem& problem : validate(block)) fields << problem.field;
    fields.removeDuplicates();
    return fields;
}

TEST(Block, IsSoundAsBuilt)
{
    EXPECT_EQ(validate(soundBlock()), Problems{});
}

TEST(Block, NamesWhatCantBe)
{
    const auto one = [](const char* field) { return QStringList(QLatin1String(field)); };
    EXPECT_EQ(problemsAfter([](Block& b) { b.name.clear(); }), one("name"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.weeks[0].days[0].date = kMonday.addDays(-1); }), one("days"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.weeks[0].days[0].slotList[0].superset = kMostSupersets + 1; }),
              one("slots"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.weeks[0].days[0].slotList[0].band = {9, 8}; }), one("slots"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.minutesPerDay = 0; }), one("minutes"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.easing.setsPercent = 0; }), one("easing"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.easing.moreReserve = 11; }), one("easing"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.aims[1].muscle = b.aims[0].muscle; }), one("aims"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.aims[0].weeklySetsHigh = 3; }), one("aims"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.daysOff[1].first = b.daysOff[0].last; }), one("days_off"));
    EXPECT_EQ(problemsAfter([](Block& b) { b.daysOff[1].last = kMonday; }), one("days_off"));
}

}  // namespace
}  // namespace steelyard
