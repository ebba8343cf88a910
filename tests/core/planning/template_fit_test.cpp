// One shape for many lifters: what differs from the template is named, and nothing else differs.
#include "core/planning/template_fit.h"

#include "core/planning/block_ops.h"
#include "core/planning/block_templates.h"
#include "core/planning/gym_offers.h"
#include "tests/support/plan_kit.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::PlanKit;
using enum PlanKit::Lift;

const QDate kToday(2027, 2, 26);
const QDate kMonday(2027, 3, 1);

struct FitCase {
    PlanKit kit;
    Gym gym;
    TemplateWishes wishes{QStringLiteral("Spring"), kMonday, {}, {}};

    FitCase()
    {
        for (const PlanKit::Lift lift : {Press, Row, Curl, Extension, Pull}) {
            kit.variant(lift).implement = Implement::Dumbbells;
            kit.variant(lift).usualGrip = Id<Grip>(lift);
        }
        gym.dumbbells = {{QStringLiteral("rack"), kg(2), kg(2), kg(40)}};
    }
    [[nodiscard]] static Load kg(int amount) { return Load::make(Decimal(amount), MassUnit::kg).value(); }
    // Row is for the back, as Pull is; Press and Extension have different targets.
    [[nodiscard]] static BlockTemplate shape()
    {
        Block block = PlanKit::block(kMonday, 2, {1, 4});
        for (PlannedWeek& week : block.weeks) {
            week.days[0].slotList = {PlanKit::slot(Press, 3), PlanKit::slot(Row, 4)};
            week.days[0].slotList[0].superset = 1;
            week.days[0].slotList[1].superset = 1;
            week.days[1].slotList = {PlanKit::slot(Curl, 2)};
        }
        return templateOf(block, QStringLiteral("Two days")).value();
    }
    [[nodiscard]] TemplateFit fit(const BlockTemplate& from = shape()) const
    {
        auto made = fitTemplate(from, {kit.log, kit.library, &gym, kToday}, wishes);
        EXPECT_TRUE(made) << (made ? "" : qPrintable(made.error().what));
        return std::move(made).value();
    }
    void done(const LiftLine& lift, PlanKit::Lift exercise, Exposure exposure)
    {
        const auto at = static_cast<std::size_t>(exercise) - 1;
        LineRecord record{.id = Id<LiftLine>(lift.variant.value()),
                          .line = lift,
                          .key = {},
                          .exercise = kit.library.exercises[at],
                          .variant = *kit.library.find(lift.variant),
                          .grip = kit.library.grips[at],
                          .standard = *kit.library.find(lift.standard),
                          .exposures = {}};
        record.exposures.push_back(std::move(exposure));
        kit.log.lines.push_back(std::move(record));
    }
    void rate(PlanKit::Lift lift, Joint joint, int rating, QDate date)
    {
        Exposure exposure;
        exposure.date = date;
        exposure.rating.discomfort[static_cast<std::size_t>(joint)] = rating;
        done(PlanKit::line(lift), lift, std::move(exposure));
    }
};

TEST(TemplateFit, IsTheTemplateWhereNothingStandsInItsWay)
{
    const FitCase c;
    const TemplateFit fit = c.fit();
    EXPECT_TRUE(fit.differences.empty());
    EXPECT_EQ(fit.block, blockOf(FitCase::shape(), Id<Athlete>(1), QStringLiteral("Spring"), kMonday).value());
}

TEST(TemplateFit, TakesAnotherWayForTheSameMuscleWhereTheGymLacksTheImplement)
{
    FitCase c;
    c.kit.variant(Row).implement = Implement::Cable;
    const TemplateFit fit = c.fit();
    ASSERT_EQ(fit.differences.size(), 1U);
    EXPECT_EQ(fit.differences[0].kind, FitKind::OtherLift);
    EXPECT_EQ(fit.differences[0].before->variant, Id<Variant>(Row));
    EXPECT_EQ(fit.differences[0].after->variant, Id<Variant>(Pull));
    EXPECT_TRUE(fit.differences[0].sentence.contains(QStringLiteral("Row"))) << qPrintable(fit.differences[0].sentence);
    for (const PlannedWeek& week : fit.block.weeks) {
        EXPECT_EQ(week.days[0].slotList[1].variant, Id<Variant>(Pull));
        EXPECT_EQ(week.days[0].slotList[1].sets, 4);
        EXPECT_EQ(week.days[0].slotList[1].superset, 1);
    }
    EXPECT_TRUE(validate(fit.block).empty());
}

TEST(TemplateFit, LeavesOutWhatNothingCanStandForAndEndsItsSuperset)
{
    FitCase c;
    c.kit.variant(Row).implement = Implement::Cable;
    c.kit.variant(Pull).hidden = true;
    const TemplateFit fit = c.fit();
    ASSERT_EQ(fit.differences.size(), 1U);
    EXPECT_EQ(fit.differences[0].kind, FitKind::LeftOut);
    ASSERT_EQ(fit.block.weeks[1].days[0].slotList.size(), 1U);
    EXPECT_EQ(fit.block.weeks[1].days[0].slotList[0].superset, 0);
}

