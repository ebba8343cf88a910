#include "core/exchange/repetition_match.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Exposure sessionOf(std::initializer_list<int> numbers)
{
    Exposure session{QDate(2026, 3, 2), {}, {}};
    for (const int number : numbers) {
        SetEntry set;
        set.number = number;
        set.reps = 2;
        session.sets.push_back({Id<SetEntry>(100 + number), number, set});
    }
    return session;
}

ReadRepetitions readSet(RepetitionPlace place = {}, std::size_t count = 2)
{
    ReadRepetitions one;
    one.place = std::move(place);
    for (std::size_t i = 0; i < count; ++i) one.repetitions.push_back({.number = static_cast<int>(i) + 1});
    return one;
}

TEST(RepetitionMatch, ASingleSetGoesToTheChosenOneAndSeveralGoInOrder)
{
    const Exposure session = sessionOf({4, 5, 6});
    const RepetitionTarget target{session, Id<SetEntry>(105), QStringLiteral("Ada Beam"), QStringLiteral("Arm curl")};
    EXPECT_EQ(matchRepetitions({readSet()}, target).at(0).set, Id<SetEntry>(105));
    const auto several = matchRepetitions({readSet(), readSet(), readSet(), readSet()}, target);
    EXPECT_EQ(several.at(0).set, Id<SetEntry>(104));
    EXPECT_EQ(several.at(2).set, Id<SetEntry>(106));
    EXPECT_FALSE(several.at(3).set);
    EXPECT_FALSE(several.at(3).why.isEmpty());
}

TEST(RepetitionMatch, NumbersAreKeptToAndNoSetIsGivenTwice)
{
    const Exposure session = sessionOf({4, 5});
    const RepetitionTarget target{session, Id<SetEntry>(104), {}, {}};
    const auto matches = matchRepetitions({readSet({.set = 5}), readSet({.set = 5}), readSet({.set = 7})}, target);
    EXPECT_EQ(matches.at(0).set, Id<SetEntry>(105));
    EXPECT_EQ(matches.at(0).setNumber, 5);
    EXPECT_FALSE(matches.at(1).set);
    EXPECT_FALSE(matches.at(2).set);
}

TEST(RepetitionMatch, AnotherDayLifterOrLiftGoesNowhere)
{
    const Exposure session = sessionOf({1});
    const RepetitionTarget target{session, Id<SetEntry>(101), QStringLiteral("Żaneta Beam"),
                                  QStringLiteral("Arm curl")};
    EXPECT_FALSE(matchRepetitions({readSet({.date = QDate(2026, 3, 3)})}, target).at(0).set);
    EXPECT_FALSE(matchRepetitions({readSet({.athlete = QStringLiteral("Basil")})}, target).at(0).set);
    EXPECT_FALSE(matchRepetitions({readSet({.exercise = QStringLiteral("Squat")})}, target).at(0).set);
    EXPECT_TRUE(
        matchRepetitions({readSet({QDate(2026, 3, 2), QStringLiteral("zaneta beam"), QStringLiteral("arm Curl"), 1})},
                         target)
            .at(0)
            .set);
    ReadRepetitions broken = readSet();
    broken.sound = false;
    EXPECT_FALSE(matchRepetitions({broken}, target).at(0).set);
}

TEST(RepetitionMatch, SaysWhenFileAndSetCountDifferently)
{
    const Exposure session = sessionOf({1});
    const RepetitionTarget target{session, Id<SetEntry>(101), {}, {}};
    const auto match = matchRepetitions({readSet({}, 3)}, target).at(0);
    EXPECT_TRUE(match.set);
    EXPECT_TRUE(match.why.contains(u'3'));
}

}  // namespace
}  // namespace steelyard
