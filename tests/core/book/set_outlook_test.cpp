#include "core/book/set_outlook.h"

#include "core/edits/edits.h"
#include "tests/support/log_builder.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using testing_support::madeEntry;

const QDate kToday(2026, 3, 2);
const QString kKey = QStringLiteral("arm-curl/straight-bar-upright/supinated-medium/strict");

// Ada curls 40 kg ten times with two in reserve, twice a week.
class Outlook : public testing::Test {
protected:
    TempBook m_book{kToday};

    void SetUp() override
    {
        for (int i = 0; i < 14; ++i)
            must(m_book->history().perform(addSet(m_book.line(), kToday.addDays(-4 * i),
                                                  madeEntry({.load = 40, .reps = 10, .off = 0, .rir = 2}))));
    }
    [[nodiscard]] static OutlookRequest forLoad(const char* kg)
    {
        OutlookRequest request{QStringLiteral("Ada Fulcrum"), kKey, kToday, {}, {}, 2, 1};
        request.load = Load::parse(std::string_view(kg), MassUnit::kg).value();
        return request;
    }
    [[nodiscard]] static OutlookRequest forReps(int reps)
    {
        OutlookRequest request = forLoad("1");
        request.load.reset();
        request.reps = reps;
        return request;
    }
    [[nodiscard]] Result<SetOutlook> ask(const OutlookRequest& request) const
    {
        auto reader = must(Database::openReader(m_book.path()));
        return readSetOutlook(*reader, request);
    }
    [[nodiscard]] Error refusal(const OutlookRequest& request) const
    {
        const auto outlook = ask(request);
        EXPECT_FALSE(outlook);
        return outlook ? Error{} : outlook.error();
    }
    void giveAGym()
    {
        Gym gym;
        gym.name = QStringLiteral("Cellar");
        gym.bars.push_back({QStringLiteral("bar"), Implement::StraightBar, Load::parseWithUnit(u"10 kg").value()});
        gym.plates = {{Load::parseWithUnit(u"10 kg").value(), 2}, {Load::parseWithUnit(u"5 kg").value(), 1}};
        auto tx = must(Transaction::begin(m_book->database()));
        const auto id = must(m_book->gyms().insert(tx, gym));
        must(tx.commit());
        Athlete ada = must(m_book->athletes().find(m_book.athlete())).value;
        ada.gym = id;
        must(m_book->history().perform(changeAthlete(m_book.athlete(), ada)));
    }
};

TEST_F(Outlook, SaysWhatALoadWillBring)
{
    const SetOutlook outlook = must(ask(forLoad("40")));
    EXPECT_EQ(outlook.lineName, QStringLiteral("Arm curl, straight bar, upright, supinated, medium, strict"));
    EXPECT_EQ(outlook.target.loadKg, 40);
    EXPECT_NEAR(outlook.target.repsMedian, 10, 0.6);
    EXPECT_FALSE(outlook.loadForRepsKg);
    EXPECT_EQ(outlook.cautions, QStringList());
}

TEST_F(Outlook, RestsOnTheNumbersThatTheBookHasLearned)
{
    const SetOutlook shipped = must(ask(forLoad("40")));
    auto tx = must(Transaction::begin(m_book->database()));
    const ReadingFit fit{0, m_book->clock().today(), 20, 900, -1, 1, {{QStringLiteral("day_noise"), 0.2}}};
    must(m_book->readingParameters().insert(tx, fit));
    must(tx.commit());
    const SetOutlook learned = must(ask(forLoad("40")));
    const auto width = [](const SetOutlook& outlook) {
        return outlook.target.within80.high - outlook.target.within80.low;
    };
    EXPECT_GT(width(learned), width(shipped) + 1);
}

