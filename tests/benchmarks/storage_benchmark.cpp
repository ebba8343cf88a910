// Writing and reading the logbook against the plain SQLite C interface doing the same, in one run: ratios, not seconds.
//
//   storage_benchmark [sets, default 400000]
//
// The plain side prepares the same statements once, binds the same columns and reads every column back. Both sides use the
// same schema, the same pragmas and one transaction.
#include "core/book/book.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/statement.h"
#include "tests/benchmarks/benchmark_support.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTemporaryDir>

#include <cstdio>
#include <cstring>
#include <limits>

namespace steelyard {
namespace {

using benchmark::check;
using benchmark::must;
using benchmark::Stopwatch;

struct Shape {
    int athletes = 40;
    int sessionsEach = 0;
    static constexpr int kLines = 12;
    // A session: three sets each on four of the lines.
    static constexpr int kSets = 12;
    static std::size_t line(int session, int set) { return static_cast<std::size_t>((4 * session + set / 3) % kLines); }
    [[nodiscard]] int sets() const { return athletes * sessionsEach * kSets; }
};

SetEntry setNumber(int i)
{
    SetEntry set;
    set.number = i % Shape::kSets + 1;
    set.load = Load::make(Decimal::fromScaled(2000 + 25 * (i % 300), 2), MassUnit::kg).value();
    set.reps = 5 + i % 12;
    if (i % 4 != 0) set.off = i % 7 == 0 ? 1 : 0;
    if (set.off.value_or(0) > 0) set.marks.set(Mark::Swing, 1);
    if (i % 9 != 0) set.effort = Effort{Effort::Scale::Rir, Decimal(i % 4)};
    if (i % 50 == 0) set.note = QStringLiteral("felt heavy today");
    return set;
}

// A book with its athletes and lines, but without sessions.
struct Ground {
    FixedClock clock{QDate(2026, 11, 25)};
    std::unique_ptr<Book> book;
    std::vector<Id<Athlete>> athletes;
    std::vector<std::vector<Id<LiftLine>>> lines;

