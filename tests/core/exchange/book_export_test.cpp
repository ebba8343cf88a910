// A whole book goes out and comes back with the same content; one athlete's record names nobody else.
#include "core/exchange/book_export.h"

#include "core/base/text.h"
#include "core/edits/edits.h"
#include "core/exchange/book_dump.h"
#include "core/exchange/book_import.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "core/storage/athlete_log_reader.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QJsonDocument>
#include <QtCore/QJsonObject>

#include <gtest/gtest.h>

#include <unistd.h>

namespace steelyard {
namespace {

using test::must;

class ExportedBook : public testing::Test {
protected:
    ExportedBook() : m_book(must(Book::create(path("full.steelyard"), m_clock))) { test::fillFullBook(*m_book); }

    [[nodiscard]] QString path(const char* name) const { return m_dir.filePath(QString::fromLatin1(name)); }
    [[nodiscard]] QByteArray bytes(const char* name) const { return test::fileBytes(path(name)); }
    Result<ExportReport> write(const char* dir, std::optional<Id<Athlete>> only = {}, const Progress& progress = {})
    {
        return exportBook(m_book->database(), path(dir), only, progress);
    }
    [[nodiscard]] Id<Athlete> athlete(const QString& name) { return must(m_book->athletes().findByName(name)).id; }
    Result<void> readInto(Book& book, const char* dir) const
    {
        return importExport(
            book, path(dir),
            [](Transaction& tx, const QString& csv, const Progress&) { return test::fillFromCsv(tx, csv); }, {});
    }
    void change(const char* file, const QByteArray& from, const QByteArray& to) const
    {
        QByteArray content = bytes(file);
        ASSERT_TRUE(content.contains(from));
        QFile out(path(file));
        ASSERT_TRUE(out.open(QIODevice::WriteOnly));
        out.write(content.replace(from, to));
    }

