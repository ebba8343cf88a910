// `trial` as a script calls it: a comparison drawn and kept, how it stands, what it says.
#include "core/edits/edits.h"
#include "core/edits/trial_edits.h"
#include "tests/console/club.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

namespace steelyard {
namespace {

const QString kLifter = QStringLiteral("Ada Fulcrum");

class TrialCommand : public Club {
protected:
    void SetUp() override { makeClub(); }
    [[nodiscard]] Said trial(const char* what, const QStringList& words = {}, const QString& athlete = kLifter) const
    {
        return run("trial", QStringList{QString::fromLatin1(what), QStringLiteral("--athlete"), athlete} + words);
    }
    [[nodiscard]] Said design(const QStringList& more = {}) const
    {
        return trial("design", QStringList{QStringLiteral("--factor"), QStringLiteral("grip"), QStringLiteral("--arm"),
                                           QStringLiteral("Arm curl//supinated, medium"), QStringLiteral("--arm"),
                                           QStringLiteral("Arm curl//supinated, wide"), QStringLiteral("--weekdays"),
                                           QStringLiteral("1,4"), QStringLiteral("--seed"), QStringLiteral("7")}
                                   + more);
    }
    [[nodiscard]] static QJsonObject jsonOf(const Said& said) { return QJsonDocument::fromJson(said.out).object(); }
    template <class Read>
    [[nodiscard]] auto inBook(const Read& read) const
    {
        const FixedClock clock(QDate(2026, 11, 25));
        const auto book = test::must(Book::open(m_book, clock));
        return read(*book);
    }
    [[nodiscard]] std::vector<Row<Trial>> stored() const
    {
        return inBook([](Book& book) {
            return test::must(book.trials().of(test::must(book.athletes().findByName(kLifter)).id));
        });
    }
};

TEST_F(TrialCommand, DrawsADesignAndLeavesTheBookAlone)
{
    const QByteArray before = test::fileBytes(m_book);
    const Said said = design({QStringLiteral("--json")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    const QJsonObject json = jsonOf(said);
    EXPECT_EQ(json[QStringLiteral("athlete")], kLifter);
    EXPECT_FALSE(json[QStringLiteral("accepted")].toBool(true));
    EXPECT_EQ(json[QStringLiteral("arms")].toArray().size(), 2);
    const QJsonArray days = json[QStringLiteral("days")].toArray();
    ASSERT_EQ(days.size(), 12);
    for (int block = 1; block <= 6; ++block) {
        QStringList arms;
        for (const auto& day : days)
            if (day.toObject()[QStringLiteral("block")].toInt() == block)
                arms << day.toObject()[QStringLiteral("arm")].toString();
        arms.sort();
        EXPECT_EQ(arms, (QStringList{QStringLiteral("A"), QStringLiteral("B")})) << block;
    }
    EXPECT_EQ(design({QStringLiteral("--json")}).out, said.out) << "the same seed, the same order";
    EXPECT_EQ(test::fileBytes(m_book), before);
}

TEST_F(TrialCommand, KeepsTheDesignAsAStepAndRefusesASecondTrialOfTheExercise)
{
    ASSERT_EQ(design({QStringLiteral("--accept")}).status, 0);
    const auto kept = stored();
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept[0].value.seed, 7U);
    EXPECT_TRUE(inBook([](Book& book) { return book.history().undoLabel().contains(QStringLiteral("set up trial")); }));
    const Said again = design();
    EXPECT_EQ(again.status, 1);
    EXPECT_TRUE(again.err.contains(QStringLiteral("End it first"))) << again.err.toStdString();
}

TEST_F(TrialCommand, HidesResultsInItsStatus)
{
    ASSERT_EQ(design({QStringLiteral("--accept")}).status, 0);
    const Said said = trial("status", {QStringLiteral("--json")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    const QJsonArray trials = jsonOf(said)[QStringLiteral("trials")].toArray();
    ASSERT_EQ(trials.size(), 1);
    const QJsonObject one = trials[0].toObject();
    EXPECT_EQ(one[QStringLiteral("sessions_to_come")].toInt(), 12);
    EXPECT_TRUE(one[QStringLiteral("next")].isObject());
    for (const char* hidden : {"verdict", "answer", "outcomes", "for_coach"})
        EXPECT_FALSE(one.contains(QString::fromLatin1(hidden))) << hidden;
    EXPECT_TRUE(stored()[0].value.looks.empty());
    EXPECT_TRUE(trial("status").out.contains("Next: "));
}

TEST_F(TrialCommand, WritesDownThatSomebodyLookedBeforeTheEnd)
{
    ASSERT_EQ(design({QStringLiteral("--accept")}).status, 0);
    const Said said = trial("analyse", {QStringLiteral("--json")});
    ASSERT_EQ(said.status, 0) << said.err.toStdString();
    EXPECT_EQ(jsonOf(said)[QStringLiteral("verdict")], QStringLiteral("nothing_yet"));
    EXPECT_TRUE(jsonOf(said)[QStringLiteral("look_recorded")].toBool());
    ASSERT_EQ(stored()[0].value.looks.size(), 1U);
    EXPECT_FALSE(jsonOf(trial("analyse", {QStringLiteral("--json")}))[QStringLiteral("look_recorded")].toBool())
        << "once a day";
    EXPECT_EQ(stored()[0].value.looks.size(), 1U);
    EXPECT_TRUE(trial("analyse").out.contains("For the lifter: "));
}

TEST_F(TrialCommand, TellsASlipInTheWordsFromRefusedInput)
{
    EXPECT_EQ(run("trial").status, 2);
    EXPECT_EQ(trial("dream").status, 2);
    EXPECT_EQ(trial("design").status, 2);
    for (const QStringList& words : {QStringList{QStringLiteral("--blocks"), QStringLiteral("0")},
                                     {QStringLiteral("--seed"), QStringLiteral("x")},
                                     {QStringLiteral("--from"), QStringLiteral("soon")},
                                     {QStringLiteral("--outcome"), QStringLiteral("tension")},
                                     {QStringLiteral("--weekdays"), QStringLiteral("8")},
                                     {QStringLiteral("--arm"), QStringLiteral("Arm curl;colour=red")}})
        EXPECT_EQ(design(words).status, 2) << words.join(u' ').toStdString();
    for (const QStringList& words : {QStringList{QStringLiteral("--arm"), QStringLiteral("Arm curl//no such grip")},
                                     {QStringLiteral("--arm"), QStringLiteral("Arm curl//supinated, wide")},
                                     {QStringLiteral("--outcome"), QStringLiteral("luck:1")}})
        EXPECT_EQ(design(words).status, 1) << words.join(u' ').toStdString();
    EXPECT_EQ(trial("analyse").status, 1) << "there is none";
    EXPECT_EQ(trial("status").status, 0);
    EXPECT_EQ(trial("status", {}, QStringLiteral("Nobody Here")).status, 1);
    write(m_book, "not a book at all");
    EXPECT_EQ(trial("status").status, 3);
}

}  // namespace
}  // namespace steelyard