    Ground(const QString& path, const Shape& shape) : book(must(Book::create(path, clock)))
    {
        auto tx = must(Transaction::begin(book->database()));
        const auto library = book->library();
        const auto exercise = must(library.insert(tx, Exercise{QStringLiteral("Lift"), {}, false}));
        const auto grip = must(library.insert(tx, Grip{QStringLiteral("any"), {}, {}, {}}));
        std::vector<std::pair<Id<Variant>, Id<RepStandard>>> variants;
        for (int i = 0; i < Shape::kLines; ++i) {
            Variant variant{.exercise = exercise};
            variant.name = QStringLiteral("variant %1").arg(i);
            const auto id = must(library.insert(tx, variant));
            RepStandard standard{.variant = id};
            standard.name = QStringLiteral("strict");
            variants.emplace_back(id, must(library.insert(tx, standard)));
        }
        for (int i = 0; i < shape.athletes; ++i) {
            Athlete athlete;
            athlete.name = QStringLiteral("Lifter %1").arg(i);
            athletes.push_back(must(book->athletes().insert(tx, athlete)));
            auto& own = lines.emplace_back();
            for (const auto& [variant, standard] : variants)
                own.push_back(must(book->logbook().line(tx, {athletes.back(), variant, grip, standard})));
        }
        must(tx.commit());
    }
};

double ours(Ground& ground, const Shape& shape)
{
    const Stopwatch watch;
    auto tx = must(Transaction::begin(ground.book->database()));
    const auto logbook = ground.book->logbook();
    int i = 0;
    for (std::size_t a = 0; a < ground.athletes.size(); ++a)
        for (int s = 0; s < shape.sessionsEach; ++s) {
            const auto session = must(logbook.session(tx, ground.athletes[a], QDate(2020, 1, 1).addDays(2 * s)));
            for (int k = 0; k < Shape::kSets; ++k, ++i)
                must(logbook.insert(tx, ground.athletes[a],
                                    {session, ground.lines[a][Shape::line(s, k)], k + 1, setNumber(i)}));
        }
    must(tx.commit());
    return watch.seconds();
}

void bindText(sqlite3_stmt* st, int at, const char* text)
{
    sqlite3_bind_text(st, at, text, -1, SQLITE_TRANSIENT);
}

void bindPlainSet(sqlite3_stmt* st, int i)
{
    char load[16];
    const int hundredths = 2000 + 25 * (i % 300);
    std::snprintf(load, sizeof load, "%d.%02d", hundredths / 100, hundredths % 100);
    sqlite3_bind_int(st, 4, i % Shape::kSets + 1);
    bindText(st, 5, load);
    bindText(st, 6, "kg");
    sqlite3_bind_int(st, 7, 5 + i % 12);
    if (i % 4 != 0) sqlite3_bind_int(st, 8, i % 7 == 0 ? 1 : 0);
    sqlite3_bind_int(st, 9, 0);
    if (i % 9 != 0) {
        const char rir[2] = {static_cast<char>('0' + i % 4), 0};
        bindText(st, 10, rir);
    }
    if (i % 4 != 0 && i % 7 == 0) bindText(st, 12, "swing:1");
    bindText(st, 14, "work");
    if (i % 50 == 0) bindText(st, 15, "felt heavy today");
}

double plain(sqlite3* db, const Ground& ground, const Shape& shape)
{
    const Stopwatch watch;
    check(sqlite3_exec(db, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), db);
    sqlite3_stmt* find = nullptr;
    sqlite3_stmt* session = nullptr;
    sqlite3_stmt* st = nullptr;
    check(sqlite3_prepare_v2(db, "SELECT id FROM session WHERE athlete_id = ?1 AND date = ?2", -1, &find, nullptr), db);
    check(sqlite3_prepare_v2(db, "INSERT INTO session (athlete_id, date) VALUES (?1, ?2)", -1, &session, nullptr), db);
    check(sqlite3_prepare_v2(
              db,
              "INSERT INTO set_entry (session_id, line_id, position, number, load, unit, reps, off, failed, "
              "rir, rpe, marks, lowering_s, kind, note, lean_deg) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, "
              "?10, ?11, ?12, ?13, ?14, ?15, ?16)",
              -1, &st, nullptr),
          db);
    int i = 0;
    for (std::size_t a = 0; a < ground.athletes.size(); ++a)
        for (int s = 0; s < shape.sessionsEach; ++s) {
            const QByteArray date = QDate(2020, 1, 1).addDays(2 * s).toString(Qt::ISODate).toLatin1();
            for (sqlite3_stmt* both : {find, session}) {
                sqlite3_bind_int64(both, 1, ground.athletes[a].value());
                bindText(both, 2, date.constData());
                check(sqlite3_step(both), db);
                sqlite3_reset(both);
            }
            const auto sessionId = sqlite3_last_insert_rowid(db);
            for (int k = 0; k < Shape::kSets; ++k, ++i) {
                sqlite3_clear_bindings(st);
                sqlite3_bind_int64(st, 1, sessionId);
                sqlite3_bind_int64(st, 2, ground.lines[a][Shape::line(s, k)].value());
                sqlite3_bind_int(st, 3, k + 1);
                bindPlainSet(st, i);
                check(sqlite3_step(st), db);
                sqlite3_reset(st);
            }
        }
    for (sqlite3_stmt* one : {find, session, st}) sqlite3_finalize(one);
    check(sqlite3_exec(db, "COMMIT", nullptr, nullptr, nullptr), db);
    return watch.seconds();
}

double readOurs(Ground& ground, qint64& sum)
{
    const Stopwatch watch;
    const auto library = must(ground.book->library().read());
    for (const auto athlete : ground.athletes) {
        const auto log = must(readAthleteLog(ground.book->database(), library, athlete));
        for (const auto& line : log.lines)
            for (const auto& exposure : line.exposures)
                for (const auto& set : exposure.sets) sum += set.set.reps;
    }
    return watch.seconds();
}

// The same rows in the same order, every column fetched into memory of the reader's own.
double readPlain(sqlite3* db, const Ground& ground, qint64& sum)
{
    const Stopwatch watch;
    sqlite3_stmt* st = nullptr;
    check(sqlite3_prepare_v2(
              db,
              "SELECT s.date, e.line_id, e.id, e.position, e.number, e.load, e.unit, e.reps, e.off, e.failed, "
              "e.rir, e.rpe, e.marks, e.lowering_s, e.kind, e.note, e.lean_deg FROM session s JOIN set_entry e ON "
              "e.session_id = s.id WHERE s.athlete_id = ?1 ORDER BY s.date, e.position",
              -1, &st, nullptr),
          db);
    char copy[4096];
    for (const auto athlete : ground.athletes) {
        sqlite3_bind_int64(st, 1, athlete.value());
        while (sqlite3_step(st) == SQLITE_ROW) {
            for (const int column : {0, 5, 6, 10, 11, 12, 13, 14, 15, 16})
                if (const auto* text = sqlite3_column_text(st, column))
                    std::memcpy(copy, text,
                                std::min<std::size_t>(sizeof copy,
                                                      static_cast<std::size_t>(sqlite3_column_bytes(st, column)) + 1));
            for (const int column : {1, 2, 3, 4, 8, 9}) sum += 0 * sqlite3_column_int64(st, column);
            sum += sqlite3_column_int(st, 7);
        }
        sqlite3_reset(st);
    }
    sqlite3_finalize(st);
    return watch.seconds();
}

int compare(int wanted)
{
    Shape shape;
    shape.sessionsEach = std::max(1, wanted / (shape.athletes * Shape::kSets));
    QTemporaryDir folder;
    Ground a(folder.filePath(QStringLiteral("ours.steelyard")), shape);
    Ground b(folder.filePath(QStringLiteral("plain.steelyard")), shape);
    const double write = ours(a, shape);
    const double writePlain = plain(b.book->database().handle(), b, shape);
    // The best of several in turn: both read a warm file, and a busy machine disturbs both alike.
    double read = std::numeric_limits<double>::infinity();
    double readBare = read;
    for (int run = 0; run < 7; ++run) {
        qint64 sum = 0;
        qint64 sumPlain = 0;
        read = std::min(read, readOurs(a, sum));
        readBare = std::min(readBare, readPlain(b.book->database().handle(), b, sumPlain));
        if (sum != sumPlain) qFatal("the two sides read different sets");
    }
    std::printf("%d sets, one transaction\n", shape.sets());
    std::printf("%-34s %8s %8s %8s\n", "", "ours s", "plain s", "ratio");
    std::printf("%-34s %8.2f %8.2f %8.2f\n", "insert through the repository", write, writePlain, write / writePlain);
    std::printf("%-34s %8.2f %8.2f %8.2f\n", "read every record as values", read, readBare, read / readBare);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    return steelyard::benchmark::howMany(argc, argv, 400'000, steelyard::compare);
}
