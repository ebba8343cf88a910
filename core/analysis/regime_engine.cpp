#include "core/analysis/regime_engine.h"

#include "core/analysis/common_fall.h"
#include "core/analysis/line_numbers.h"
#include "core/analysis/plain_trend.h"
#include "core/analysis/reading_words.h"
#include "core/analysis/set_target.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace steelyard {
namespace {

constexpr double kMostForecastReps = 50;

// Where heavier sets always came with more repetitions, load seems to cost nothing and a maximum has no bound: then there are
// no kilograms to say.
bool isSayable(double kg)
{
    return std::isfinite(kg) && std::abs(kg) <= Load::kMaxAmount;
}

bool isSayable(double kg, double low, double high)
{
    return isSayable(kg) && isSayable(low) && isSayable(high) && low < high;
}

// Shares over the recent weeks that are shown with every reading.
void addShares(LineReading& reading, std::span<const CountedExposure> counted, QDate asOf,
               const VerdictThresholds& limits)
{
    int sets = 0;
    int watched = 0;
    int reps = 0;
    int off = 0;
    for (const CountedExposure& exposure : counted) {
        if (exposure.point.date <= asOf.addDays(-7 * limits.windowMostWeeks)) continue;
        sets += exposure.point.workSets;
        watched += exposure.watchedSets;
        reps += exposure.point.reps;
        off += exposure.point.offReps;
    }
    if (sets > 0) reading.watchedShare = static_cast<double>(watched) / sets;
    if (reps > 0) reading.countedShare = 1.0 - static_cast<double>(off) / reps;
}

// A session's point on the chart lies where its best set that can speak exactly puts a single repetition of a fresh lifter.
void placePoints(LineReading& reading, const LineTracker& tracker, const LineRecord& record, const AthleteLog& log)
{
    const double elasticity = elasticityOf(tracker);
    const double fatigue = fatigueOf(tracker);
    const double single = zOfReps(1);
    SetContext context = tracker.contextAt(record, log, record.exposures.front().date);
    auto point = reading.points.begin();
    for (const Exposure& exposure : record.exposures) {
        while (point != reading.points.end() && point->date < exposure.date) ++point;
        if (point == reading.points.end()) return;
        if (point->date != exposure.date || !point->capacityKg) continue;
        context.bodyKg = heardBodyKg(record, log, exposure.date);
        std::optional<double> best;     // of sets that speak exactly, or between two bounds
        std::optional<double> bounded;  // of the others, at their bound: a point needs a place
        int number = 0;
        for (const LoggedSet& logged : exposure.sets) {
            if (logged.set.kind == SetKind::WarmUp) continue;
            const HeardSet heard = hearSet(logged.set, ++number, context);
            if (heard.count == 0) continue;
            const RegimeObservation& said = heard.said[0];
            const double z = heard.count == 1 ? said.z : 0.5 * (said.z + heard.said[1].z);
            const double ln = said.lnLoad + (z + fatigue * said.fatigue - single) / elasticity;
            const bool speaks = heard.count > 1 || said.kind == ObservationKind::Exact;
            std::optional<double>& most = speaks ? best : bounded;
            most = std::max(most.value_or(ln), ln);
        }
        if (!best) best = bounded;
        if (!best) continue;
        const double kg = std::exp(tracker.lnReference() + *best) - context.bodyKg;
        point->capacityKg = isSayable(kg) ? std::optional(kg) : std::nullopt;
    }
}

const CountedExposure* lastWorkingOf(std::span<const CountedExposure> counted)
{
    for (auto it = counted.rbegin(); it != counted.rend(); ++it)
        if (it->point.workSets > 0) return &*it;
    return nullptr;
}

std::optional<Forecast> nextSet(const LineTracker& tracker, std::span<const CountedExposure> counted,
                                const SetContext& context, QDate asOf)
{
    const CountedExposure* last = lastWorkingOf(counted);
    if (!last) return std::nullopt;
    const double moved = systemKg(context.loading, last->point.topLoad.kilograms(), context.bodyKg);
    if (!(moved > 0)) return std::nullopt;
    Forecast next;
    next.load = last->point.topLoad;
    next.repsInReserve = static_cast<int>(std::lround(tracker.usualReserve()));
    const QDate day = std::max(asOf, last->point.date.addDays(1));
    const SetForecast forecast =
        forecastStopped(tracker, day, std::log(moved) - tracker.lnReference(), 1, next.repsInReserve);
    const double kept = reserveReps(next.repsInReserve);
    const auto reps = [&](double probability) { return std::max(0.0, forecast.reps(probability) - kept); };
    next.repsMedian = reps(0.5);
    next.repsLow80 = reps(0.1);
    next.repsHigh80 = reps(0.9);
    if (next.repsMedian > kMostForecastReps) return std::nullopt;
    return next;
}

// The load moved is known, and so is the reserve behind it: kilograms may be said.
void addKilograms(LineReading& reading, const LineTracker& tracker, const SetContext& context)
{
    const CapacityEstimate capacity = capacityOf(tracker, context.bodyKg);
    if (isSayable(capacity.kg, capacity.low90Kg, capacity.high90Kg)) reading.capacity = capacity;
}

void addOnset(LineReading& reading, const LineTracker& tracker, QDate asOf)
{
    if (reading.verdict == Verdict::Stalled || reading.verdict == Verdict::Slipping) {
        const Onset onset = onsetOf(tracker, asOf);
        reading.since = onset.since;
        reading.sinceEarliest = onset.earliest;
        reading.sinceLatest = onset.latest;
    }
    if (reading.verdict == Verdict::Progressing) {
        reading.since = asOf;
        for (auto week = tracker.weeks().rbegin(); week != tracker.weeks().rend(); ++week) {
            const bool silent = QStringView(week->reason) == u"deload" || QStringView(week->reason) == u"planned_hold";
            if (week->verdict == Verdict::Progressing) reading.since = lastDayOfWeek(week->week);
            if (week->verdict != Verdict::Progressing && !silent) break;
        }
    }
}

double exposuresAWeek(std::span<const CountedExposure> counted, QDate asOf)
{
    constexpr int kWeeks = 8;
    const auto lately = std::ranges::count_if(
        counted, [&](const CountedExposure& exposure) { return exposure.point.date > asOf.addDays(-7 * kWeeks); });
    if (counted.empty()) return 0;
    const double weeks =
        std::min<double>(kWeeks, static_cast<double>(weekOf(asOf) - weekOf(counted.front().point.date) + 1));
    return static_cast<double>(lately) / std::max(1.0, weeks);
}

// A line is a witness of what the lifter does when words may be said about it.
bool isWitness(const LineReading& reading)
{
    return reading.stated && reading.verdict != Verdict::CantTell && !isOfTheCalendar(reading.reason);
}

// Marks the lines that fall together, and says so of those that slip.
void shareFalls(std::vector<LineReading>& readings, const RegimeChances& usual, double sure, QDate asOf)
{
    std::vector<FallWitness> witnesses;
    std::vector<LineReading*> lines;
    for (LineReading& reading : readings) {
        if (!isWitness(reading)) continue;
        witnesses.push_back({*reading.stated, reading.points.back().date.daysTo(asOf)});
        lines.push_back(&reading);
    }
    const CommonFall fall = commonFall(witnesses, usual);
    if (fall.probability < sure || !fall.isOfMost()) return;
    for (std::size_t i = 0; i < lines.size(); ++i) {
        if (!fall.falls[i]) continue;
        lines[i]->commonFall = fall.probability;
        if (lines[i]->verdict != Verdict::Slipping) continue;
        lines[i]->reason = QStringLiteral("whole_lifter");
        lines[i]->why += u' ' + sharedFallSentence(fall);
    }
}

// Kilograms of capacity are drawn where they would have been said that day, and not before a reading would be dared.
bool mayDrawAt(QDate date, const LineRecord& record, const AthleteLog& log, std::span<const CountedExposure> counted,
               const VerdictThresholds& limits)
{
    const LineGates gates = gatesAt(counted, log.blocks, date, limits);
    if (gates.mixed || gates.effortUnknown || gates.exposures < static_cast<std::size_t>(limits.leastExposures))
        return false;
    return bodyPartKg(record.variant.value.loading, log.bodyMass, date).has_value();
}

TrendPoint courseAt(const LineTracker& after, const LineRecord& record, const AthleteLog& log, QDate date)
{
    const CapacityEstimate known = capacityOf(after, heardBodyKg(record, log, date));
    return {date, known.kg, known.low90Kg, known.high90Kg};
}

}  // namespace

