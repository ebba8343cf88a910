#include "core/keying/rating_cells.h"

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

TEST(RatingCells, EveryCellButOneHoldsItsOwnScore)
{
    std::vector<RatingCell> cells(afterExercise().begin(), afterExercise().end());
    cells.insert(cells.end(), dayAfter().begin(), dayAfter().end());
    ExerciseRating rating;
    int score = 0;
    for (const RatingCell cell : cells) putScore(rating, cell, score++ % 11);
    score = 0;
    for (const RatingCell cell : cells) {
        const std::optional<int> expected = cell == RatingCell::GaveOut ? std::nullopt : std::optional(score % 11);
        EXPECT_EQ(scoreOf(rating, cell), expected);
        ++score;
    }
    EXPECT_EQ(rating.pump, 2);
    EXPECT_EQ(rating.discomfort[static_cast<std::size_t>(Joint::Elbow)], 4);
    EXPECT_EQ(rating.discomfort[static_cast<std::size_t>(Joint::Ankle)], 0);
    for (const RatingCell cell : cells) putScore(rating, cell, std::nullopt);
    EXPECT_TRUE(rating.none());
}

TEST(RatingCells, EveryJointHasALetterOfItsOwn)
{
    std::set<QChar> letters;
    for (const RatingCell cell : afterExercise())
        if (const auto joint = jointOf(cell)) letters.insert(letterOf(*joint));
    EXPECT_EQ(letters.size(), kJointCount);
    EXPECT_EQ(letterOf(Joint::LowerBack), u'b');
}

class Muscles : public testing::Test {
protected:
    Muscles()
    {
        for (const auto& [key, name] : {std::pair("calves", "Calves"),
                                        {"triceps", "Triceps"},
                                        {"forearms", "Forearms"},
                                        {"front_delts", "Front shoulder"},
                                        {"glutes", "Glúteos"}})
            library.muscles.push_back({Id<Muscle>(static_cast<std::int64_t>(library.muscles.size()) + 1),
                                       {},
                                       {QString::fromLatin1(key), QString::fromUtf8(name)}});
        exercise.shares = {{Id<Muscle>(1), 1.0}, {Id<Muscle>(3), 0.3}, {Id<Muscle>(4), 0.5}};
        choices = muscleChoices(library, &exercise);
    }
    [[nodiscard]] QString found(QStringView typed) const
    {
        const auto at = findMuscle(choices, typed);
        return at ? choices[*at].key : QString();
    }

    Library library;
    Exercise exercise{QStringLiteral("Press"), {}, false};
    std::vector<MuscleChoice> choices;
};

TEST_F(Muscles, TheTargetComesFirstThenTheHelpersThenTheRest)
{
    QStringList keys;
    for (const MuscleChoice& choice : choices) keys += choice.key;
    EXPECT_EQ(keys.mid(0, 3),
              (QStringList{QStringLiteral("target"), QStringLiteral("front_delts"), QStringLiteral("forearms")}));
    EXPECT_EQ(keys.size(), 6) << "each once";
}

TEST_F(Muscles, AreFoundByHowTheirNameBegins)
{
    EXPECT_EQ(found(u"t"), QStringLiteral("target"));
    EXPECT_EQ(found(u"tr"), QStringLiteral("triceps"));
    EXPECT_EQ(found(u"f"), QStringLiteral("front_delts")) << "a helper before the rest";
    EXPECT_EQ(found(u"fo"), QStringLiteral("forearms"));
    EXPECT_EQ(found(u"GLUTE"), QStringLiteral("glutes"));
    EXPECT_EQ(found(u"shou"), QStringLiteral("front_delts")) << "a later word";
    EXPECT_EQ(found(u"xyz"), QString());
    EXPECT_EQ(found(u""), QString());
}

}  // namespace
}  // namespace steelyard
