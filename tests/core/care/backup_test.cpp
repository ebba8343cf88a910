#include "core/care/backup.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

QDateTime utc(const char* text)
{
    return QDateTime::fromString(QString::fromLatin1(text), Qt::ISODate);
}

// As a coach leaves them who opened the book on each of these days, the last one first.
std::vector<Backup> daily(QDate last, int days)
{
    std::vector<Backup> newestFirst;
    for (int back = 0; back < days; ++back)
        newestFirst.push_back({QString::number(back), days - back,
                               QDateTime(last.addDays(-back), QTime(18, 0), Qt::UTC), BackupReason::Daily, 1});
    return newestFirst;
}

std::vector<QDate> daysKept(const std::vector<Backup>& all)
{
    const auto surplus = surplusBackups(all);
    std::vector<QDate> days;
    for (const Backup& backup : all)
        if (std::ranges::find(surplus, backup) == surplus.end()) days.push_back(backup.madeAt.date());
    return days;
}

TEST(BackupName, SaysWhenWhyAndWhichAndIsReadBack)
{
    const QString name = backupName(42, utc("2027-03-01T18:05:12Z"), BackupReason::Import);
    EXPECT_EQ(name, QStringLiteral("20270301T180512Z-000042-import.steelyard"));
    const auto read = backupNamed(QStringLiteral("/somewhere/") + name);
    ASSERT_TRUE(read);
    EXPECT_EQ(read->number, 42);
    EXPECT_EQ(read->madeAt, utc("2027-03-01T18:05:12Z"));
    EXPECT_EQ(read->reason, BackupReason::Import);
    EXPECT_LT(name, backupName(3, utc("2027-03-01T18:05:13Z"), BackupReason::Asked)) << "sorted by time as text";
}

TEST(BackupName, OfAnotherFileIsNone)
{
    for (const auto* name : {"club.steelyard", "20270301T180512Z-000042-import.steelyard.unfinished",
                             "20270301T180512Z-000042-birthday.steelyard", "20271301T180512Z-000042-import.steelyard",
                             "20270301T180512Z-42-import.steelyard"})
        EXPECT_FALSE(backupNamed(QString::fromLatin1(name))) << name;
}

// The rule by hand: 1 March 2027 is a Monday. Seven days are 1 March back to 23 February; the four weeks end on 1 March (its
// own), 28, 21 and 14 February; the twelve months on 1 March, 28 February, 31 January and so on back to 30 April 2026.
TEST(SurplusBackups, LeaveSevenDaysFourWeeksAndTwelveMonths)
{
    const std::vector<QDate> expected{{2027, 3, 1},   {2027, 2, 28},  {2027, 2, 27},  {2027, 2, 26}, {2027, 2, 25},
                                      {2027, 2, 24},  {2027, 2, 23},  {2027, 2, 21},  {2027, 2, 14}, {2027, 1, 31},
                                      {2026, 12, 31}, {2026, 11, 30}, {2026, 10, 31}, {2026, 9, 30}, {2026, 8, 31},
                                      {2026, 7, 31},  {2026, 6, 30},  {2026, 5, 31},  {2026, 4, 30}};
    EXPECT_EQ(daysKept(daily(QDate(2027, 3, 1), 800)), expected);
}

TEST(SurplusBackups, AreNoneOfAFewAndNeverTheNewest)
{
    EXPECT_TRUE(surplusBackups({}).empty());
    EXPECT_TRUE(surplusBackups(daily(QDate(2027, 3, 1), 7)).empty());
    EXPECT_EQ(daysKept(daily(QDate(2027, 3, 1), 1)).size(), 1U);
}

TEST(SurplusBackups, KeepOnlyTheLastOfADayButTenThatWereMadeBeforeSomething)
{
    std::vector<Backup> all;
    for (int n = 40; n >= 1; --n)
        all.push_back({QString::number(n), n, utc("2027-03-01T12:00:00Z").addSecs(n * 60),
                       n % 2 == 0 ? BackupReason::Daily : BackupReason::Import, 1});
    const auto surplus = surplusBackups(all);
    std::vector<qint64> kept;
    for (const Backup& backup : all)
        if (std::ranges::find(surplus, backup) == surplus.end()) kept.push_back(backup.number);
    EXPECT_EQ(kept, (std::vector<qint64>{40, 39, 37, 35, 33, 31, 29, 27, 25, 23, 21}));
}

TEST(SurplusBackups, OfAClockThatWasSetBackTwoYearsAreChosenByTheirOrder)
{
    std::vector<Backup> all = daily(QDate(2025, 3, 3), 3);  // made last, with the clock wrong
    for (Backup& backup : all) backup.number += 100;
    const auto before = daily(QDate(2027, 3, 1), 100);
    all.insert(all.end(), before.begin(), before.end());
    const auto kept = daysKept(all);
    EXPECT_EQ(
        std::vector<QDate>(kept.begin(), kept.begin() + 7),
        (std::vector<QDate>{
            {2025, 3, 3}, {2025, 3, 2}, {2025, 3, 1}, {2027, 3, 1}, {2027, 2, 28}, {2027, 2, 27}, {2027, 2, 26}}));
    EXPECT_TRUE(std::ranges::count(kept, QDate(2027, 1, 31)) == 1) << "months of before are still there";
    EXPECT_TRUE(std::ranges::count(kept, QDate(2026, 12, 31)) == 1);
}

}  // namespace
}  // namespace steelyard
