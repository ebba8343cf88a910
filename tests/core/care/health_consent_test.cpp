// Without a consent nothing about health gets into the book, and after its withdrawal nothing of it is left there.
#include "core/care/health_consent.h"

#include "core/book/verify.h"
#include "core/edits/edits.h"
#include "core/exchange/logbook_import.h"
#include "core/keying/rating_cells.h"
#include "core/keying/rating_notation.h"
#include "core/sheets/session_sheet.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/session_reader.h"
#include "tests/support/log_builder.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

ExerciseRating sore(int elbow)
{
    ExerciseRating rating;
    rating.tension = 7;
    rating.discomfort[static_cast<std::size_t>(Joint::Elbow)] = elbow;
    return rating;
}

class HealthEntriesInABook : public testing::Test {
protected:
    const QDate m_day{2026, 2, 20};
    test::TempBook m_book;

    [[nodiscard]] Row<Athlete> ada() { return must(m_book->athletes().find(m_book.athlete())); }
    void setConsents(const HealthConsents& consents)
    {
        Athlete athlete = ada().value;
        athlete.consents = consents;
        must(m_book->history().perform(changeAthlete(m_book.athlete(), athlete)));
    }
    [[nodiscard]] Result<bool> rate(const ExerciseRating& rating)
    {
        return m_book->history().perform(rateExercise(m_book.line(), m_day, rating));
    }
    [[nodiscard]] std::vector<RecordedRating> ratings()
    {
        return must(readSession(m_book->database(), m_book.athlete(), m_day)).ratings;
    }
    [[nodiscard]] ImportReport import(const char* csv, ImportOptions options = {})
    {
        const auto log = must(parseLogbook(csv, LogbookMapping{}, QDate(2026, 3, 2), {}));
        options.madeAt = m_book.clock().nowUtc();
        return must(importLogbook(m_book->database(), log, options, {})).report;
    }
};

constexpr const char* kSoreCsv =
    "date,athlete,exercise,load,reps,tension,discomfort_elbow\n"
    "2026-02-20,Ada Fulcrum,Arm curl,40,10,6,4\n"
    "2026-02-20,New Lifter,Arm curl,30,10,5,3\n"
    "2026-02-20,Calm Lifter,Arm curl,30,10,5,\n";

