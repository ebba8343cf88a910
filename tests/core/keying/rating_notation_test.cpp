#include "core/keying/rating_notation.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const std::vector<Row<Muscle>> kRatedMuscles{
    {Id<Muscle>(1), {}, {QStringLiteral("front_delt"), QStringLiteral("Front shoulder")}},
    {Id<Muscle>(2), {}, {QStringLiteral("forearms"), QStringLiteral("Forearms")}}};

NotationProblem ratingProblem(const char16_t* line)
{
    const RatingReading reading = readRating(QStringView(line), kRatedMuscles);
    EXPECT_FALSE(reading) << qPrintable(QStringView(line).toString());
    return reading ? NotationProblem{} : reading.error();
}

TEST(RatingNotation, ReadsBackEveryRatingThatItWrites)
{
    ExerciseRating rating;
    rating.tension = 0;
    rating.burn = 10;
    rating.pump = 8;
    for (std::size_t joint = 0; joint < kJointCount; ++joint) rating.discomfort[joint] = static_cast<int>(joint) + 1;
    rating.nextSoreness = 4;
    rating.nextWeakness = 3;
    for (const QString& gaveOut : {QString(), QStringLiteral("target"), QStringLiteral("front_delt")}) {
        rating.gaveOut = gaveOut;
        EXPECT_EQ(readRating(writeRating(rating), kRatedMuscles).value(), rating);
    }
    EXPECT_EQ(readRating(u"", kRatedMuscles).value(), ExerciseRating());
    EXPECT_EQ(writeRating({}), QString());
}

TEST(RatingNotation, TakesWordsCutShortInAnyOrderAndMusclesByName)
{
    const ExerciseRating rating =
        readRating(u" lower b 2 ,, TENS7, gave out  front shoulder,weak 1,", kRatedMuscles).value();
    EXPECT_EQ(rating.tension, 7);
    EXPECT_EQ(rating.discomfort[static_cast<std::size_t>(Joint::LowerBack)], 2);
    EXPECT_EQ(rating.gaveOut, QStringLiteral("front_delt"));
    EXPECT_EQ(rating.nextWeakness, 1);
    EXPECT_EQ(writeRating(rating), QStringLiteral("tension 7, lower back 2, weakness 1, gave out front_delt"));
}

TEST(RatingNotation, SaysWhereALineCannotBeRead)
{
    EXPECT_EQ(ratingProblem(u"pump 8, glow 3").at, 8);
    EXPECT_EQ(ratingProblem(u"pump 11").at, 5);
    EXPECT_EQ(ratingProblem(u"pump").at, 4);
    EXPECT_EQ(ratingProblem(u"pump 8, pump 7").at, 13);
    EXPECT_EQ(ratingProblem(u"gave out spleen").at, 8);
    EXPECT_EQ(ratingProblem(u"gave out target, gave out target").at, 17);
    EXPECT_TRUE(ratingProblem(u"w 3").text.contains(QStringLiteral("wrist, weakness")));  // either
    EXPECT_EQ(ratingProblem(u"7").at, 0);
    EXPECT_EQ(ratingProblem(u"pump 99999999999999999999").at, 5);
}

}  // namespace
}  // namespace steelyard
