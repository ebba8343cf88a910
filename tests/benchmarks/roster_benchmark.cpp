// The review of a whole roster: 200 athletes with five years of sessions, about two million sets.
//
//   roster_benchmark [BOOK, kept; made when it isn't there] [athletes, default 200]
//
// First in one thread, with the reading of the records and the judging of them timed apart, and against the plain SQLite C
// interface stepping through the same sets; then as the window does it, on every core. Before each the system is asked to
// forget the file.
#include "core/analysis/regime_engine.h"
#include "core/book/roster_review.h"
#include "core/storage/athlete_log_reader.h"
#include "core/storage/library_repository.h"
#include "core/storage/rule_setting_repository.h"
#include "tests/benchmarks/benchmark_club.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTemporaryDir>

#include <fcntl.h>
#include <unistd.h>

#include <cstdio>
#include <thread>

namespace steelyard {
namespace {

using benchmark::check;
using benchmark::must;
using benchmark::Stopwatch;

void forgetFile(const QString& path)
{
    const int file = ::open(QFile::encodeName(path).constData(), O_RDONLY);
    if (file < 0) qFatal("%s can't be opened", qUtf8Printable(path));
    ::fsync(file);
    static_cast<void>(::posix_fadvise(file, 0, 0, POSIX_FADV_DONTNEED));
    ::close(file);
}

struct Spent {
    double seconds = 0;
    double processor = 0;
    void add(const Stopwatch& watch)
    {
        seconds += watch.seconds();
        processor += watch.processorSeconds();
    }
};

struct OneThread {
    Spent reading;
    Spent judging;
    std::size_t flags = 0;
};

OneThread reviewAlone(const QString& path)
{
    forgetFile(path);
    OneThread spent;
    const Stopwatch opening;
    const auto db = must(Database::openReader(path));
    const Library library = must(LibraryRepository(*db).read());
    const RuleSettings settings = must(RuleSettingRepository(*db).all());
    const RegimeEngine engine;
    spent.reading.add(opening);
    for (const auto& athlete : must(AthleteRepository(*db).all())) {
        if (athlete.value.archived) continue;
        const Stopwatch reading;
        const AthleteLog log = must(readAthleteLog(*db, library, athlete.id, benchmark::clubDay()));
        spent.reading.add(reading);
        const Stopwatch judging;
        spent.flags += reviewAthlete(log, engine, settings, benchmark::clubDay()).flags.size();
        spent.judging.add(judging);
    }
    return spent;
}

Spent stepPlainly(const QString& path, std::int64_t& sets)
{
    forgetFile(path);
    const Stopwatch stepping;
    const auto db = must(Database::openReader(path));
    sqlite3_stmt* athletes = nullptr;
    sqlite3_stmt* st = nullptr;
    check(sqlite3_prepare_v2(db->handle(), "SELECT id FROM athlete WHERE archived = 0", -1, &athletes, nullptr),
          db->handle());
    check(sqlite3_prepare_v2(db->handle(),
                             "SELECT s.date, e.* FROM session s JOIN set_entry e ON e.session_id = s.id "
                             "WHERE s.athlete_id = ?1 ORDER BY s.date, e.position",
                             -1, &st, nullptr),
          db->handle());
    while (sqlite3_step(athletes) == SQLITE_ROW) {
        sqlite3_bind_int64(st, 1, sqlite3_column_int64(athletes, 0));
        while (sqlite3_step(st) == SQLITE_ROW) ++sets;
        sqlite3_reset(st);
    }
    sqlite3_finalize(athletes);
    sqlite3_finalize(st);
    Spent spent;
    spent.add(stepping);
    return spent;
}

void print(const char* what, const Spent& spent, const Spent& plain)
{
    std::printf("%-44s %8.2f %8.2f %8.2f %8.2f\n", what, spent.seconds, spent.seconds / plain.seconds, spent.processor,
                spent.processor / plain.processor);
}

int compare(const QString& path, int athletes)
{
    benchmark::needClub(path, athletes);
    std::int64_t sets = 0;
    const Spent plain = stepPlainly(path, sets);
    const OneThread alone = reviewAlone(path);
    forgetFile(path);
    const Stopwatch together;
    std::size_t flags = 0;
    for (const AthleteReview& review : must(reviewRoster({path, benchmark::clubDay(), {}}, Progress())))
        flags += review.flags.size();
    Spent all;
    all.add(together);
    const auto somebody = must(AthleteRepository(*must(Database::openReader(path))).all()).front().id;
    Spent again;
    const Stopwatch edited;
    (void)must(reviewRoster({path, benchmark::clubDay(), {somebody}}, Progress()));
    again.add(edited);
    if (flags != alone.flags) qFatal("the two ways do not see the same flags");
    const Spent one{alone.reading.seconds + alone.judging.seconds, alone.reading.processor + alone.judging.processor};
    std::printf("%lld sets, %zu open flags\n", static_cast<long long>(sets), flags);
    std::printf("%-44s %8s %8s %8s %8s\n", "", "s", "ratio", "cpu s", "ratio");
    print("stepping through the sets, plain SQLite", plain, plain);
    print("one thread: reading the records", alone.reading, plain);
    print("one thread: judging them", alone.judging, plain);
    print("one thread: review", one, plain);
    print("every core: review", all, plain);
    // The window keeps the reviews and makes anew those that a commit touched.
    print("after an edit: the lifter it touched", again, plain);
    std::printf("one thread to %u cores: %.2f\n", std::thread::hardware_concurrency(), one.seconds / all.seconds);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();  // as every program does
    QCoreApplication app(argc, argv);
    return steelyard::benchmark::onClub(steelyard::compare);
}
