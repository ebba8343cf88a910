// Trials in the book: every field comes back, what a change leaves out is gone, and what a book can't have is found.
#include "core/storage/trial_repository.h"

#include "core/book/verify.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/statement.h"
#include "tests/support/full_book.h"
#include "tests/support/trial_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TrialBook;

Id<Trial> stored(TrialBook& at, const Trial& trial)
{
    auto tx = must(Transaction::begin(at.book->database()));
    const auto id = must(at.book->trials().insert(tx, trial));
    must(tx.commit());
    return id;
}

Trial fullTrial(const TrialBook& at)
{
    Trial trial = at.trial();
    trial.factor = TrialFactor::Lowering;
    trial.whyMoreThanOne = QStringLiteral("the neutral bar is shorter");
    trial.arms[1].loweringSeconds = Decimal::parse(u"3.50");
    trial.arms[1].runIn = 2;
    trial.outcomes.push_back({QStringLiteral("of_a_newer_program"), 0.1 + 0.2});
    trial.limit = {6, 3};
    trial.sets = 5;
    trial.plannedRir = Decimal::parse(u"1.50");
    trial.daysBetween = 4;
    trial.seed = ~std::uint64_t{0};
    trial.days[0].armDone = 1;
    trial.days[1].missed = true;
    trial.days[2].note = QStringLiteral("'); DROP TABLE trial; --");
    trial.looks = {{trial.days[1].date, 1}, {trial.days[2].date, 2}};
    trial.ending = TrialEnding{trial.days[3].date, TrialEnd::Discomfort, QStringLiteral("the wrist"), 0};
    return trial;
}

TEST(TrialRepository, GivesBackEveryField)
{
    TrialBook at;
    const Trial trial = fullTrial(at);
    const auto id = stored(at, trial);
    const auto rows = must(at.book->trials().of(at.book.athlete()));
    ASSERT_EQ(rows.size(), 1U);
    EXPECT_EQ(rows[0].id, id);
    EXPECT_EQ(rows[0].value, trial);
    EXPECT_EQ(must(verifyBook(at.book->database(), {})).findings, QStringList());
}

TEST(TrialRepository, KeepsNothingOfWhatAChangeLeftOut)
{
    TrialBook at;
    const auto id = stored(at, fullTrial(at));
    Trial fewer = at.trial();
    fewer.days.resize(2);
    fewer.outcomes.resize(1);
    auto tx = must(Transaction::begin(at.book->database()));
    must(at.book->trials().replace(tx, id, fewer));
    EXPECT_EQ(must(at.book->trials().of(at.book.athlete())).front().value, fewer);
    EXPECT_EQ(tx.changes().athletes.count(at.book.athlete()), 1U);
    must(at.book->trials().remove(tx, id, at.book.athlete()));
    EXPECT_TRUE(must(at.book->trials().of(at.book.athlete())).empty());
    for (const char* table : {"trial", "trial_arm", "trial_outcome", "trial_day", "trial_look"})
        EXPECT_EQ(must(at.book->database().integer(std::string("SELECT count(*) FROM ") + table)), 0) << table;
}

TEST(TrialRepository, RefusesATrialThatIsNotSoundAndOneThatIsGone)
{
    TrialBook at;
    Trial bad = at.trial();
    bad.arms.pop_back();
    auto tx = must(Transaction::begin(at.book->database()));
    const auto refused = at.book->trials().insert(tx, bad);
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::Invalid);
    const auto gone = at.book->trials().replace(tx, Id<Trial>(77), at.trial());
    ASSERT_FALSE(gone);
    EXPECT_EQ(gone.error().code, ErrorCode::NotFound);
}

TEST(TrialRepository, HoldsOnToTheVariantsGripsAndStandardsOfItsArms)
{
    TrialBook at;
    static_cast<void>(stored(at, at.trial()));
    for (const char* sql :
         {"DELETE FROM grip WHERE id = (SELECT grip_id FROM trial_arm WHERE ordinal = 2)",
          "DELETE FROM rep_standard WHERE id = (SELECT standard_id FROM trial_arm WHERE ordinal = 2)"})
        EXPECT_FALSE(at.book->database().execute(sql)) << sql;
}

TEST(TrialRepository, LosesATrialWithItsAthlete)
{
    TrialBook at;
    static_cast<void>(stored(at, fullTrial(at)));
    must(at.book->database().execute("DELETE FROM athlete"));
    for (const char* table : {"trial", "trial_arm", "trial_outcome", "trial_day", "trial_look"})
        EXPECT_EQ(must(at.book->database().integer(std::string("SELECT count(*) FROM ") + table)), 0) << table;
}

TEST(TrialRepository, ShowsTheRecordOfAnEarlierDayAsItStoodThen)
{
    TrialBook at;
    const Trial trial = fullTrial(at);
    static_cast<void>(stored(at, trial));
    const auto library = must(at.book->library().read());
    const auto whole = must(readAthleteLog(at.book->database(), library, at.book.athlete()));
    ASSERT_EQ(whole.trials.size(), 1U);
    EXPECT_EQ(whole.trials[0].value, trial);
    const auto earlier =
        must(readAthleteLog(at.book->database(), library, at.book.athlete(), trial.days[1].date)).trials;
    ASSERT_EQ(earlier.size(), 1U);
    EXPECT_FALSE(earlier[0].value.ending);
    EXPECT_EQ(earlier[0].value.looks.size(), 1U);
    EXPECT_TRUE(earlier[0].value.days[1].missed);
    EXPECT_EQ(earlier[0].value.days[2].note, QString());
    const QDate before = trial.designedOn.addDays(-1);
    EXPECT_TRUE(must(readAthleteLog(at.book->database(), library, at.book.athlete(), before)).trials.empty());
}

struct Damage {
    const char* sql;
    const char* finding;
};

TEST(TrialRepository, LetsACheckOfTheBookFindWhatIsWrong)
{
    for (const Damage& damage :
         {Damage{"UPDATE trial SET factor = 'weather'", "a choice or a number"},
          Damage{"UPDATE trial SET planned_rir = 'two'", "a choice or a number"},
          Damage{"UPDATE trial_arm SET lowering_s = 'slow'", "a choice or a number"},
          Damage{"UPDATE trial_day SET date = '2026-02-31' WHERE ordinal = 1", "is no date"},
          Damage{"UPDATE trial_day SET arm = 4 WHERE ordinal = 1", "names one of the arms"},
          Damage{"DELETE FROM trial_arm WHERE ordinal = 2", "2 to 4 arms"},
          Damage{"UPDATE trial_arm SET standard_id = (SELECT max(id) FROM rep_standard)", "of another variant"}}) {
        TrialBook at;
        static_cast<void>(stored(at, fullTrial(at)));
        static_cast<void>(at.standardOfAnotherVariant());
        ASSERT_EQ(must(verifyBook(at.book->database(), {})).findings, QStringList()) << damage.sql;
        must(at.book->database().execute(damage.sql));
        const QString findings = must(verifyBook(at.book->database(), {})).findings.join(u'\n');
        EXPECT_TRUE(findings.contains(QLatin1String(damage.finding))) << damage.sql << '\n' << qPrintable(findings);
    }
}

}  // namespace
}  // namespace steelyard