    QTemporaryDir m_dir;
    FixedClock m_clock{QDate(2026, 3, 2)};
    std::unique_ptr<Book> m_book;
};

TEST_F(ExportedBook, ComesBackWithTheSameContentInEveryField)
{
    ASSERT_TRUE(write("out"));
    const auto copy = must(newBook(path("copy.steelyard"), m_clock));
    const auto read = readInto(*copy, "out");
    ASSERT_TRUE(read) << qPrintable(read.error().what + read.error().detail);
    EXPECT_EQ(must(dumpContent(copy->database())), must(dumpContent(m_book->database())));
}

TEST_F(ExportedBook, CountsWhatItWrote)
{
    const auto report = must(write("out"));
    EXPECT_EQ(report.athletes, 2);
    EXPECT_EQ(report.sets, 20);  // two athletes, two days, six sets less a removed one
    EXPECT_EQ(report.files.size(), 3);
    for (const QString& file : report.files) EXPECT_TRUE(QFile::exists(file)) << qPrintable(file);
}

TEST_F(ExportedBook, WritesOneAthleteWithoutAWordOfAnyOther)
{
    ASSERT_TRUE(write("one", athlete(test::kFirstLifter)));
    for (const char* file : {"one/logbook.csv", "one/book.json", "one/README.txt"}) {
        EXPECT_TRUE(bytes(file).contains("cmd()")) << file;
        EXPECT_FALSE(bytes(file).contains("Lifter")) << file;
    }
    EXPECT_FALSE(bytes("one/book.json").contains("of_a_newer_program"));
}

TEST_F(ExportedBook, OneAthletesRecordComesBackWhole)
{
    ASSERT_TRUE(write("one", athlete(test::kSecondLifter)));
    const auto copy = must(Book::create(path("copy.steelyard"), m_clock));
    const auto read = readInto(*copy, "one");
    ASSERT_TRUE(read) << qPrintable(read.error().what);
    ASSERT_TRUE(exportBook(copy->database(), path("again"), std::nullopt, {}));
    EXPECT_EQ(bytes("again/logbook.csv"), bytes("one/logbook.csv"));
    auto again = QJsonDocument::fromJson(bytes("again/book.json")).object();
    EXPECT_TRUE(again.take(QStringLiteral("rule_settings")).toObject().isEmpty());
    EXPECT_EQ(again, QJsonDocument::fromJson(bytes("one/book.json")).object());
}

TEST_F(ExportedBook, LeavesOutOfTheLibraryWhatTheAthleteDoesNotUse)
{
    {
        auto tx = must(Transaction::begin(m_book->database()));
        must(m_book->library().insert(tx, Grip{QStringLiteral("grip of nobody"), {}, {}, {}}));
        must(tx.commit());
    }
    ASSERT_TRUE(write("one", athlete(test::kFirstLifter)));
    ASSERT_TRUE(write("all"));
    EXPECT_FALSE(bytes("one/book.json").contains("grip of nobody"));
    EXPECT_TRUE(bytes("all/book.json").contains("grip of nobody"));
}

TEST_F(ExportedBook, RefusesARecordThatHangsOnSomebodyElsesStandard)
{
    const Id<Athlete> first = athlete(test::kFirstLifter);
    const Id<Athlete> second = athlete(test::kSecondLifter);
    auto stolen = must(m_book->logbook().lines(second)).front().value;
    stolen.athlete = first;
    {
        auto tx = must(Transaction::begin(m_book->database()));
        must(m_book->logbook().line(tx, stolen));
        must(tx.commit());
    }
    const auto written = write("one", first);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Storage);
    EXPECT_FALSE(written.error().what.contains(QStringLiteral("Lifter")));
    EXPECT_FALSE(QFile::exists(path("one")));
}

TEST_F(ExportedBook, KeepsNumbersAsTheyWereTypedAndGuardsText)
{
    ASSERT_TRUE(write("out"));
    const QByteArray csv = bytes("out/logbook.csv");
    EXPECT_TRUE(
        csv.startsWith("date,athlete,exercise,variant,grip,standard,load,unit,set,reps,off,failed,rir,rpe,marks,"
                       "lowering_s,kind,lean_deg,tension,burn,pump,gave_out,discomfort_elbow,"));
    EXPECT_TRUE(csv.contains(",92.50,lb,2,"));
    EXPECT_TRUE(csv.contains("2026-02-02,\"''x \"\"Two\"\", Lifter\","));
    EXPECT_TRUE(csv.contains(",'=cmd() "));
    EXPECT_FALSE(csv.contains(",=cmd"));
    EXPECT_TRUE(csv.contains(",'-corrected\n"));
}

// Mark-up, formulas, quotes, place holders, directions and joiners: whatever a name may be, the table carries it and no spreadsheet
// runs it. What a name loses when it is stored (core/base/text.h), it has lost before.
TEST_F(ExportedBook, CarriesHostileNamesAsTheyAreStored)
{
    const QStringList hostile{QStringLiteral("<b>x"),
                              QStringLiteral("<img src=file:///etc/passwd>"),
                              QStringLiteral("&lt;i&gt; &amp;"),
                              QStringLiteral("%1 %n %2"),
                              QStringLiteral("=HYPERLINK(\"http://x\",\"y\")"),
                              QStringLiteral("+1+1"),
                              QStringLiteral("-2+3"),
                              QStringLiteral("@SUM(A1)"),
                              QStringLiteral("'=1"),
                              QStringLiteral("\"; rm"),
                              QStringLiteral("a;b,c\td"),
                              QStringLiteral("\u202Etxt.exe"),
                              QStringLiteral("zero\u200Bwidth\u2066x\u2069"),
                              QStringLiteral("line\nbreak\rreturn"),
                              QStringLiteral("e\u0301"),
                              QStringLiteral("\U0001F3CB lifter"),
                              QString(kMaxNameLength, u'W')};
    SetEntry set;
    set.load = *Load::parse(u"40", MassUnit::kg);
    set.reps = 8;
    LiftLine line = must(m_book->logbook().lines(athlete(test::kSecondLifter))).front().value;
    for (const Row<RepStandard>& standard : must(m_book->library().read()).standards)
        if (standard.value.variant == line.variant && !standard.value.athlete) line.standard = standard.id;
    for (const QString& name : hostile) {
        Athlete lifter;
        lifter.name = cleanName(name);
        must(m_book->history().perform(addAthlete(lifter)));
        line.athlete = athlete(cleanName(name));
        set.note = cleanNote(name);
        must(m_book->history().perform(addSet(line, m_clock.today(), set)));
    }
    must(write("out"));
    const auto copy = must(newBook(path("copy.steelyard"), m_clock));
    const auto read = importExport(*copy, path("out"), {});
    ASSERT_TRUE(read) << qPrintable(read.error().what + read.error().detail);
    EXPECT_EQ(must(dumpContent(copy->database())), must(dumpContent(m_book->database())));
    // Cell by cell, as a spreadsheet would see them.
    for (const QByteArray& row : bytes("out/logbook.csv").split('\n'))
        for (const QByteArray& cell : row.split(',')) {
            const QByteArray inside = cell.startsWith('"') ? cell.mid(1) : cell;
            if (inside.isEmpty() || !QByteArrayView("=+-@\t\r").contains(inside[0])) continue;
            bool number = false;
            inside.toDouble(&number);
            EXPECT_TRUE(number) << cell.toStdString();
        }
}

TEST_F(ExportedBook, ReplacesItsOwnFilesAndLeavesOthersAlone)
{
    ASSERT_TRUE(QDir().mkpath(path("out")));
    for (const char* name : {"out/logbook.csv", "out/other.txt"}) {
        QFile file(path(name));
        ASSERT_TRUE(file.open(QIODevice::WriteOnly));
        file.write("mine");
    }
    ASSERT_TRUE(write("out"));
    EXPECT_TRUE(bytes("out/logbook.csv").startsWith("date,"));
    EXPECT_EQ(bytes("out/other.txt"), "mine");
    EXPECT_EQ(QDir(path("out")).entryList(QDir::Files).size(), 4);
}

TEST_F(ExportedBook, SaysWhichFolderIsMissing)
{
    const auto written = write("no/such/folder");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(written.error().what.contains(path("no/such")));
}

TEST_F(ExportedBook, RefusesAFileInPlaceOfAFolder)
{
    const auto written = write("full.steelyard");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Invalid);
}