RegimeEngine::RegimeEngine(ReadingParameters parameters, VerdictThresholds thresholds, Wording wording,
                           ReadingDepth depth)
    : m_parameters(parameters), m_thresholds(thresholds), m_wording(std::move(wording)), m_depth(depth)
{}

LineTracker RegimeEngine::track(const LineRecord& record, const AthleteLog& log, QDate asOf,
                                LineTracker::SessionListener before) const
{
    LifterTracker lifter(m_parameters, m_thresholds, log.athlete.value.experience);
    LineTracker& line = lifter.lineToListenTo(record.id);
    line.listen(std::move(before));
    lifter.advance(log, countLines(log, asOf), asOf);
    line.listen({});
    return line;
}

LineReading RegimeEngine::readTracked(const LineRecord& record, const AthleteLog& log, QDate asOf,
                                      const LineTracker& tracker, std::span<const CountedExposure> counted) const
{
    LineReading reading;
    reading.parametersVersion = m_parameters.version;
    reading.points.reserve(counted.size());
    for (const CountedExposure& exposure : counted) reading.points.push_back(exposure.point);
    reading.exposures = static_cast<int>(counted.size());
    addShares(reading, counted, asOf, m_thresholds);
    const LineGates gates = gatesAt(counted, log.blocks, asOf, m_thresholds);
    const Finding finding = tracker.finding(counted, log.blocks, asOf);
    reading.verdict = finding.verdict;
    reading.reason = QString::fromUtf16(finding.reason);
    reading.stated = tracker.chances();
    if (tracker.started()) {
        reading.surprises = tracker.surprises();
        reading.fastPerWeek = fastPaceOf(tracker, log.athlete.value.experience);
        reading.weeksToTell = weeksToTell(tracker, exposuresAWeek(counted, asOf));
        if (reading.reason == u"within_noise" && *reading.weeksToTell > m_thresholds.blockWeeks)
            reading.reason = QStringLiteral("slow_pace");
        addOnset(reading, tracker, asOf);
        placePoints(reading, tracker, record, log);
        if (!gates.tooFew && !gates.mixed) {
            reading.rate = rateOf(tracker);
            const auto window = plainWindow(counted, m_thresholds);
            if (const auto fit = fitTrend(window)) {
                reading.plain = fit->slope;
                reading.plainSessions = static_cast<int>(fit->points);
            }
        }
        if (!gates.mixed && !gates.effortUnknown) {
            const SetContext context = tracker.contextAt(record, log, asOf);
            reading.next = nextSet(tracker, counted, context, asOf);
            if (bodyPartKg(context.loading, log.bodyMass, asOf)) addKilograms(reading, tracker, context);
        }
    }
    reading.why = whySentence(reading, gates, m_thresholds, m_wording);
    return reading;
}

