// The roster that benchmarks look at: an invented club in a book on disk, made when it is not there yet.
#pragma once

#include "core/exchange/new_book.h"
#include "core/samples/sample_club.h"
#include "tests/benchmarks/benchmark_support.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QTemporaryDir>

namespace steelyard::benchmark {

// The day on which every benchmark's club is looked at.
inline QDate clubDay()
{
    return {2026, 11, 25};
}

// 200 athletes over five years come to about two million sets.
inline void needClub(const QString& path, int athletes = 200, int years = 5)
{
    if (QFile::exists(path)) return;
    const FixedClock clock(clubDay());
    const auto book = must(newBook(path, clock));
    SampleClubOptions options{.athletes = athletes, .years = years};
    options.lastDay = clubDay();
    must(fillSampleClub(*book, options, Progress()));
}

// [BOOK, kept; made when it isn't there] [athletes, default 200], as the benchmarks of a whole club are called.
template <class Compare>
int onClub(Compare compare)
{
    const QStringList words = QCoreApplication::arguments();
    const QTemporaryDir folder;
    const QString path = words.value(1, folder.filePath(QStringLiteral("club.steelyard")));
    return compare(path, words.size() > 2 ? words[2].toInt() : 200);
}

}  // namespace steelyard::benchmark
