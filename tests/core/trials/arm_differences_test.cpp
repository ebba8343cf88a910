#include "core/trials/arm_differences.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Variant variantOf(std::int64_t exercise, const QString& name, Implement implement, const QString& position)
{
    Variant variant{Id<Exercise>(exercise), name, implement, position, QStringLiteral("elbows fixed")};
    return variant;
}

Library madeLibrary()
{
    Library library;
    library.exercises = {{Id<Exercise>(1), {}, {QStringLiteral("Arm curl"), {}, false}},
                         {Id<Exercise>(2), {}, {QStringLiteral("Row"), {}, false}}};
    library.variants = {
        {Id<Variant>(1),
         {},
         variantOf(1, QStringLiteral("bar, upright"), Implement::StraightBar, QStringLiteral("upright"))},
        {Id<Variant>(2),
         {},
         variantOf(1, QStringLiteral("dumbbells, upright"), Implement::Dumbbells, QStringLiteral("Upright"))},
        {Id<Variant>(3),
         {},
         variantOf(1, QStringLiteral("bar, seated"), Implement::StraightBar, QStringLiteral("seated"))},
        {Id<Variant>(4), {}, variantOf(2, QStringLiteral("cable"), Implement::Cable, QStringLiteral("seated"))}};
    library.grips = {{Id<Grip>(1), {}, {QStringLiteral("supinated"), HandOrientation::Supinated, {}, {}}},
                     {Id<Grip>(2), {}, {QStringLiteral("neutral"), HandOrientation::Neutral, {}, {}}}};
    for (std::int64_t id = 1; id <= 4; ++id)
        library.standards.push_back({Id<RepStandard>(id), {}, {Id<Variant>(id), {}, QStringLiteral("strict")}});
    return library;
}

TrialArm arm(std::int64_t variant, std::int64_t grip, RepBand band = {8, 12})
{
    return {Id<Variant>(variant), Id<Grip>(grip), Id<RepStandard>(variant), band};
}

Trial trialOf(TrialFactor factor, std::vector<TrialArm> arms)
{
    Trial trial{.athlete = Id<Athlete>(1)};
    trial.factor = factor;
    trial.arms = std::move(arms);
    return trial;
}

TEST(ArmDifferences, NameWhatTellsTwoArmsApart)
{
    const Library library = madeLibrary();
    using Found = std::vector<ArmDifference>;
    EXPECT_EQ(armDifferences(arm(1, 1), arm(1, 2), library), Found{ArmDifference::Grip});
    EXPECT_EQ(armDifferences(arm(1, 1), arm(2, 1), library), Found{ArmDifference::Implement});
    EXPECT_EQ(armDifferences(arm(1, 1), arm(3, 1), library), Found{ArmDifference::Position});
    EXPECT_EQ(armDifferences(arm(1, 1), arm(1, 1, {5, 8}), library), Found{ArmDifference::RepBand});
    TrialArm slow = arm(1, 1);
    slow.loweringSeconds = Decimal(4);
    EXPECT_EQ(armDifferences(arm(1, 1), slow, library), Found{ArmDifference::Lowering});
    EXPECT_TRUE(armDifferences(arm(1, 1), arm(1, 1), library).empty());
}

TEST(ArmDifferences, FairArmsAreNotRefused)
{
    const Library library = madeLibrary();
    EXPECT_EQ(refusalOf(trialOf(TrialFactor::Grip, {arm(1, 1), arm(1, 2)}), library), QString());
    EXPECT_EQ(refusalOf(trialOf(TrialFactor::Implement, {arm(1, 1), arm(2, 1)}), library), QString());
    EXPECT_EQ(refusalOf(trialOf(TrialFactor::Variant, {arm(1, 1), arm(3, 1)}), library), QString());
}

TEST(ArmDifferences, ArmsThatDifferInTwoThingsNeedAReason)
{
    const Library library = madeLibrary();
    Trial trial = trialOf(TrialFactor::Grip, {arm(1, 1), arm(2, 2)});
    EXPECT_TRUE(refusalOf(trial, library).contains(u"implement")) << refusalOf(trial, library).toStdString();
    trial.whyMoreThanOne = QStringLiteral("This bar has only one grip.");
    EXPECT_EQ(refusalOf(trial, library), QString());
}

TEST(ArmDifferences, ArmsAlikeOrApartInSomethingElseAreRefusedEvenWithAReason)
{
    const Library library = madeLibrary();
    Trial same = trialOf(TrialFactor::Grip, {arm(1, 1), arm(1, 1)});
    same.whyMoreThanOne = QStringLiteral("because");
    EXPECT_TRUE(refusalOf(same, library).contains(u"the same"));
    Trial other = trialOf(TrialFactor::Lowering, {arm(1, 1), arm(1, 2)});
    other.whyMoreThanOne = QStringLiteral("because");
    EXPECT_TRUE(refusalOf(other, library).contains(u"lowering"));
    Trial exercises = trialOf(TrialFactor::Variant, {arm(1, 1), arm(4, 1)});
    exercises.whyMoreThanOne = QStringLiteral("because");
    EXPECT_TRUE(refusalOf(exercises, library).contains(u"different exercises"));
}

TEST(ArmDifferences, EveryPairIsLookedAt)
{
    const Library library = madeLibrary();
    const Trial trial = trialOf(TrialFactor::RepBand, {arm(1, 1, {5, 8}), arm(1, 1, {8, 12}), arm(1, 1, {5, 8})});
    EXPECT_TRUE(refusalOf(trial, library).contains(u"A and C"));
}

TEST(ArmDifferences, ArmsAreCalledByWhatTellsThemApart)
{
    const Library library = madeLibrary();
    const auto grips = armNames(trialOf(TrialFactor::Grip, {arm(1, 1), arm(1, 2)}), library);
    EXPECT_EQ(grips, (std::vector<QString>{QStringLiteral("supinated"), QStringLiteral("neutral")}));
    const auto twofold = armNames(trialOf(TrialFactor::Grip, {arm(1, 1), arm(1, 2, {6, 9})}), library);
    EXPECT_EQ(twofold, grips);  // what the trial is about is enough
    const auto bands = armNames(trialOf(TrialFactor::RepBand, {arm(1, 1, {5, 8}), arm(1, 1)}), library);
    EXPECT_TRUE(bands[0].contains(u"5 to 8"));
    const auto same = armNames(trialOf(TrialFactor::Grip, {arm(1, 1), arm(1, 1)}), library);
    EXPECT_EQ(same, (std::vector<QString>{QStringLiteral("A"), QStringLiteral("B")}));
}

}  // namespace
}  // namespace steelyard
