// A whole logbook file into a new book, against the plain SQLite C interface inserting the same rows, in one run.
//
//   import_benchmark [rows, default 200000]
//   import_benchmark --peak FILE [BOOK]        what the kernel says a process needed at most: reading, or importing
//
// The file is what export writes of a sample club. The plain side has every value of every row ready in memory and only
// inserts: sessions, lift lines, sets and ratings, with the same schema, the same pragmas and one transaction. So the row
// "write" compares like with like; "whole import" also holds the reading of the text, "change recorder" what undo costs.
#include "core/exchange/logbook_export.h"
#include "core/exchange/logbook_import.h"
#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "core/storage/statement.h"
#include "tests/benchmarks/benchmark_support.h"

#include <QtCore/QBuffer>
#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QProcess>
#include <QtCore/QTemporaryDir>

#include <array>
#include <atomic>
#include <chrono>
#include <cstdio>
#include <limits>
#include <thread>

namespace steelyard {
namespace {

using benchmark::check;
using benchmark::must;
using benchmark::Stopwatch;

// A club's logbook as text with that many rows, or a few less when the club is too small.
QByteArray clubLogbook(const QString& path, const Clock& clock, int rows)
{
    constexpr int rowsOfALifterInAYear = 1400;
    SampleClubOptions options{.athletes = std::clamp(rows / rowsOfALifterInAYear / 3, 1, 500), .years = 5};
    options.lastDay = clock.today();
    const auto book = must(newBook(path, clock));
    must(fillSampleClub(*book, options, Progress()));
    QBuffer buffer;
    buffer.open(QIODevice::WriteOnly);
    LogbookExport log(book->database(), buffer);
    must(log.writeHeader());
    for (const auto& athlete : must(book->athletes().all())) must(log.write(athlete, Progress()));
    must(log.finish());
    QByteArray text = buffer.data();
    qsizetype end = 0;
    for (int line = 0; line <= rows && end >= 0; ++line) end = text.indexOf('\n', end) + 1;
    if (end > 0) text.truncate(end);
    return text;
}

struct Times {
    double parse = std::numeric_limits<double>::infinity();
    double write = std::numeric_limits<double>::infinity();
    int rows = 0;
    qint64 changeset = 0;

    void keepBest(const Times& other)
    {
        parse = std::min(parse, other.parse);
        write = std::min(write, other.write);
        rows = other.rows;
        changeset = other.changeset;
    }
};

int readThrough(const QByteArray& text, const Clock& clock)
{
    const auto reader = must(LogbookReader::open(text, LogbookMapping{}, clock.today()));
    while (must(reader->next()))
        if (!reader->problems().empty()) qFatal("%s", qUtf8Printable(toText(reader->problems().front())));
    return reader->rowsRead();
}

Times ours(const QString& path, const Clock& clock, const QByteArray& text, bool recorded)
{
    const auto book = must(newBook(path, clock));
    Times times;
    const Stopwatch parsing;
    times.rows = readThrough(text, clock);
    times.parse = parsing.seconds();
    const Stopwatch whole;
    const auto reader = must(LogbookReader::open(text, LogbookMapping{}, clock.today()));
    if (recorded) {
        must(importLogbook(book->database(), *reader, {}, Progress()));
        times.changeset = must(book->database().integer("SELECT sum(length(changeset)) FROM edit_step"));
    } else {
        auto tx = must(Transaction::begin(book->database()));
        ImportReport report;
        must(fillLogbook(tx, *reader, report, Progress()));
        must(tx.commit());
    }
    // Rows are written as they are read.
    times.write = whole.seconds() - times.parse;
    return times;
}

// How long it takes at most from asking to stop until the import has given up and taken everything back, asked at nine
// moments of its course; what is freed afterwards holds nobody up. After the writing has been confirmed to the disk it can't be stopped any more.
double slowestStop(const QString& path, const Clock& clock, const QByteArray& text, double wholeSeconds)
{
    const auto book = must(newBook(path, clock));
    double slowest = 0;
    for (int tenth = 1; tenth < 10; ++tenth) {
        std::stop_source stop;
        std::atomic<double> asked = 0;
        const Stopwatch watch;
        const std::jthread hand([&] {
            std::this_thread::sleep_for(std::chrono::duration<double>(wholeSeconds * tenth / 10));
            asked = watch.seconds();
            stop.request_stop();
        });
        const Progress progress({}, stop.get_token());
        const auto reader = must(LogbookReader::open(text, LogbookMapping{}, clock.today()));
        ImportLeftovers leftovers;
        if (importLogbook(book->database(), *reader, {.leftovers = &leftovers}, progress)) break;
        slowest = std::max(slowest, watch.seconds() - asked);
    }
    return slowest;
}

// Every value of a table, and the statement that inserts a row of it.
class TableRows {
public:
    TableRows(sqlite3* db, const char* table)
    {
        sqlite3_stmt* st = nullptr;
        check(sqlite3_prepare_v2(db, ("SELECT * FROM " + QByteArray(table) + " ORDER BY id").constData(), -1, &st,
                                 nullptr),
              db);
        m_columns = sqlite3_column_count(st);
        while (sqlite3_step(st) == SQLITE_ROW)
            for (int i = 0; i < m_columns; ++i) m_values.push_back(sqlite3_value_dup(sqlite3_column_value(st, i)));
        check(sqlite3_finalize(st), db);
        m_insert = "INSERT INTO " + QByteArray(table) + " VALUES (?" + QByteArray(", ?").repeated(m_columns - 1) + ")";
    }
    ~TableRows()
    {
        for (sqlite3_value* value : m_values) sqlite3_value_free(value);
    }
    TableRows(TableRows&& other) noexcept
        : m_values(std::exchange(other.m_values, {})), m_columns(other.m_columns), m_insert(other.m_insert)
    {}
    TableRows& operator=(TableRows&&) = delete;
    TableRows(const TableRows&) = delete;

