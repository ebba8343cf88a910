#include "ui/pages/block/done_words.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

Adherence done(int sessions, int expectedSessions, int sets, int expectedSets, int onTarget)
{
    Adherence sum;
    sum.doneSessions = sessions;
    sum.expectedSessions = expectedSessions;
    sum.doneSets = sets;
    sum.expectedSets = expectedSets;
    sum.targetSets = onTarget;
    return sum;
}

TEST(DoneWords, SayWhatWasDoneOfTheWeekAndOfTheBlock)
{
    EXPECT_EQ(besideWords(done(2, 3, 20, 36, 15), done(8, 9, 90, 100, 45)),
              QStringLiteral(
                  "Done of this week's plan: 2 of 3 session(s), 20 of 36 set(s), 15 of them on target. Of the block "
                  "so far: 89 % of the sessions, 90 % of the sets, 50 % of those on target.")
                  .replace(QStringLiteral(" %"), QStringLiteral("\u00a0%")));
}

TEST(DoneWords, LeaveOutWhatIsAPartOfNothing)
{
    EXPECT_EQ(besideWords({}, {}), QString());
    EXPECT_EQ(sessionsDoneWords({}), QString());
    EXPECT_EQ(setsDoneWords({}), QString());
    EXPECT_EQ(besideWords(done(0, 3, 0, 36, 0), {}),
              QStringLiteral("Done of this week's plan: 0 of 3 session(s), 0 of 36 set(s)."));
}

}  // namespace
}  // namespace steelyard
