#include "core/exchange/exercise_likeness.h"

#include "core/exchange/new_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QTemporaryDir>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

// The library that ships.
const Library& starterLibrary()
{
    static const Library library = [] {
        const QTemporaryDir folder;
        const FixedClock clock(QDate(2026, 3, 2));
        const auto book = must(newBook(folder.filePath(QStringLiteral("club.steelyard")), clock));
        return must(book->library().read());
    }();
    return library;
}

struct LikeName {
    const char* said;
    const char* exercise;
    bool clear;
};

class LikeNames : public testing::TestWithParam<LikeName> {};

TEST_P(LikeNames, AreFoundInTheLibrary)
{
    const auto names = namesInFile(starterLibrary(), {{{QString::fromUtf8(GetParam().said), {}}, 3}});
    ASSERT_EQ(names.size(), 1U);
    EXPECT_FALSE(names[0].known);
    ASSERT_FALSE(names[0].suggestions.empty());
    if (GetParam().clear) {
        EXPECT_EQ(names[0].suggestions[0].name.exercise.toStdString(), GetParam().exercise);
    }
    EXPECT_EQ(names[0].clear, GetParam().clear)
        << names[0].suggestions[0].name.exercise.toStdString() << ' ' << names[0].suggestions[0].likeness;
}

INSTANTIATE_TEST_SUITE_P(
    ExerciseLikeness, LikeNames,
    testing::Values(LikeName{"Bench pres", "Bench press", true}, LikeName{"Bankdrücken", "Bench press", true},
                    LikeName{"Développé couché", "Bench press", true}, LikeName{"Press de banca", "Bench press", true},
                    LikeName{"Kniebeuge", "Back squat", true},
                    LikeName{"Romanian Deadlifts", "Romanian deadlift", true},
                    LikeName{"Barbell curl", "Arm curl", true}, LikeName{"Latzug", "Pulldown", true},
                    LikeName{"lateral raises", "Lateral raise", true},
                    LikeName{"Leg extension", "Knee extension", true}, LikeName{"Klimmzüge", "Pull-up", true},
                    LikeName{"Soulevé de terre", "Deadlift", true}, LikeName{"curl", "", false},
                    LikeName{"extension", "", false}));

TEST(ExerciseLikeness, FindsTheVariantByItsImplement)
{
    const auto found = likeExercises(starterLibrary(), {QStringLiteral("Curl Kurzhantel sitzend"), {}}, 3);
    ASSERT_FALSE(found.empty());
    const auto seated =
        likeExercises(starterLibrary(), {QStringLiteral("Arm curl"), QStringLiteral("dumbells seated")}, 1);
    EXPECT_EQ(seated.at(0).name, (ExerciseName{QStringLiteral("Arm curl"), QStringLiteral("dumbbells, seated")}));
}

TEST(ExerciseLikeness, TakesTheDefaultWhereNoVariantWasSaid)
{
    EXPECT_EQ(likeExercises(starterLibrary(), {QStringLiteral("Bench press"), {}}, 1).at(0).name,
              (ExerciseName{QStringLiteral("Bench press"), {}}));
}

TEST(ExerciseLikeness, HasNothingForWordsThatNoExerciseHas)
{
    EXPECT_TRUE(likeExercises(starterLibrary(), {QStringLiteral("Zzyzx"), {}}).empty());
}

TEST(NamesInFile, PutsTheUnknownOnesFirstAndMostRowsBeforeFewer)
{
    const auto names = namesInFile(starterLibrary(), {{{QStringLiteral("arm CURL"), {}}, 90},
                                                      {{QStringLiteral("Aaa"), {}}, 2},
                                                      {{QStringLiteral("Arm curl"), QStringLiteral("on one leg")}, 5}});
    ASSERT_EQ(names.size(), 3U);
    EXPECT_EQ(names[0].rows, 5);
    EXPECT_EQ(names[0].suggestions.at(0).name.exercise, QStringLiteral("Arm curl"));
    EXPECT_EQ(names[1].rows, 2);
    EXPECT_TRUE(names[2].known);
}

TEST(NamesInFile, NeverTakeALifterForAnotherByLikeness)
{
    const QStringList roster{QStringLiteral("Zoë Pivot"), QStringLiteral("Ada Fulcrum")};
    const auto names = athletesInFile(
        roster,
        {{QStringLiteral("Ada Fulcrom"), 3}, {QStringLiteral("zoe pivot"), 2}, {QStringLiteral("Ada Fulcrum"), 1}});
    ASSERT_EQ(names.size(), 3U);
    EXPECT_FALSE(names[0].clear);
    EXPECT_EQ(names[0].suggestions.at(0).name.exercise, QStringLiteral("Ada Fulcrum"));
    EXPECT_TRUE(names[1].clear) << "case and accents alone differ";
    EXPECT_TRUE(names[2].known);
}

}  // namespace
}  // namespace steelyard