    void insertInto(sqlite3* db) const
    {
        sqlite3_stmt* st = nullptr;
        check(sqlite3_prepare_v2(db, m_insert.constData(), -1, &st, nullptr), db);
        for (std::size_t at = 0; at < m_values.size(); at += static_cast<std::size_t>(m_columns)) {
            for (int i = 0; i < m_columns; ++i)
                sqlite3_bind_value(st, i + 1, m_values[at + static_cast<std::size_t>(i)]);
            check(sqlite3_step(st), db);
            sqlite3_reset(st);
        }
        check(sqlite3_finalize(st), db);
    }

private:
    std::vector<sqlite3_value*> m_values;
    int m_columns = 0;
    QByteArray m_insert;
};

// A copy of an imported book without its log, and the log put back by plain inserts.
double plain(const QString& imported, const QString& path, const Clock& clock)
{
    constexpr std::array tables{"lift_line", "session", "set_entry", "exercise_rating"};
    if (!QFile::copy(imported, path)) qFatal("the book can't be copied");
    const auto book = must(Book::open(path, clock));
    sqlite3* db = book->database().handle();
    std::vector<TableRows> rows;
    for (const char* table : tables) rows.emplace_back(db, table);
    for (const char* table : {"exercise_rating", "set_entry", "session", "lift_line"})
        must(book->database().execute(("DELETE FROM " + QByteArray(table)).constData()));
    must(book->database().execute("VACUUM; PRAGMA wal_checkpoint(TRUNCATE)"));
    const Stopwatch writing;
    check(sqlite3_exec(db, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), db);
    for (const TableRows& table : rows) table.insertInto(db);
    check(sqlite3_exec(db, "COMMIT", nullptr, nullptr, nullptr), db);
    return writing.seconds();
}

void print(const char* what, double seconds, double plainSeconds)
{
    std::printf("%-44s %8.2f %8.2f %8.2f\n", what, seconds, plainSeconds, seconds / plainSeconds);
}

// The most memory this process had at once, in bytes.
double peakMemory()
{
    QFile status(QStringLiteral("/proc/self/status"));
    if (!status.open(QIODevice::ReadOnly)) return 0;
    for (const QByteArray& line : status.readAll().split('\n'))
        if (line.startsWith("VmHWM:")) return line.simplified().split(' ').value(1).toDouble() * 1024;
    return 0;
}

// In a process of its own, which has nothing else in memory. Prints the peak, and how far it is above the start.
int sayPeak(const QString& file, const QString& book)
{
    const FixedClock clock(QDate(2026, 11, 25));
    const double before = peakMemory();
    QFile log(file);
    if (!log.open(QIODevice::ReadOnly)) qFatal("the file can't be read");
    QByteArray bytes = log.readAll();
    if (book.isEmpty()) {
        (void)readThrough(bytes, clock);
    } else {
        const auto into = must(newBook(book, clock));
        const auto reader = must(LogbookReader::open(std::move(bytes), LogbookMapping{}, clock.today()));
        (void)must(importLogbook(into->database(), *reader, {}, Progress()));
    }
    std::printf("%.0f\n", peakMemory() - before);
    return 0;
}

double peakOf(const QStringList& arguments)
{
    QProcess process;
    process.start(QCoreApplication::applicationFilePath(), QStringList{QStringLiteral("--peak")} + arguments);
    if (!process.waitForFinished(-1) || process.exitCode() != 0) qFatal("the measuring process failed");
    return process.readAllStandardOutput().trimmed().toDouble();
}

void printPeaks(const QTemporaryDir& folder, const QByteArray& text)
{
    const QString path = folder.filePath(QStringLiteral("peak.csv"));
    QFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size()) qFatal("the file can't be written");
    file.close();
    const auto size = static_cast<double>(text.size());
    const double reading = peakOf({path});
    const double whole = peakOf({path, folder.filePath(QStringLiteral("peak.steelyard"))});
    std::printf("%-44s %8s %8s\n", "most memory, file included", "MB", "of file");
    std::printf("%-44s %8.1f %8.2f\n", "reading", reading / 1e6, reading / size);
    std::printf("%-44s %8.1f %8.2f\n", "whole import, with the change recorder", whole / 1e6, whole / size);
}

int compare(int wanted)
{
    const FixedClock clock(QDate(2026, 11, 25));
    const QTemporaryDir folder;
    const QByteArray text = clubLogbook(folder.filePath(QStringLiteral("club.steelyard")), clock, wanted);
    Times bare;
    Times whole;
    double inserts = std::numeric_limits<double>::infinity();
    // The best of three in turn, since a busy machine disturbs all alike.
    for (int run = 0; run < 3; ++run) {
        const auto book = [&](const char* name) {
            return folder.filePath(QStringLiteral("%1-%2").arg(run).arg(QLatin1StringView(name)));
        };
        bare.keepBest(ours(book("bare"), clock, text, false));
        whole.keepBest(ours(book("imported"), clock, text, true));
        inserts = std::min(inserts, plain(book("imported"), book("plain"), clock));
    }
    std::printf("%d rows, %.1f MB of text, change record of %.1f MB\n", whole.rows,
                static_cast<double>(text.size()) / 1e6, static_cast<double>(whole.changeset) / 1e6);
    std::printf("%-44s %8s %8s %8s\n", "", "ours s", "plain s", "ratio");
    print("write, without the change recorder", bare.write, inserts);
    print("write, with the change recorder", whole.write, inserts);
    print("change recorder alone", whole.write - bare.write, inserts);
    print("reading the text", whole.parse, inserts);
    print("whole import", whole.parse + whole.write, inserts);
    const double stop =
        slowestStop(folder.filePath(QStringLiteral("stop.steelyard")), clock, text, whole.parse + whole.write);
    std::printf("longest wait after asking to stop: %.0f ms\n", 1000 * stop);
    printPeaks(folder, text);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    if (argc > 2 && QByteArray(argv[1]) == "--peak") {
        steelyard::keepFreedMemory();
        const QCoreApplication app(argc, argv);
        return steelyard::sayPeak(QString::fromLocal8Bit(argv[2]),
                                  argc > 3 ? QString::fromLocal8Bit(argv[3]) : QString());
    }
    return steelyard::benchmark::howMany(argc, argv, 200'000, steelyard::compare);
}