TEST_F(HealthEntriesInABook, AreRefusedOfALifterWhoHasNotAgreed)
{
    setConsents({});
    const auto refused = rate(sore(4));
    ASSERT_FALSE(refused);
    EXPECT_EQ(refused.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(ratings().empty());
    EXPECT_TRUE(must(rate(sore(4).withoutDiscomfort())));
    Athlete athlete = ada().value;
    athlete.jointHistory = QStringLiteral("left elbow");
    EXPECT_FALSE(m_book->history().perform(changeAthlete(m_book.athlete(), athlete)));
    EXPECT_EQ(ada().value.jointHistory, QString());
}

TEST_F(HealthEntriesInABook, AreTakenOfALifterWhoAgreedToThem)
{
    setConsents({});
    must(m_book->history().perform(giveHealthConsent(m_book.athlete(), HealthConsent::given(m_day))));
    EXPECT_TRUE(must(rate(sore(4))));
    EXPECT_EQ(ratings().front().rating, sore(4));
}

TEST_F(HealthEntriesInABook, AreTakenAsToBeConfirmedUntilSomebodyAsked)
{
    setConsents({HealthConsent::toConfirm()});
    EXPECT_TRUE(must(rate(sore(2))));
    must(m_book->history().perform(giveHealthConsent(m_book.athlete(), HealthConsent::given(m_day))));
    EXPECT_EQ(ada().value.consents, HealthConsents{HealthConsent::given(m_day)});
    EXPECT_EQ(ratings().front().rating, sore(2));
}

TEST_F(HealthEntriesInABook, GoWithTheWithdrawalAndWhatIsAboutTrainingStays)
{
    Athlete athlete = ada().value;
    athlete.jointHistory = QStringLiteral("left elbow since 2021");
    must(m_book->history().perform(changeAthlete(m_book.athlete(), athlete)));
    must(rate(sore(4)));
    {
        auto tx = must(Transaction::begin(m_book->database()));
        Decision decision{.athlete = m_book.athlete()};
        decision.rule = QStringLiteral("joint_discomfort");
        decision.madeOn = m_day;
        decision.said = QStringLiteral("Elbow: discomfort 4 of 10");
        must(m_book->decisions().insert(tx, decision));
        must(tx.commit());
    }
    EXPECT_EQ(must(countHealthEntries(m_book->database(), m_book.athlete())), (HealthEntries{1, 1, true}));
    const auto report = must(withdrawHealthConsent(*m_book, m_book.athlete()));
    EXPECT_EQ(report.removed, (HealthEntries{1, 1, true}));
    EXPECT_TRUE(report.fileCleaned);
    EXPECT_TRUE(must(countHealthEntries(m_book->database(), m_book.athlete())).none());
    EXPECT_EQ(ratings().front().rating, sore(4).withoutDiscomfort());
    EXPECT_EQ(ada().value.consents.back().withdrawnOn, m_book.clock().today());
    EXPECT_EQ(must(m_book->decisions().of(m_book.athlete())).size(), 1U);
    EXPECT_FALSE(m_book->history().canUndo());  // a step could bring them back
    EXPECT_FALSE(rate(sore(1)));
    m_book.close();
    const QByteArray bytes = test::fileBytes(m_book.path());
    EXPECT_FALSE(bytes.contains("since 2021"));
    EXPECT_FALSE(bytes.contains("Elbow: discomfort"));
}

TEST_F(HealthEntriesInABook, WithoutConsentAreAFindingOfTheCheck)
{
    must(rate(sore(4)));
    EXPECT_EQ(must(verifyBook(m_book->database(), {})).findings, QStringList());
    must(m_book->database().execute("DELETE FROM health_consent"));
    EXPECT_EQ(must(verifyBook(m_book->database(), {})).findings.size(), 1);
}

TEST_F(HealthEntriesInABook, StayOutOfAnImportUnlessTheyAgreed)
{
    setConsents({});
    const ImportReport report = import(kSoreCsv, {.discomfort = ImportedDiscomfort::LeaveOut});
    EXPECT_TRUE(report.written);
    EXPECT_EQ(report.setsAdded, 3);
    EXPECT_EQ(report.discomfortLeftOut, (QStringList{QStringLiteral("Ada Fulcrum"), QStringLiteral("New Lifter")}));
    EXPECT_EQ(ratings().front().rating.tension, 6);
    EXPECT_FALSE(ratings().front().rating.hasDiscomfort());
    // Twice is once, left out or not.
    EXPECT_EQ(import(kSoreCsv, {.discomfort = ImportedDiscomfort::LeaveOut}).problems.size(), 0U);
}

TEST_F(HealthEntriesInABook, ComeInWithAConsentThatIsRecordedOrToBeConfirmed)
{
    setConsents({});
    const ImportReport said =
        import(kSoreCsv, {.discomfort = ImportedDiscomfort::Agreed, .agreedOn = QDate(2026, 3, 1)});
    EXPECT_TRUE(said.discomfortToConfirm.isEmpty());
    EXPECT_EQ(ada().value.consents, HealthConsents{HealthConsent::given(QDate(2026, 3, 1), {true, false})});
    EXPECT_TRUE(ratings().front().rating.hasDiscomfort());
    must(m_book->athletes().findByName(QStringLiteral("Calm Lifter")));
    EXPECT_TRUE(must(m_book->athletes().findByName(QStringLiteral("Calm Lifter"))).value.consents.empty());

    const ImportReport later =
        import("date,athlete,exercise,load,reps,discomfort_knee\n2026-02-21,Calm Lifter,Arm curl,30,10,2\n");
    EXPECT_EQ(later.discomfortToConfirm, QStringList{QStringLiteral("Calm Lifter")});
    EXPECT_EQ(standingOf(must(m_book->athletes().findByName(QStringLiteral("Calm Lifter"))).value.consents),
              ConsentStanding::ToConfirm);
}

TEST_F(HealthEntriesInABook, OfOneWhoWithdrewNeverComeInAgainByThemselves)
{
    must(withdrawHealthConsent(*m_book, m_book.athlete()));
    const ImportReport report =
        import(kSoreCsv, {.discomfort = ImportedDiscomfort::Agreed, .agreedOn = QDate(2026, 3, 1)});
    EXPECT_EQ(report.discomfortLeftOut, QStringList{QStringLiteral("Ada Fulcrum")});
    EXPECT_FALSE(ratings().front().rating.hasDiscomfort());
}

TEST_F(HealthEntriesInABook, AreNotAskedOnTheSheetNorWhileKeying)
{
    must(m_book->history().perform(addSet(m_book.line(), m_day, test::workSet("40", 10, 0))));
    const auto sheetOf = [&] {
        const auto library = must(m_book->library().read());
        const auto log = must(readAthleteLog(m_book->database(), library, m_book.athlete()));
        return buildSessionSheet(log, library, std::nullopt, QDate(2026, 3, 2));
    };
    ASSERT_TRUE(sheetOf());
    EXPECT_TRUE(sheetOf()->exercises.front().asksDiscomfort);
    setConsents({});
    EXPECT_FALSE(sheetOf()->exercises.front().asksDiscomfort);

    for (const RatingCell cell : afterExercise(false)) EXPECT_FALSE(jointOf(cell));
    EXPECT_EQ(afterExercise(false).size() + kJointCount, afterExercise(true).size());
    EXPECT_FALSE(readRating(u"elbow 3", {}, false));
    EXPECT_TRUE(readRating(u"tension 3", {}, false));
}

}  // namespace
}  // namespace steelyard
