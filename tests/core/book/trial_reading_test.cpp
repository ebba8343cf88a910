// The trials of the sample club, read as a whole: what was put into their logs comes out.
#include "core/book/trial_reading.h"

#include "core/book/verify.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

const QDate kClubDay(2027, 3, 1);

class TrialReading : public ::testing::Test {
protected:
    static void SetUpTestSuite()
    {
        s_dir = std::make_unique<QTemporaryDir>();
        s_book = must(newBook(s_dir->filePath(QStringLiteral("club.steelyard")), s_clock));
        must(fillSampleClub(*s_book, {.athletes = 12, .years = 1, .lastDay = kClubDay, .exercisesPerSession = 4}, {}));
    }
    static void TearDownTestSuite()
    {
        s_book.reset();
        s_dir.reset();
    }
    // Whose trial has such an ending; absent: runs.
    [[nodiscard]] static std::optional<LifterTrials> withTrial(std::optional<TrialEnd> end)
    {
        for (const Row<Athlete>& row : must(s_book->athletes().all())) {
            auto trials = must(readTrials(s_book->database(), row.id, kClubDay));
            if (trials.log.trials.size() != 1) continue;
            const auto& ending = trials.log.trials[0].value.ending;
            if (end ? ending && ending->kind == *end : !ending) return trials;
        }
        return std::nullopt;
    }

    static inline const FixedClock s_clock{kClubDay};
    static inline std::unique_ptr<QTemporaryDir> s_dir;
    static inline std::unique_ptr<Book> s_book;
};

TEST_F(TrialReading, PrefersTheArmThatWasFeltMoreInTheTrialThatIsOver)
{
    const auto trials = withTrial(TrialEnd::Concluded);
    ASSERT_TRUE(trials);
    const Trial& trial = trials->log.trials[0].value;
    const TrialAnalysis analysis = trials->analyse(trial);
    EXPECT_EQ(analysis.verdict.word, TrialWord::Prefer) << qPrintable(analysis.verdict.forCoach);
    EXPECT_EQ(analysis.verdict.arm, 1U);
    EXPECT_EQ(trial.ending->choice, 1U);
}

TEST_F(TrialReading, SeesThatTheOtherArmWasDoneInTheTrialThatRuns)
{
    const auto trials = withTrial(std::nullopt);
    ASSERT_TRUE(trials);
    const TrialAnalysis analysis = trials->analyse(trials->log.trials[0].value);
    EXPECT_FALSE(analysis.standing.finished);
    EXPECT_TRUE(analysis.standing.next);
    EXPECT_GT(analysis.standing.arms[0].done + analysis.standing.arms[1].done, 2);
    EXPECT_GT(analysis.standing.sessionsToCome, 2);
    EXPECT_TRUE(std::ranges::any_of(analysis.record.deviations, [](const NotedDeviation& deviation) {
        return deviation.kind == TrialDeviation::OtherArm;
    })) << "from the log alone: the coach said nothing";
}

TEST_F(TrialReading, PutsTheArmOutThatHurt)
{
    const auto trials = withTrial(TrialEnd::Discomfort);
    ASSERT_TRUE(trials);
    const TrialAnalysis analysis = trials->analyse(trials->log.trials[0].value);
    ASSERT_EQ(analysis.standing.out.size(), 1U);
    EXPECT_EQ(analysis.standing.out[0].arm, 1U);
    EXPECT_EQ(analysis.standing.out[0].joint, Joint::Wrist);
    EXPECT_EQ(analysis.verdict.word, TrialWord::Discomfort);
}

TEST_F(TrialReading, LeavesASoundBook)
{
    EXPECT_EQ(must(verifyBook(s_book->database(), {})).findings, QStringList());
}

}  // namespace
}  // namespace steelyard