TEST_F(Outlook, FindsTheLoadForSoManyAndRoundsItToTheGym)
{
    const SetOutlook anywhere = must(ask(forReps(10)));
    EXPECT_FALSE(anywhere.loadable);
    EXPECT_EQ(anywhere.target.loadKg, *anywhere.loadForRepsKg);
    EXPECT_EQ(anywhere.target.targetReps, 10);
    giveAGym();
    // 10, 20, 30, 40, 50 and 60 kg are what the cellar can load.
    const SetOutlook inCellar = must(ask(forReps(7)));
    ASSERT_TRUE(inCellar.loadable);
    EXPECT_EQ(std::lround(inCellar.loadable->kilograms()) % 10, 0);
    EXPECT_EQ(inCellar.target.loadKg, inCellar.loadable->kilograms());
    for (const char* kg : {"20", "30", "40", "50", "60"}) {
        const SetOutlook other = must(ask(forLoad(kg)));
        EXPECT_LE(std::abs(inCellar.target.targetReps - 7), std::abs(other.target.targetReps - 7)) << kg;
    }
}

TEST_F(Outlook, RestsOnNothingAfterItsDay)
{
    OutlookRequest early = forLoad("40");
    early.asOf = kToday.addDays(-14);
    const double before = must(ask(early)).target.repsMedian;
    must(m_book->history().perform(
        addSet(m_book.line(), kToday.addDays(-1), madeEntry({.load = 40, .reps = 15, .off = 0, .rir = 2}))));
    EXPECT_EQ(must(ask(early)).target.repsMedian, before);
    EXPECT_GT(must(ask(forLoad("40"))).target.repsMedian, before);
}

TEST_F(Outlook, NamesWhatThereIsWhenALifterOrALineIsNot)
{
    OutlookRequest request = forLoad("40");
    request.athlete = QStringLiteral("Ada Fulcrom");
    EXPECT_EQ(refusal(request).code, ErrorCode::NotFound);
    EXPECT_TRUE(refusal(request).what.contains(QStringLiteral("“Ada Fulcrum”")));
    request = forLoad("40");
    request.line = QStringLiteral("arm-curl");
    EXPECT_EQ(refusal(request).code, ErrorCode::NotFound);
    EXPECT_TRUE(refusal(request).what.contains(kKey));
}

TEST_F(Outlook, RefusesWhatNobodyCanSay)
{
    EXPECT_EQ(refusal(forLoad("0")).code, ErrorCode::Invalid);
    EXPECT_EQ(refusal(forLoad("0.5")).code, ErrorCode::Invalid);
    EXPECT_EQ(refusal(forReps(0)).code, ErrorCode::Invalid);
    EXPECT_EQ(refusal(forReps(kMostWantedReps + 1)).code, ErrorCode::Invalid);
    OutlookRequest request = forLoad("40");
    request.rir = 10.5;
    EXPECT_EQ(refusal(request).code, ErrorCode::Invalid);
    request = forLoad("40");
    request.setNumber = 0;
    EXPECT_EQ(refusal(request).code, ErrorCode::Invalid);
    request = forLoad("40");
    request.reps = 10;
    EXPECT_EQ(refusal(request).code, ErrorCode::Invalid);
    request = forLoad("40");
    request.asOf = kToday.addDays(-365);
    EXPECT_EQ(refusal(request).code, ErrorCode::Invalid);  // no session yet on that day
    request.asOf = kToday.addDays(kMostDaysSince);
    EXPECT_TRUE(must(ask(request)).cautions.contains(QStringLiteral("too_few")));
    request.asOf = kToday.addDays(kMostDaysSince + 1);
    EXPECT_EQ(refusal(request).code, ErrorCode::Invalid);
}

TEST_F(Outlook, WarnsWhereEffortIsUnknown)
{
    for (int i = 1; i < 8; ++i)
        must(m_book->history().perform(
            addSet(m_book.line(), kToday.addDays(3 * i), madeEntry({.load = 40, .reps = 10, .off = 0}))));
    OutlookRequest request = forLoad("40");
    request.asOf = kToday.addDays(30);
    EXPECT_EQ(must(ask(request)).cautions, QStringList{QStringLiteral("effort_unknown")});
}

}  // namespace
}  // namespace steelyard
