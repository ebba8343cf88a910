#include "core/analysis/robust_trend_engine.h"

#include "core/analysis/line_evidence.h"
#include "core/analysis/reading_words.h"
#include "core/analysis/stall.h"
#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kNormal90 = 1.6448536269514722;  // two-sided 90 %
constexpr double kNormal80 = 1.2815515655446004;  // two-sided 80 %
constexpr double kEpleyDivisor = 30;
constexpr double kMostForecastReps = 30;

struct Finding {
    Verdict verdict = Verdict::CantTell;
    const char16_t* reason = u"";
};

Finding decide(const LineEvidence& evidence, const std::optional<TrendFit>& fit, bool stalled,
               const VerdictThresholds& limits)
{
    if (evidence.tooFew) return {Verdict::CantTell, u"too_few"};
    if (evidence.mixed) return {Verdict::CantTell, u"mixed_record"};
    const double sure = stalled ? limits.sureAfterStall : limits.sure;
    const bool rising = fit && fit->slope.pRising >= sure && fit->slope.perWeek > 0;
    if (evidence.effortUnknown && !(rising && !evidence.afterLayoff && !evidence.deload))
        return {Verdict::CantTell, u"effort_unknown"};
    if (evidence.afterLayoff) return {Verdict::Holding, u"after_layoff"};
    if (evidence.deload) return {Verdict::Holding, u"deload"};
    if (!fit) return {Verdict::CantTell, u"no_estimate"};
    if (fit->slope.pFalling >= limits.sure && fit->slope.high90 < 0) return {Verdict::Slipping, u"falling"};
    if (rising) return {Verdict::Progressing, u"rising"};
    if (stalled) return {Verdict::Stalled, u"no_rise"};
    return {Verdict::Holding, u"within_noise"};
}

std::optional<QDate> beginning(Verdict verdict, const LineEvidence& evidence, const std::optional<TrendFit>& fit,
                               const VerdictThresholds& limits)
{
    if (!fit || (verdict != Verdict::Progressing && verdict != Verdict::Stalled && verdict != Verdict::Slipping))
        return std::nullopt;
    if (verdict == Verdict::Progressing) return fit->first;
    const auto since = lastCredibleImprovement(evidence.usable, fit->noise);
    // A lucky run of sessions inside a stall doesn't begin it anew: it is at least as old as what it was read from.
    if (verdict == Verdict::Stalled && since) return std::min(*since, fit->last.addDays(-7 * limits.stallWeeks));
    return since;
}

CapacityEstimate capacityAt(const TrendFit& fit, QDate date, double bodyKg)
{
    const double ln = fit.lnAt(date);
    const double reach = kNormal90 * fit.errorAt(date);
    return {std::exp(ln) - bodyKg, std::exp(ln - reach) - bodyKg, std::exp(ln + reach) - bodyKg};
}

// The reserve the lifter usually stops with: the median over recent first working sets.
std::optional<int> usualReserve(const LineEvidence& evidence)
{
    std::vector<double> reserves;
    for (auto it = evidence.counted.rbegin(); it != evidence.counted.rend() && reserves.size() < 8; ++it)
        if (it->reserve && it->point.workSets > 0) reserves.push_back(*it->reserve);
    const auto usual = median(std::move(reserves));
    if (!usual) return std::nullopt;
    return std::max(0, static_cast<int>(std::lround(*usual)));
}

// Epley turned round: repetitions to failure at this load, less the reserve.
std::optional<Forecast> forecast(const LineEvidence& evidence, const TrendFit& level, Loading loading, double bodyKg)
{
    const auto reserve = usualReserve(evidence);
    const auto lastWorking =
        std::ranges::find_if(evidence.counted.rbegin(), evidence.counted.rend(),
                             [](const CountedExposure& exposure) { return exposure.point.workSets > 0; });
    if (!reserve || lastWorking == evidence.counted.rend()) return std::nullopt;
    Forecast next;
    next.load = lastWorking->point.topLoad;
    next.repsInReserve = *reserve;
    const double moved = systemKg(loading, next.load.kilograms(), bodyKg);
    if (!(moved > 0)) return std::nullopt;
    const double error = level.errorAt(level.last);
    const double reach = kNormal80 * std::sqrt(level.noise * level.noise + error * error);
    const auto reps = [&](double ln) {
        return std::max(0.0, kEpleyDivisor * (std::exp(ln) / moved - 1.0) - next.repsInReserve);
    };
    next.repsMedian = reps(level.lnLast);
    next.repsLow80 = reps(level.lnLast - reach);
    next.repsHigh80 = reps(level.lnLast + reach);
    if (next.repsMedian + next.repsInReserve > kMostForecastReps) return std::nullopt;
    return next;
}

std::vector<TrendPoint> trendPoints(const LineEvidence& evidence, const TrendFit& fit)
{
    std::vector<TrendPoint> points;
    for (const DatedEstimate& point : evidence.window) {
        const auto capacity = capacityAt(fit, point.date, point.estimate.bodyPartKg);
        points.push_back({point.date, capacity.kg, capacity.low90Kg, capacity.high90Kg});
    }
    return points;
}

// Kilograms may be said when the reserve behind them was reported and the load moved is known.
void addKilograms(LineReading& reading, const LineEvidence& evidence, const std::optional<TrendFit>& fit,
                  Loading loading)
{
    const auto level = fit ? fit : fitLevel(evidence.window);
    if (!level || evidence.mixed || evidence.effortUnknown || !evidence.window.back().estimate.inKilograms) return;
    const double bodyKg = evidence.window.back().estimate.bodyPartKg;
    reading.capacity = capacityAt(*level, level->last, bodyKg);
    reading.next = forecast(evidence, *level, loading, bodyKg);
    if (fit) reading.trend = trendPoints(evidence, *fit);
}

}  // namespace

LineReading RobustTrendEngine::read(const LineRecord& record, const AthleteLog& log, QDate asOf) const
{
    LineEvidence evidence = gatherEvidence(record, log, asOf, m_thresholds);
    // No trend is drawn through a record that can't be compared.
    auto fit = evidence.mixed || evidence.tooFew ? std::nullopt : fitTrend(evidence.window);
    LineReading reading;
    for (const CountedExposure& exposure : evidence.counted) reading.points.push_back(exposure.point);
    reading.exposures = static_cast<int>(evidence.counted.size());
    reading.countedShare = evidence.countedShare;
    reading.watchedShare = evidence.watchedShare;
    const double worthwhile = VerdictThresholds::smallestWorthwhile(log.athlete.value.experience);
    const auto stall = fit ? stallOf(evidence.usable, asOf, worthwhile, m_thresholds) : std::nullopt;
    const Finding finding = decide(evidence, fit, stall.has_value(), m_thresholds);
    if (finding.verdict == Verdict::Stalled) {
        // The numbers said are those that the word rests on.
        evidence.window = *stall;
        fit = fitTrend(*stall);
    }
    reading.verdict = finding.verdict;
    reading.reason = QString::fromUtf16(finding.reason);
    reading.since = beginning(finding.verdict, evidence, fit, m_thresholds);
    if (fit) reading.rate = fit->slope;
    addKilograms(reading, evidence, fit, record.variant.value.loading);
    reading.why = whySentence(reading, evidence, m_thresholds, m_wording);
    return reading;
}

}  // namespace steelyard