TEST(TemplateFit, SparesAJointThatWasRatedHighAndNamesOneThatIsToBeWatched)
{
    for (const auto& [rating, kind] : {std::pair(6, FitKind::OtherLift), std::pair(4, FitKind::Reminder)}) {
        FitCase c;
        c.rate(Row, Joint::Elbow, rating, kToday.addDays(-4));
        const TemplateFit fit = c.fit();
        ASSERT_EQ(fit.differences.size(), 1U) << rating;
        EXPECT_EQ(fit.differences[0].kind, kind) << rating;
        EXPECT_TRUE(fit.differences[0].sentence.contains(QStringLiteral("elbow"), Qt::CaseInsensitive));
    }
    FitCase old;
    old.rate(Row, Joint::Elbow, 9, kToday.addDays(-7 * kComplaintWeeks));
    EXPECT_TRUE(old.fit().differences.empty());
}

TEST(TemplateFit, PrefersWhatTheLifterHasDone)
{
    FitCase c;
    c.kit.variant(Curl).implement = Implement::Cable;
    // Two more ways to train the biceps; the one later by name was done.
    for (const auto& [id, name] : {std::pair(7, "another"), std::pair(8, "best known")}) {
        Variant variant = c.kit.variant(Curl);
        variant.name = QString::fromLatin1(name);
        variant.implement = Implement::Dumbbells;
        c.kit.library.variants.push_back({Id<Variant>(id), {}, variant});
        c.kit.library.standards.push_back({Id<RepStandard>(id), {}, {Id<Variant>(id), {}, QStringLiteral("strict")}});
    }
    EXPECT_EQ(c.fit().differences[0].after->variant, Id<Variant>(7));
    const LiftLine known{Id<Athlete>(1), Id<Variant>(8), Id<Grip>(2), Id<RepStandard>(8)};
    c.done(known, Curl, {kToday.addDays(-200), {}, {}});
    EXPECT_EQ(c.fit().differences[0].after, known);
}

TEST(TemplateFit, NeverPlansByARepStandardOfSomebodyElse)
{
    FitCase c;
    c.kit.library.standards.push_back(
        {Id<RepStandard>(20), {}, {Id<Variant>(Curl), Id<Athlete>(2), QStringLiteral("agreed")}});
    BlockTemplate shape = FitCase::shape();
    for (PlannedWeek& week : shape.weeks) week.days[1].slotList[0].standard = Id<RepStandard>(20);
    const TemplateFit fit = c.fit(shape);
    ASSERT_EQ(fit.differences.size(), 1U);
    EXPECT_EQ(fit.differences[0].kind, FitKind::OtherStandard);
    EXPECT_EQ(fit.block.weeks[0].days[1].slotList[0], PlanKit::slot(Curl, 2));
}

TEST(TemplateFit, GoesToTheLiftersOwnDaysWhereThereAreEnoughOfThem)
{
    FitCase c;
    c.wishes.weekdays = {2, 5};
    const TemplateFit moved = c.fit();
    EXPECT_TRUE(moved.differences.empty());
    EXPECT_EQ(moved.block.weeks[0].days[0].date.dayOfWeek(), 2);
    EXPECT_EQ(moved.block.weeks[1].days[1].date.dayOfWeek(), 5);
    c.wishes.weekdays = {2};
    const TemplateFit kept = c.fit();
    ASSERT_EQ(kept.differences.size(), 1U);
    EXPECT_EQ(kept.differences[0].kind, FitKind::OtherDays);
    EXPECT_EQ(kept.block.weeks[0].days[0].date.dayOfWeek(), 1);
}

TEST(TemplateFit, KeepsClearOfDaysOffAndNamesLimitsThatTheBlockBreaks)
{
    FitCase c;
    c.wishes.daysOff = {{kMonday, kMonday, QStringLiteral("fair")}};
    c.kit.log.athlete.value.minutesPerDay = 5;
    const TemplateFit fit = c.fit();
    for (const PlannedWeek& week : fit.block.weeks)
        for (const PlannedDay& day : week.days) EXPECT_NE(day.date, kMonday);
    EXPECT_TRUE(std::ranges::any_of(fit.broken, [](const BrokenLimit& one) { return one.kind == LimitKind::LongDay; }));
}

TEST(GymOffers, AGymThatListsNothingSaysNothing)
{
    Variant cable{.exercise = Id<Exercise>(1)};
    cable.implement = Implement::Cable;
    EXPECT_TRUE(gymOffers(nullptr, cable));
    Gym gym;
    EXPECT_TRUE(gymOffers(&gym, cable));
    gym.dumbbells = {{QStringLiteral("rack"), FitCase::kg(2), FitCase::kg(2), FitCase::kg(40)}};
    EXPECT_FALSE(gymOffers(&gym, cable));
    gym.stacks = gym.dumbbells;
    EXPECT_TRUE(gymOffers(&gym, cable));
    Variant body{.exercise = Id<Exercise>(1)};
    body.implement = Implement::Bodyweight;
    EXPECT_TRUE(gymOffers(&gym, body));
    Variant bar{.exercise = Id<Exercise>(1)};
    bar.implement = Implement::StraightBar;
    EXPECT_FALSE(gymOffers(&gym, bar));
}

}  // namespace
}  // namespace steelyard
