#include "core/care/event_log.h"

#include "core/book/book.h"
#include "core/care/diagnosis.h"
#include "tests/support/temp_dir.h"

#include <QtCore/QDir>
#include <QtCore/QRegularExpression>
#include <QtCore/QSettings>

#include <gtest/gtest.h>

#include <thread>

namespace steelyard {
namespace {

const FixedClock kClock{QDate(2027, 3, 1)};

TEST(EventLog, WritesOneLineAnEventWithItsTime)
{
    const testing_support::TempDir dir;
    EventLog log(dir.path(u"log"), kClock);
    log.write(u"action", u"week.act");
    log.write(u"error", u"two\nlines\r\n\x1b[2J and more");
    const QStringList lines = log.lastLines(10);
    ASSERT_EQ(lines.size(), 2);
    EXPECT_EQ(lines[0], kClock.nowUtc().toString(Qt::ISODate) + QStringLiteral(" action week.act"));
    EXPECT_TRUE(lines[1].endsWith(QStringLiteral(" error two lines [2J and more"))) << qPrintable(lines[1]);
}

TEST(EventLog, KeepsThreeSmallFilesThatOnlyTheirOwnerReads)
{
    const testing_support::TempDir dir;
    EventLog log(dir.path(u"log"), kClock, 1000);
    for (int i = 0; i < 500; ++i) log.write(u"action", QString::number(i));
    const QFileInfoList files = QDir(dir.path(u"log")).entryInfoList(QDir::Files | QDir::Hidden);
    EXPECT_EQ(files.size(), EventLog::kFiles);
    for (const QFileInfo& file : files) {
        EXPECT_LE(file.size(), 1100);
        EXPECT_EQ(file.permissions() & 0x0fff, QFile::Permissions(0x0600) & 0x0fff) << qPrintable(file.fileName());
    }
    EXPECT_TRUE(log.lastLines(1).value(0).endsWith(QStringLiteral(" 499")));
    EXPECT_GT(log.lastLines(1000).size(), 20);
}

TEST(EventLog, HoldsNobodyUpWhereItCantBeWritten)
{
    const testing_support::TempDir dir;
    dir.write(u"log", "a file where the folder should be");
    EventLog log(dir.path(u"log"), kClock);
    log.write(u"action", u"week.act");
    EXPECT_EQ(log.descriptor(), -1);
    EXPECT_TRUE(log.lastLines(10).isEmpty());
}

TEST(EventLog, TakesLinesOfSeveralThreadsWhole)
{
    const testing_support::TempDir dir;
    EventLog log(dir.path(u"log"), kClock);
    std::vector<std::thread> threads;
    for (int i = 0; i < 4; ++i)
        threads.emplace_back([&] {
            for (int j = 0; j < 50; ++j) log.write(u"action", u"all of this stands on one line");
        });
    for (std::thread& thread : threads) thread.join();
    const QStringList lines = log.lastLines(1000);
    EXPECT_EQ(lines.size(), 200);
    EXPECT_TRUE(
        std::ranges::all_of(lines, [](const QString& line) { return line.endsWith(QStringLiteral("one line")); }));
}

TEST(PersonalWords, AreLeftOutWhereverTheyAreQuotedOrPartOfAPath)
{
    for (const char* text :
         {"“Ada Fulcrum” could not be opened", "near \"Ada Fulcrum\": syntax error", "named 'Ada Fulcrum' twice",
          "QFile: /home/ada/Ada Fulcrum.steelyard: no such file", "file:///home/ada/Fulcrum.pdf failed",
          "C:\\Users\\Ada\\Fulcrum.pdf failed", "an unfinished “Ada Fulcrum", "~/Ada/Fulcrum: locked",
          "«Ada Fulcrum» is there already", "../Ada Fulcrum/x, and so on"}) {
        const QString kept = withoutPersonalWords(QString::fromUtf8(text));
        EXPECT_FALSE(kept.contains(QStringLiteral("Ada"), Qt::CaseInsensitive)) << text << " -> " << qPrintable(kept);
        EXPECT_FALSE(kept.contains(QStringLiteral("Fulcrum"))) << text << " -> " << qPrintable(kept);
    }
    EXPECT_EQ(withoutPersonalWords(u"UNIQUE constraint failed: athlete.name"),
              QStringLiteral("UNIQUE constraint failed: athlete.name"));
    EXPECT_EQ(withoutPersonalWords(u"it's the disk's fault"), QStringLiteral("it's the disk's fault"));
    EXPECT_LE(withoutPersonalWords(QString(100'000, u'x')).size(), 400);
}

// Everything that a coach could type gets a word that stands nowhere else; none of them may come out.
TEST(Diagnosis, SaysVersionsAndCountsAndNothingThatWasTyped)
{
    const testing_support::TempDir dir;
    auto book = Book::create(dir.path(u"Quibblewick.steelyard"), kClock);
    ASSERT_TRUE(book);
    auto tx = Transaction::begin((*book)->database());
    ASSERT_TRUE(tx);
    Athlete athlete;
    athlete.name = QStringLiteral("Zorblatt Quibblewick");
    athlete.group = QStringLiteral("Quibblegroup");
    athlete.note = QStringLiteral("Quibbleknee hurts");
    athlete.jointHistory = QStringLiteral("Quibbleshoulder pain in 2019");
    athlete.consents = {HealthConsent::given(QDate(2026, 1, 5))};
    athlete.born = QDate(1987, 6, 5);
    ASSERT_TRUE((*book)->athletes().insert(*tx, athlete));
    ASSERT_TRUE(tx->commit());
    QSettings settings(dir.path(u"settings.ini"), QSettings::IniFormat);
    settings.setValue(QStringLiteral("books/recent"), (*book)->path());
    settings.setValue(QStringLiteral("lock/secret"), QStringLiteral("$argon2id$Quibblesecret"));
    settings.setValue(QStringLiteral("lock/minutes"), QStringLiteral("Quibbleminutes"));
    settings.setValue(QStringLiteral("view/initials"), true);
    settings.setValue(QStringLiteral("week/filters/1/name"), QStringLiteral("Quibblefilter"));
    EventLog log(dir.path(u"log"), kClock);
    log.write(u"error", u"no row for “Zorblatt Quibblewick”");
    log.write(u"action", u"week.act");
    const QString text = diagnosisOf(&(*book)->database(), {QStringLiteral("9.8.7"), {QStringLiteral("800 x 600")}},
                                     settings, log.lastLines(50));
    for (const char* said : {"Steelyard 9.8.7", "800 x 600", "athlete: 1", "setting view/initials: 1",
                             "setting lock/minutes: usual", "lock: set", "action week.act"})
        EXPECT_TRUE(text.contains(QString::fromLatin1(said))) << said << "\n" << qPrintable(text);
    EXPECT_FALSE(text.contains(QStringLiteral("quibble"), Qt::CaseInsensitive)) << qPrintable(text);
    EXPECT_FALSE(text.contains(QStringLiteral("zorblatt"), Qt::CaseInsensitive));
    EXPECT_FALSE(text.contains(QStringLiteral("1987")));
    EXPECT_FALSE(text.contains(dir.path()));
    EXPECT_FALSE(text.contains(QDir::homePath()));
    for (const char* health : {"pain", "hurt", "discomfort", "injur", "joint", "knee", "soreness"})
        EXPECT_FALSE(text.contains(QString::fromLatin1(health), Qt::CaseInsensitive)) << health;
}

TEST(Diagnosis, IsWrittenWithoutABookToo)
{
    const testing_support::TempDir dir;
    const QSettings settings(dir.path(u"settings.ini"), QSettings::IniFormat);
    const QString text = diagnosisOf(nullptr, {}, settings, {});
    EXPECT_TRUE(text.contains(QStringLiteral("book: none is open")));
    EXPECT_TRUE(text.contains(QStringLiteral("lock: none")));
}

}  // namespace
}  // namespace steelyard