TEST_F(ExportedBook, SaysSoWhenAFileCannotBeWrittenAndReplacesNone)
{
    // A folder in the way of book.json fails for everybody, the superuser included.
    ASSERT_TRUE(QDir().mkpath(path("out/book.json")));
    const auto written = write("out");
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Storage);
    EXPECT_TRUE(written.error().what.contains(path("out/book.json")));
    EXPECT_FALSE(QFile::exists(path("out/logbook.csv")));
}

TEST_F(ExportedBook, StopsWhenAskedAndLeavesNothing)
{
    std::stop_source stop;
    stop.request_stop();
    const auto written = write("out", std::nullopt, Progress({}, stop.get_token()));
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().code, ErrorCode::Cancelled);
    EXPECT_TRUE(QDir(path("out")).isEmpty());
    EXPECT_TRUE(write("out"));  // the snapshot was let go
}

TEST_F(ExportedBook, IsRefusedByABookThatHasAthletes)
{
    ASSERT_TRUE(write("out"));
    const QByteArray before = must(dumpContent(m_book->database()));
    const auto read = readInto(*m_book, "out");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().code, ErrorCode::Invalid);
    EXPECT_EQ(must(dumpContent(m_book->database())), before);
}

struct Damage {
    const char* from;
    const char* to;
    const char* named;  // in the refusal
    ErrorCode code = ErrorCode::Invalid;
};

TEST_F(ExportedBook, NamesThePlaceOfADamagedValueAndChangesNothing)
{
    const Damage damages[] = {
        {"\"format\": 1", "\"format\": 2", "format 2", ErrorCode::NewerFormat},
        {"\"mass\": \"82.0 kg\"", "\"mass\": \"82 stone\"", "mass"},
        {"\"born\": \"1990-05-17\"", "\"born\": \"17 May\"", "born"},
        {"\"kind\": \"watch\"", "\"kind\": \"wait\"", "kind"},
        {"\"archived\": true", "\"archived\": 1", "archived"},
        {"\"archived\": true", "\"colour\": 1", "colour"},
        {"\"change\": \"removed\"", "\"change\": \"lost\"", "change"},
        {"\"now\": 2", "\"now\": 77", "now"},
        {"\"zz_target\": 1", "\"zz_nothing\": 1", "zz_nothing"},
        {"\"athletes\":", "athletes:", "byte"},
    };
    const auto copy = must(newBook(path("copy.steelyard"), m_clock));
    const QByteArray before = must(dumpContent(copy->database()));
    for (const Damage& damage : damages) {
        ASSERT_TRUE(write("out"));
        change("out/book.json", damage.from, damage.to);
        const auto read = readInto(*copy, "out");
        ASSERT_FALSE(read) << damage.to;
        EXPECT_EQ(read.error().code, damage.code) << damage.to;
        EXPECT_TRUE(read.error().what.contains(QString::fromLatin1(damage.named))) << qPrintable(read.error().what);
        EXPECT_EQ(must(dumpContent(copy->database())), before) << damage.to;
    }
}

TEST_F(ExportedBook, MissesAFileByName)
{
    ASSERT_TRUE(write("out"));
    ASSERT_TRUE(QFile::remove(path("out/logbook.csv")));
    const auto copy = must(newBook(path("copy.steelyard"), m_clock));
    const auto read = readInto(*copy, "out");
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().code, ErrorCode::NotFound);
    EXPECT_TRUE(read.error().what.contains(QStringLiteral("logbook.csv")));
}

TEST_F(ExportedBook, ReadsAnInventedClubBackWhole)
{
    const auto club = must(newBook(path("club.steelyard"), m_clock));
    SampleClubOptions options;
    options.athletes = 6;
    options.years = 1;
    options.lastDay = m_clock.today();
    must(fillSampleClub(*club, options, {}));
    must(exportBook(club->database(), path("club"), std::nullopt, {}));
    const auto copy = must(newBook(path("copy.steelyard"), m_clock));
    const auto read = readInto(*copy, "club");
    ASSERT_TRUE(read) << qPrintable(read.error().what);
    EXPECT_EQ(must(dumpContent(copy->database())), must(dumpContent(club->database())));
}

}  // namespace
}  // namespace steelyard
