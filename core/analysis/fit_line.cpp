#include "core/analysis/fit_line.h"

#include <algorithm>
#include <atomic>
#include <cmath>
#include <limits>
#include <thread>

namespace steelyard {
namespace {

LineRecord partOf(const LineRecord& record, FitSpan span)
{
    LineRecord part{record.id,      record.line, record.key,      record.exercise,
                    record.variant, record.grip, record.standard, {}};
    for (const Exposure& exposure : record.exposures)
        if (exposure.date >= span.first && exposure.date <= span.last) part.exposures.push_back(exposure);
    return part;
}

double logLikelihoodAs(Experience experience, const FitLine& line, const ReadingParameters& parameters)
{
    PreciseRegimeFilter filter(parameters.filter, parameters.paces[static_cast<std::size_t>(experience)], 1.0);
    std::optional<qint64> week;
    for (const FitSession& session : line.sessions) {
        for (qint64 at = week.value_or(session.week); at < session.week; ++at) filter.startWeek();
        week = session.week;
        filter.session(session.day, session.sets);
    }
    return filter.logLikelihood();
}

double logLikelihoodOfLine(const FitLine& line, const ReadingParameters& parameters)
{
    if (line.sessions.empty()) return 0;
    if (line.experience) return logLikelihoodAs(*line.experience, line, parameters);
    std::array<double, 3> each{};
    for (const auto& row : EnumText<Experience>::table) {
        const auto at = static_cast<std::size_t>(row.value);
        each[at] = std::log(parameters.experiencePrior[at]) + logLikelihoodAs(row.value, line, parameters);
    }
    const double most = *std::ranges::max_element(each);
    double sum = 0;
    for (const double one : each) sum += std::exp(one - most);
    return most + std::log(sum);
}

}  // namespace

int FitLine::weeksHeard() const
{
    int weeks = 0;
    qint64 last = std::numeric_limits<qint64>::min();
    for (const FitSession& session : sessions) {
        if (session.week != last) ++weeks;
        last = session.week;
    }
    return weeks;
}

int FitLine::setsHeard() const
{
    std::size_t sets = 0;
    for (const FitSession& session : sessions) sets += session.sets.size();
    return static_cast<int>(sets);
}

FitLine fitLineOf(const LineRecord& whole, const AthleteLog& log, const VerdictThresholds& thresholds, FitSpan span)
{
    const LineRecord record = partOf(whole, span);
    const auto counted = countExposures(record, log.bodyMass, span.last);
    // What is heard doesn't depend on the numbers of the filter nor on the experience: the fewest filters will do.
    const ReadingParameters parameters;
    LineTracker tracker(parameters, thresholds, Experience::Advanced);
    FitLine line{log.athlete.value.experience, {}};
    tracker.listen([&](const LineTracker&, const HeardSession& heard) {
        const QDate date = record.exposures[heard.exposure].date;
        const qint64 week = weekOf(date);
        const LineGates gates = gatesAt(counted, log.blocks, lastDayOfWeek(week), thresholds);
        if (gates.mixed || gates.effortUnknown) return;
        line.sessions.push_back({static_cast<double>(date.toJulianDay()), week, heard.observations});
    });
    tracker.advance(record, counted, log, span.last);
    return line;
}

std::optional<std::vector<double>> logLikelihoodOf(std::span<const FitLine> lines, const ReadingParameters& parameters,
                                                   int threads, const Progress& progress)
{
    // Asked of every session whether it is off: a shortcut that starts at some distance would make steps in the likelihood.
    ReadingParameters exact = parameters;
    exact.filter.offFrom = 0;
    std::vector<double> each(lines.size());
    std::atomic<std::size_t> next = 0;
    // Each answer has its own place, so that who took which line doesn't show.
    const auto takeTurns = [&] {
        while (!progress.cancelled()) {
            const std::size_t at = next.fetch_add(1);
            if (at >= lines.size()) return;
            each[at] = logLikelihoodOfLine(lines[at], exact);
        }
    };
    {
        std::vector<std::jthread> others;
        for (int i = 1; i < threads; ++i) others.emplace_back(takeTurns);
        takeTurns();
    }
    if (progress.cancelled()) return std::nullopt;
    return each;
}

}  // namespace steelyard