std::vector<LineReading> RegimeEngine::readAll(const AthleteLog& log, QDate asOf) const
{
    LifterTracker state(m_parameters, m_thresholds, log.athlete.value.experience);
    return readAll(log, asOf, state);
}

std::vector<LineReading> RegimeEngine::readAll(const AthleteLog& log, QDate asOf, LifterTracker& state) const
{
    const CountedLines counted = countLines(log, asOf);
    std::vector<std::vector<TrendPoint>> courses(log.lines.size());
    if (m_depth == ReadingDepth::Course)
        for (std::size_t i = 0; i < log.lines.size(); ++i)
            state.lineToListenTo(log.lines[i].id)
                .listen({}, [&, i](const LineTracker& after, const HeardSession& heard) {
                    const QDate date = log.lines[i].exposures[heard.exposure].date;
                    if (!mayDrawAt(date, log.lines[i], log, counted[i], m_thresholds)) return;
                    const TrendPoint known = courseAt(after, log.lines[i], log, date);
                    if (isSayable(known.kg, known.low90Kg, known.high90Kg)) courses[i].push_back(known);
                });
    state.advance(log, counted, asOf);
    if (m_depth == ReadingDepth::Course)
        for (const LineRecord& line : log.lines) state.lineToListenTo(line.id).listen({});
    auto readings = readLifter(log, asOf, state, counted);
    for (std::size_t i = 0; i < readings.size(); ++i) readings[i].trend = std::move(courses[i]);
    return readings;
}

std::vector<CapacityAhead> RegimeEngine::ahead(const LineRecord& record, const AthleteLog& log,
                                               const LineReading& reading, const LifterTracker& state, QDate asOf) const
{
    // A rate is stated of what is long enough.
    if (!reading.capacity || !reading.next || !reading.rate) return {};
    if (reading.points.back().date.daysTo(asOf) > m_thresholds.layoffDays) return {};
    const LineTracker& line = state.line(record.id);
    return capacityAhead(line, line.contextAt(record, log, asOf), *reading.next, asOf);
}

std::vector<LineReading> RegimeEngine::readAll(const AthleteLog& log, QDate asOf, ReadingMemory& memory) const
{
    const CountedLines counted = countLines(log, asOf);
    return readLifter(log, asOf, memory.recall(log, counted, asOf, m_parameters, m_thresholds), counted);
}

std::vector<LineReading> RegimeEngine::readLifter(const AthleteLog& log, QDate asOf, const LifterTracker& lifter,
                                                  const CountedLines& counted) const
{
    std::vector<LineReading> readings;
    readings.reserve(log.lines.size());
    for (std::size_t i = 0; i < log.lines.size(); ++i)
        readings.push_back(readTracked(log.lines[i], log, asOf, lifter.line(log.lines[i].id), counted[i]));
    shareFalls(readings, usualChances(m_parameters.filter), m_thresholds.sureOfCommonFall, asOf);
    return readings;
}

}  // namespace steelyard
