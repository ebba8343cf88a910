#include "core/sheets/gym_day.h"

#include "tests/support/sheet_samples.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::kg;
using testing_support::SheetSample;

const QDate kMonday(2027, 3, 8);

class GymDays : public testing::Test {
protected:
    // Somebody who does these lines at these loads, in this order.
    void add(const QString& name, const std::vector<std::pair<std::size_t, QStringView>>& exercises,
             const QString& group = QStringLiteral("Evening"))
    {
        SheetSample sample;
        sample.log.athlete.value.name = name;
        sample.log.athlete.value.group = group;
        std::vector<std::size_t> lines;
        for (const auto& [line, load] : exercises) lines.push_back(line);
        sample.plan(kMonday, lines);
        auto& slots_ = sample.log.blocks.front().value.weeks.front().days.front().slotList;
        for (std::size_t i = 0; i < exercises.size(); ++i) slots_[i].load = kg(exercises[i].second);
        sheets.push_back(*buildSessionSheet(sample.log, sample.library, sample.gym, kMonday));
        gyms = {{Id<Gym>(1), QUuid(), sample.gym}};
    }
    [[nodiscard]] std::vector<GymGroup> groups() const { return gymGroups(sheets, gyms); }

    static constexpr std::size_t kCurl = 0, kSquat = 1, kDumbbell = 2, kPulldown = 3;
    std::vector<SessionSheet> sheets;
    std::vector<Row<Gym>> gyms;
};

TEST_F(GymDays, EverybodysNthExerciseFallsInTheNthTurn)
{
    add(QStringLiteral("Ann"), {{kSquat, u"100"}, {kCurl, u"40"}});
    add(QStringLiteral("Bo"), {{kDumbbell, u"20"}});
    const auto day = groups();
    ASSERT_EQ(day.size(), 1U);
    EXPECT_EQ(day[0].athletes, 2);
    ASSERT_EQ(day[0].turns.size(), 2U);
    ASSERT_EQ(day[0].turns[0].uses.size(), 2U);
    EXPECT_EQ(day[0].turns[0].uses[1].athlete, QStringLiteral("Bo"));
    EXPECT_EQ(day[0].turns[0].uses[1].exercise->exercise, QStringLiteral("Bench press"));
    ASSERT_EQ(day[0].turns[1].uses.size(), 1U);
    EXPECT_EQ(day[0].turns[1].uses[0].exercise->exercise, QStringLiteral("Arm curl"));
}

TEST_F(GymDays, GroupsDontMeet)
{
    add(QStringLiteral("Ann"), {{kSquat, u"100"}}, QStringLiteral("Morning"));
    add(QStringLiteral("Bo"), {{kSquat, u"100"}}, QStringLiteral("Evening"));
    const auto day = groups();
    ASSERT_EQ(day.size(), 2U);
    EXPECT_EQ(day[0].turns[0].kit[0], (NeededKit{KitKind::Bar, Implement::StraightBar, kg(u"20"), 1, 1}));
    EXPECT_FALSE(day[0].turns[0].kit[0].isShort());
}

// The test hall has one bar and two pairs of 25 and of 15 kg. 100 kg on a bar of 20 is 25 + 15 a side.
TEST_F(GymDays, WhatIsNeededAtOnceIsCountedAndAShortageShows)
{
    for (const auto* name : {u"Ann", u"Bo", u"Cy"}) add(QString::fromUtf16(name), {{kSquat, u"100"}});
    const auto kit = groups().at(0).turns.at(0).kit;
    ASSERT_EQ(kit.size(), 3U);
    EXPECT_EQ(kit[0], (NeededKit{KitKind::Bar, Implement::StraightBar, kg(u"20"), 3, 1}));
    EXPECT_EQ(kit[1], (NeededKit{KitKind::Disc, Implement::StraightBar, kg(u"25"), 3, 2}));
    EXPECT_EQ(kit[2], (NeededKit{KitKind::Disc, Implement::StraightBar, kg(u"15"), 3, 2}));
    EXPECT_TRUE(kit[0].isShort() && kit[1].isShort() && kit[2].isShort());
}

TEST_F(GymDays, OnePairOfDumbbellsServesOne)
{
    add(QStringLiteral("Ann"), {{kDumbbell, u"20"}});
    add(QStringLiteral("Bo"), {{kDumbbell, u"20"}});
    add(QStringLiteral("Cy"), {{kDumbbell, u"22"}});
    const auto kit = groups().at(0).turns.at(0).kit;
    ASSERT_EQ(kit.size(), 2U);
    EXPECT_EQ(kit[0], (NeededKit{KitKind::Dumbbells, Implement::Dumbbells, kg(u"22"), 1, 1}));
    EXPECT_EQ(kit[1], (NeededKit{KitKind::Dumbbells, Implement::Dumbbells, kg(u"20"), 2, 1}));
}

TEST_F(GymDays, InDifferentTurnsTheSameDiscsServeBoth)
{
    add(QStringLiteral("Ann"), {{kSquat, u"100"}, {kPulldown, u"50"}});
    add(QStringLiteral("Bo"), {{kPulldown, u"50"}, {kSquat, u"100"}});
    for (const GymTurn& turn : groups().at(0).turns) {
        ASSERT_EQ(turn.kit.size(), 3U);
        for (const NeededKit& kit : turn.kit) EXPECT_FALSE(kit.isShort());
    }
}

TEST_F(GymDays, WithoutAGymNothingIsCounted)
{
    add(QStringLiteral("Ann"), {{kSquat, u"100"}});
    EXPECT_TRUE(gymGroups(sheets, {}).at(0).turns.at(0).kit.empty());
}

}  // namespace
}  // namespace steelyard
