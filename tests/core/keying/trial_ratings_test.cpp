#include "core/keying/trial_ratings.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

KeyingSheet sheetWithATrial()
{
    const LiftLine lift{Id<Athlete>(1), Id<Variant>(1), Id<Grip>(1), Id<RepStandard>(1)};
    KeyingExercise exercise{lift, {}, {}};
    exercise.words.trial = SheetTrial{};
    exercise.words.trial->asked = {QStringLiteral("tension"), QStringLiteral("target_first"),
                                   QStringLiteral("next_soreness"), QStringLiteral("of_a_newer_program")};
    exercise.rows = {{1, std::nullopt, RecordedSet{Id<SetEntry>(1), lift, {}}}};
    KeyingSheet sheet{Id<Athlete>(1), QDate(2027, 3, 8), MassUnit::kg, SetKind::Work, {exercise}};
    return sheet;
}

TEST(TrialRatings, NamesTheOutcomesThatNobodyRated)
{
    KeyingSheet sheet = sheetWithATrial();
    const std::vector wanted{MissingRatings{0, {RatingCell::Tension, RatingCell::GaveOut, RatingCell::Elbow}}};
    EXPECT_EQ(missingTrialRatings(sheet), wanted);
    sheet.exercises[0].rating.tension = 0;  // a zero is an answer
    sheet.exercises[0].rating.gaveOut = QStringLiteral("target");
    sheet.exercises[0].rating.discomfort[static_cast<std::size_t>(Joint::Knee)] = 0;
    EXPECT_TRUE(missingTrialRatings(sheet).empty());
}

TEST(TrialRatings, SaysWhatIsAskedRightAfterTheExercise)
{
    EXPECT_EQ(askedAfterExercise(*sheetWithATrial().exercises[0].words.trial),
              (std::vector{QStringLiteral("tension"), QStringLiteral("target_first"), QStringLiteral("discomfort")}));
}

TEST(TrialRatings, AsksNothingWithoutASetOrATrial)
{
    KeyingSheet sheet = sheetWithATrial();
    sheet.exercises[0].rows[0].stored.reset();
    EXPECT_TRUE(missingTrialRatings(sheet).empty());
    sheet = sheetWithATrial();
    sheet.exercises[0].words.trial.reset();
    EXPECT_TRUE(missingTrialRatings(sheet).empty());
}

TEST(TrialRatings, AsksALiftThatStandsTwiceAfterItsLastExercise)
{
    KeyingSheet sheet = sheetWithATrial();
    sheet.exercises.push_back(sheet.exercises[0]);
    const auto missing = missingTrialRatings(sheet);
    ASSERT_EQ(missing.size(), 1U);
    EXPECT_EQ(missing[0].exercise, 1U);
}

}  // namespace
}  // namespace steelyard
