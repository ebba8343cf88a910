#include "core/keying/rep_counter.h"

#include <gtest/gtest.h>

#include <random>

namespace steelyard {
namespace {

using namespace std::chrono_literals;

TEST(RepCounter, CountsMarksAndFailsAsTheKeysSay)
{
    RepCounter counter;
    EXPECT_TRUE(counter.empty());
    EXPECT_FALSE(counter.mark(Mark::Swing));
    EXPECT_TRUE(counter.repetition(1s));
    EXPECT_TRUE(counter.repetition(4s));
    EXPECT_TRUE(counter.mark(Mark::Swing));
    EXPECT_TRUE(counter.mark(Mark::ShortTop));
    EXPECT_TRUE(counter.repetition(7s));
    EXPECT_TRUE(counter.partWay(11s));
    EXPECT_FALSE(counter.repetition(12s));
    EXPECT_FALSE(counter.mark(Mark::Lean));
    EXPECT_FALSE(counter.loweringBegins(13s));
    EXPECT_EQ(counter.done(), 3);
    EXPECT_EQ(counter.marked(), 1);
    EXPECT_TRUE(counter.failed());
    ASSERT_EQ(counter.repetitions().size(), 4U);
    EXPECT_EQ(counter.repetitions()[1].marks.toString(), "short_top;swing");
    EXPECT_DOUBLE_EQ(counter.rhythm().value(), 4);
}

TEST(RepCounter, AMarkPressedTwiceIsNoMark)
{
    RepCounter counter;
    counter.repetition(1s);
    counter.mark(Mark::Dropped);
    counter.mark(Mark::Dropped);
    EXPECT_EQ(counter.marked(), 0);
}

TEST(RepCounter, ALoweringBelongsToTheRepetitionCountedNext)
{
    RepCounter counter;
    counter.loweringBegins(1000ms);
    EXPECT_TRUE(counter.isLowering());
    counter.loweringEnds(3504ms);
    counter.repetition(4500ms);
    counter.loweringBegins(5000ms);
    counter.loweringEnds(7200ms);
    EXPECT_EQ(counter.lastLowering(), Decimal::parse(u"2.20"));
    counter.repetition(8100ms);
    counter.repetition(11'000ms);
    const auto& list = counter.repetitions();
    EXPECT_EQ(list[0].loweringSeconds, Decimal::parse(u"2.50"));
    EXPECT_FALSE(list[0].liftingSeconds);  // nobody knows when it began
    EXPECT_EQ(list[1].loweringSeconds, Decimal::parse(u"2.20"));
    EXPECT_EQ(list[1].liftingSeconds, Decimal::parse(u"1.40"));  // 8.1 - 4.5 - 2.2
    EXPECT_FALSE(list[2].loweringSeconds);
    EXPECT_FALSE(list[2].liftingSeconds);
}

TEST(RepCounter, ACountWhileTheKeyIsHeldEndsTheLowering)
{
    RepCounter counter;
    counter.loweringBegins(1s);
    counter.repetition(3s);
    EXPECT_FALSE(counter.isLowering());
    EXPECT_EQ(counter.repetitions()[0].loweringSeconds, Decimal::parse(u"2.00"));
    EXPECT_FALSE(counter.loweringEnds(4s));
}

TEST(RepCounter, AClockThatRunsBackwardsOrAForgottenKeyMeasuresNothing)
{
    RepCounter counter;
    counter.loweringBegins(5s);
    EXPECT_FALSE(counter.loweringEnds(4s));
    counter.loweringBegins(6s);
    EXPECT_FALSE(counter.loweringEnds(126s));
    counter.repetition(130s);
    EXPECT_FALSE(counter.repetitions()[0].loweringSeconds);
    counter.repetition(100s);
    EXPECT_FALSE(counter.rhythm());
}

TEST(RepCounter, TakesBackALoweringBeforeItsRepetitionAndAFailureFirst)
{
    RepCounter counter;
    counter.repetition(1s);
    const RepCounter one = counter;
    counter.loweringBegins(2s);
    EXPECT_TRUE(counter.takeBack());
    EXPECT_EQ(counter, one);
    counter.partWay(4s);
    EXPECT_TRUE(counter.takeBack());
    EXPECT_EQ(counter, one);
    EXPECT_TRUE(counter.takeBack());
    EXPECT_TRUE(counter.empty());
    EXPECT_FALSE(counter.takeBack());
}

// Whatever is pressed in whatever order, what can be stored is sound, and every count can be taken back.
TEST(RepCounter, AnyKeysLeaveASetThatCanBeStored)
{
    std::mt19937 engine(7);
    for (int round = 0; round < 300; ++round) {
        RepCounter counter;
        RepCounter::Time now = 0ms;
        int counted = 0;
        for (int press = 0; press < 400; ++press) {
            now += RepCounter::Time(static_cast<int>(engine() % 4000) - (press % 50 == 0 ? 3000 : 0));
            const int before = counter.done();
            const bool failedBefore = counter.failed();
            switch (engine() % 8) {
            case 0:
                counter.loweringBegins(now);
                break;
            case 1:
                counter.loweringEnds(now);
                break;
            case 2:
                counter.mark(EnumText<Mark>::table[engine() % kMarkCount].value);
                break;
            case 3:
                if (engine() % 40 == 0) counter.partWay(now);
                break;
            case 4:
                if (engine() % 3 == 0) counter.takeBack();
                break;
            default:
                EXPECT_EQ(counter.repetition(now), !failedBefore && before < kMostRepetitions - 1);
            }
            EXPECT_LE(std::abs(counter.done() - before), 1);
            EXPECT_LE(counter.marked(), counter.done());
            counted = std::max(counted, counter.done());
        }
        const Problems problems = validate(counter.repetitions());
        ASSERT_TRUE(problems.empty()) << qPrintable(problems.front().field);
        const SetEntry set = withRepetitions(SetEntry{}, counter.repetitions());
        EXPECT_TRUE(validate(set).empty());
        EXPECT_EQ(set.reps, counter.done());
        EXPECT_EQ(set.failed, counter.failed());
        EXPECT_EQ(set.off.value_or(0), counter.marked());
        EXPECT_GT(counted, 20);
        while (!counter.empty()) ASSERT_TRUE(counter.takeBack());
    }
}

}  // namespace
}  // namespace steelyard
