// Reads a simulated roster as the program reads a book and writes what it would have said at the end of every week, and
// what it expected of every first set: the input of table.py.
//
//   verdict_weeks ROSTER_DIR OUT_DIR [--unknown-experience] [--caution 0|1|2] [--ages N] [--trust SHARE]
//   verdict_weeks ROSTER_DIR OUT_DIR --only-time
//
// Nothing but log.csv speaks; params.csv gives the experience and the planned band, truth.csv the weeks to answer for.
#include "core/analysis/regime_engine.h"
#include "core/analysis/set_forecast.h"
#include "tests/benchmarks/benchmark_support.h"
#include "tests/support/log_builder.h"

#include <QtCore/QFile>
#include <QtCore/QString>
#include <QtCore/QTextStream>

#include <algorithm>
#include <array>
#include <atomic>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <map>
#include <thread>

namespace steelyard {
namespace {

using benchmark::Stopwatch;
using Fields = std::map<QString, QString>;

std::vector<Fields> readTable(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly)) {
        std::fprintf(stderr, "can't read %s\n", qPrintable(path));
        std::exit(1);
    }
    QTextStream stream(&file);
    const QStringList header = stream.readLine().split(u',');
    std::vector<Fields> rows;
    while (!stream.atEnd()) {
        const QStringList parts = stream.readLine().split(u',');
        if (parts.size() < header.size()) continue;
        Fields row;
        for (qsizetype i = 0; i < header.size(); ++i) row[header[i]] = parts[i];
        rows.push_back(std::move(row));
    }
    return rows;
}

QString keyOf(const Fields& row)
{
    return row.at(QStringLiteral("athlete")) + u',' + row.at(QStringLiteral("exercise")) + u','
           + row.at(QStringLiteral("variant")) + u',' + row.at(QStringLiteral("grip"));
}

SetEntry setOf(const Fields& row)
{
    const auto text = [&](const char* name) { return row.at(QString::fromLatin1(name)); };
    SetEntry set;
    set.number = text("set_no").toInt();
    set.load = Load::parse(text("load_kg"), MassUnit::kg).value_or(Load{});
    set.reps = text("reps").toInt();
    set.failed = text("partial_reps").toInt() > 0;
    if (!text("rir").isEmpty()) set.effort = Effort{Effort::Scale::Rir, Decimal::nearest(text("rir").toDouble(), 1)};
    const QString marks = text("marks");
    if (marks.contains(u'D')) set.kind = SetKind::Deload;
    const bool helped = marks.contains(u'S') || marks.contains(u'M') || marks.contains(u'E');
    set.off = helped ? set.reps : 0;
    return set;
}

struct Roster {
    std::vector<QString> keys;  // as in truth.csv
    std::map<QString, int> firstWeek;
    std::map<QString, AthleteLog> logs;  // one line each
};

constexpr int kWeeks = 52;

Roster readRoster(const QString& dir, bool unknownExperience)
{
    Roster roster;
    for (const Fields& row : readTable(dir + QStringLiteral("/truth.csv"))) {
        const QString key = keyOf(row);
        if (roster.firstWeek.emplace(key, row.at(QStringLiteral("week")).toInt()).second) roster.keys.push_back(key);
    }
    for (const Fields& row : readTable(dir + QStringLiteral("/params.csv"))) {
        AthleteLog log = testing_support::LogBuilder().line(row.at(QStringLiteral("exercise"))).build();
        log.athlete.value.experience = std::nullopt;
        if (!unknownExperience) log.athlete.value.experience = fromKey<Experience>(row.at(QStringLiteral("level")));
        log.lines.front().variant.value.band = {row.at(QStringLiteral("lo")).toInt(),
                                                row.at(QStringLiteral("hi")).toInt()};
        roster.logs.emplace(keyOf(row), std::move(log));
    }
    for (const Fields& row : readTable(dir + QStringLiteral("/log.csv"))) {
        const auto found = roster.logs.find(keyOf(row));
        if (found == roster.logs.end()) continue;
        auto& exposures = found->second.lines.front().exposures;
        const QDate date = QDate::fromString(row.at(QStringLiteral("date")), Qt::ISODate);
        if (exposures.empty() || exposures.back().date != date) exposures.push_back({date, {}, {}});
        exposures.back().sets.push_back({Id<SetEntry>(1), 0, setOf(row)});
    }
    return roster;
}

