// What every benchmark needs: results that must succeed, plain SQLite calls that must succeed, a stopwatch.
#pragma once

#include "core/base/memory.h"
#include "core/base/result.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QElapsedTimer>

#include <sqlite3.h>

#include <ctime>

namespace steelyard::benchmark {

template <class T>
T must(Result<T> result)
{
    if (!result) qFatal("%s %s", qUtf8Printable(result.error().what), qUtf8Printable(result.error().detail));
    if constexpr (!std::is_void_v<T>) return std::move(*result);
}

inline void check(int code, sqlite3* db)
{
    if (code != SQLITE_OK && code != SQLITE_DONE && code != SQLITE_ROW) qFatal("%s", sqlite3_errmsg(db));
}

// Wall clock, and the processor time of all threads, which a busy machine changes less.
class Stopwatch {
public:
    Stopwatch() { m_timer.start(); }
    [[nodiscard]] double seconds() const { return static_cast<double>(m_timer.nsecsElapsed()) / 1e9; }

    [[nodiscard]] double processorSeconds() const
    {
        return static_cast<double>(std::clock() - m_clock) / CLOCKS_PER_SEC;
    }

private:
    QElapsedTimer m_timer;
    std::clock_t m_clock = std::clock();
};

// A benchmark called with how many.
template <class Compare>
int howMany(int argc, char** argv, int usual, Compare compare)
{
    keepFreedMemory();  // as every program does
    const QCoreApplication app(argc, argv);
    return compare(argc > 1 ? QByteArray(argv[1]).toInt() : usual);
}

}  // namespace steelyard::benchmark