class Answers {
public:
    explicit Answers(const QString& dir)
        : m_weeks(dir + QStringLiteral("/weeks.csv")), m_forecasts(dir + QStringLiteral("/forecasts.csv"))
    {
        if (!m_weeks.open(QIODevice::WriteOnly) || !m_forecasts.open(QIODevice::WriteOnly)) {
            std::fprintf(stderr, "can't write into %s\n", qPrintable(dir));
            std::exit(1);
        }
        m_weeks.write("athlete,exercise,variant,grip,week,p_rising,p_flat,p_falling,verdict,reason,stall_weeks\n");
        m_forecasts.write(
            "athlete,exercise,variant,grip,week,date,predicted_reps,q025,q10,q25,q50,q75,q90,q975,actual_reps,lower_"
            "pit,"
            "upper_pit\n");
    }

    void week(const QString& key, qint64 week, const TrackedWeek* said)
    {
        QString line = key + u',' + QString::number(week) + u',';
        if (said)
            line += QStringLiteral("%1,%2,%3,%4,%5,%6")
                        .arg(said->chances.rising, 0, 'g', 10)
                        .arg(said->chances.flat, 0, 'g', 10)
                        .arg(said->chances.falling, 0, 'g', 10)
                        .arg(toText(said->verdict), QString::fromUtf16(said->reason))
                        .arg(said->weeksNotRising, 0, 'g', 6);
        else
            line += QStringLiteral(",,,cant_tell,too_few,");
        m_weeks.write(line.toUtf8() + '\n');
    }

    void forecast(const QString& key, qint64 week, QDate date, const SetForecast& forecast, double actual)
    {
        QString line = key + u',' + QString::number(week) + u',' + date.toString(Qt::ISODate) + u',';
        line += QString::number(forecast.reps(0.5), 'g', 8);
        for (const double p : {0.025, 0.1, 0.25, 0.5, 0.75, 0.9, 0.975})
            line += u',' + QString::number(forecast.reps(p), 'g', 8);
        line += u',' + QString::number(actual, 'g', 8);
        line += u',' + QString::number(forecast.cdf(zOfReps(std::max(0.0, actual - 0.5))), 'g', 8);
        line += u',' + QString::number(forecast.cdf(zOfReps(actual + 0.5)), 'g', 8);
        m_forecasts.write(line.toUtf8() + '\n');
    }

private:
    QFile m_weeks;
    QFile m_forecasts;
};

void answerFor(const QString& key, int firstWeek, const AthleteLog& log, const ReadingParameters& parameters,
               const VerdictThresholds& thresholds, Answers& answers)
{
    const QDate start(2024, 1, 1);
    const qint64 weekZero = weekOf(start);
    const QDate end = start.addDays(7 * kWeeks);
    const LineRecord& record = log.lines.front();
    const auto counted = countExposures(record, log.bodyMass, end);
    LineTracker tracker(parameters, thresholds, log.athlete.value.experience);
    tracker.listen([&](const LineTracker& before, const HeardSession& heard) {
        const Exposure& exposure = record.exposures[heard.exposure];
        const SetEntry& set = exposure.sets[heard.sets.front()].set;
        const RegimeObservation& said = heard.observations.front();
        if (!before.started() || heard.sets.front() != 0 || said.kind != ObservationKind::Exact || !reserveOf(set))
            return;
        answers.forecast(key, weekOf(exposure.date) - weekZero, exposure.date,
                         forecastSet(before, exposure.date, said.lnLoad, 1, said.repError), repsOfZ(said.z));
    });
    tracker.advance(record, counted, log, end);
    std::map<qint64, const TrackedWeek*> said;
    for (const TrackedWeek& week : tracker.weeks()) said[week.week - weekZero] = &week;
    for (qint64 week = firstWeek; week < kWeeks; ++week)
        answers.week(key, week, said.contains(week) ? said[week] : nullptr);
}

// Every line is read, on so many threads, nothing kept and nothing written.
void readLines(const Roster& roster, const ReadingParameters& parameters, const VerdictThresholds& thresholds,
               std::size_t threads)
{
    const QDate end = QDate(2024, 1, 1).addDays(7 * kWeeks);
    std::vector<const AthleteLog*> logs;
    for (const auto& [key, log] : roster.logs) logs.push_back(&log);
    std::atomic<std::size_t> next = 0;
    const auto takeTurns = [&] {
        for (std::size_t at = next.fetch_add(1); at < logs.size(); at = next.fetch_add(1)) {
            const AthleteLog& log = *logs[at];
            const LineRecord& record = log.lines.front();
            LineTracker tracker(parameters, thresholds, log.athlete.value.experience);
            tracker.advance(record, countExposures(record, log.bodyMass, end), log, end);
        }
    };
    std::vector<std::jthread> others;
    for (std::size_t i = 1; i < threads; ++i) others.emplace_back(takeTurns);
    takeTurns();
}

// What the NumPy filter of prototype.py is raced against: by the wall clock, the middle of several passes, of which the first
// also tidies up the memory that the roster's tables left.
void timeReading(const Roster& roster, const ReadingParameters& parameters, const VerdictThresholds& thresholds)
{
    constexpr std::size_t kPasses = 7;
    std::size_t sets = 0;
    for (const auto& [key, log] : roster.logs)
        for (const Exposure& exposure : log.lines.front().exposures) sets += exposure.sets.size();
    const std::size_t cores = std::max(1u, std::thread::hardware_concurrency());
    for (const std::size_t threads : {std::size_t{1}, cores}) {
        std::array<double, kPasses> seconds{};
        for (double& pass : seconds) {
            const Stopwatch watch;
            readLines(roster, parameters, thresholds, threads);
            pass = watch.seconds();
        }
        std::ranges::sort(seconds);
        std::fprintf(stderr, "reading: %.4f s for %zu sets on %zu core(s)\n", seconds[kPasses / 2], sets, threads);
    }
}

int run(int argc, char** argv)
{
    if (argc < 3) {
        std::fprintf(
            stderr,
            "usage: verdict_weeks ROSTER_DIR OUT_DIR [--unknown-experience] [--caution N] [--ages N] [--only-time]\n");
        return 2;
    }
    ReadingParameters parameters;
    VerdictThresholds thresholds;
    bool unknown = false;
    bool onlyTime = false;
    for (int i = 3; i < argc; ++i) {
        if (std::strcmp(argv[i], "--unknown-experience") == 0) unknown = true;
        if (std::strcmp(argv[i], "--only-time") == 0) onlyTime = true;
        if (std::strcmp(argv[i], "--caution") == 0 && i + 1 < argc)
            thresholds.caution = static_cast<Caution>(std::atoi(argv[++i]));
        else if (std::strcmp(argv[i], "--trust") == 0 && i + 1 < argc)
            parameters.experienceTrust.fill(std::atof(argv[++i]));
        else if (std::strcmp(argv[i], "--ages") == 0 && i + 1 < argc)
            parameters.filter.ages = std::atoi(argv[++i]);
    }
    const Roster roster = readRoster(QString::fromLocal8Bit(argv[1]), unknown);
    if (onlyTime) {
        timeReading(roster, parameters, thresholds);
        return 0;
    }
    Answers answers(QString::fromLocal8Bit(argv[2]));
    for (const QString& key : roster.keys)
        answerFor(key, roster.firstWeek.at(key), roster.logs.at(key), parameters, thresholds, answers);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    return steelyard::run(argc, argv);
}
