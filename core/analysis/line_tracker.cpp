#include "core/analysis/line_tracker.h"

#include "core/analysis/session_surprises.h"
#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

constexpr std::size_t kReferenceSets = 5;
constexpr std::size_t kReservesKept = 30;
constexpr std::size_t kLeastReserves = 3;
constexpr double kAssumedReserve = 1.5;
// A set that stands for half as much again as the last sessions, or for two thirds, is a slip of the pen until the sessions
// after it say the same. Our convention: beyond any change of strength, below the 2.2 between pounds and kilograms.
constexpr double kSlipRatio = 0.45;  // ln
constexpr std::size_t kUsualSessions = 5;
constexpr std::size_t kLeastUsualSessions = 2;
constexpr int kMostSlips = 2;  // sessions in a row
// A case that the record has all but ruled out is followed no longer: after a month or two, one or two are left. On simulated
// rosters no column of the table depends on whether it is this or a hundredth of it.
constexpr double kLeastCaseWeight = 0.02;
// ln likelihood of an experience that was dropped, below the best.
constexpr double kDroppedEvidence = -8;

// Median of the first sets' ln kilograms moved.
double referenceOf(const LineRecord& record, const AthleteLog& log)
{
    std::vector<double> first;
    for (const Exposure& exposure : record.exposures) {
        const SetContext context{record.variant.value.loading, heardBodyKg(record, log, exposure.date)};
        for (const LoggedSet& logged : exposure.sets) {
            if (logged.set.kind == SetKind::WarmUp) continue;
            if (const auto ln = lnMoved(logged.set, context)) first.push_back(*ln);
            if (first.size() == kReferenceSets) break;
        }
        if (first.size() == kReferenceSets) break;
    }
    return median(std::move(first)).value_or(0);
}

// The stated level and its neighbours.
std::array<double, 3> priorsAround(Experience stated, double trust)
{
    const auto at = static_cast<std::size_t>(stated);
    std::array<double, 3> priors{};
    const bool middle = stated == Experience::Intermediate;
    for (std::size_t i = 0; i < priors.size(); ++i)
        if (i + 1 == at || i == at + 1) priors[i] = (1 - trust) / (middle ? 2 : 1);
    priors[at] = trust;
    return priors;
}

// What a working set stands for in a single repetition, roughly: enough to see a slip of the pen.
double roughLnSingle(const RegimeObservation& said)
{
    constexpr double kUsualElasticity = 1.18;
    return said.lnLoad + said.z / kUsualElasticity;
}

}  // namespace

double heardBodyKg(const LineRecord& record, const AthleteLog& log, QDate date)
{
    return bodyPartKg(record.variant.value.loading, log.bodyMass, date).value_or(kAssumedBodyKg);
}

std::vector<RegimeObservation> HeardSession::ofUsualDay() const
{
    std::vector<RegimeObservation> all = observations;
    for (RegimeObservation& one : all) one.z -= weekdayEffect;
    return all;
}

LineTracker::LineTracker(const ReadingParameters& parameters, const VerdictThresholds& thresholds,
                         std::optional<Experience> experience)
    : m_parameters(&parameters), m_thresholds(&thresholds)
{
    const auto open = [&](Experience which, double prior, std::span<const NoiseScale> noises) {
        for (const NoiseScale& noise : noises)
            m_cases.push_back(
                {which, noise.scale, std::log(prior * noise.prior),
                 RegimeFilter(parameters.filter, parameters.paces[static_cast<std::size_t>(which)], noise.scale)});
    };
    const double trust = experience ? parameters.experienceTrust[static_cast<std::size_t>(*experience)] : 0;
    if (experience && trust >= 1) {
        m_fineNoises = true;
        open(*experience, 1, parameters.noises);
        return;
    }
    const auto priors = experience ? priorsAround(*experience, trust) : parameters.experiencePrior;
    for (const auto& row : EnumText<Experience>::table)
        if (const double prior = priors[static_cast<std::size_t>(row.value)]; prior > 0)
            open(row.value, prior, parameters.coarseNoises);
}

std::array<double, 3> LineTracker::experienceEvidence() const
{
    std::array<double, 3> sums{};
    std::array<double, 3> most;
    most.fill(-std::numeric_limits<double>::infinity());
    const auto at = [](const TrackedCase& one) { return static_cast<std::size_t>(one.experience); };
    for (const TrackedCase& one : m_cases) most[at(one)] = std::max(most[at(one)], one.filter.logLikelihood());
    for (const TrackedCase& one : m_cases) sums[at(one)] += std::exp(one.filter.logLikelihood() - most[at(one)]);
    const double best = *std::ranges::max_element(most);
    for (std::size_t i = 0; i < sums.size(); ++i)
        sums[i] = sums[i] > 0 ? most[i] + std::log(sums[i]) : best + kDroppedEvidence;
    return sums;
}

void LineTracker::expectNoise(const std::vector<double>& weights)
{
    const auto scales = noiseScalesOf();
    for (TrackedCase& one : m_cases)
        for (std::size_t i = 0; i < scales.size(); ++i)
            if (scales[i].scale == one.noise) one.logPrior += std::log(std::max(weights[i], 1e-6) / scales[i].prior);
}

void LineTracker::expectElasticity(double mean, double sd)
{
    for (TrackedCase& one : m_cases) one.filter.expectElasticity(mean, sd);
}

std::vector<double> LineTracker::noiseWeights() const
{
    const auto scales = noiseScalesOf();
    std::vector<double> sums(scales.size(), 0.0);
    const auto weights = caseWeights();
    for (std::size_t at = 0; at < weights.size(); ++at)
        for (std::size_t i = 0; i < scales.size(); ++i)
            if (scales[i].scale == m_cases[at].noise) sums[i] += weights[at];
    return sums;
}

std::span<const NoiseScale> LineTracker::noiseScalesOf() const
{
    if (m_fineNoises) return m_parameters->noises;
    return m_parameters->coarseNoises;
}

SetContext LineTracker::contextAt(const LineRecord& record, const AthleteLog& log, QDate date) const
{
    SetContext context = frameAt(record, log, date);
    context.usualReserve = usualReserve();
    return context;
}

// Without the usual reserve, which takes a median and is seldom asked for.
SetContext LineTracker::frameAt(const LineRecord& record, const AthleteLog& log, QDate date) const
{
    return {record.variant.value.loading, heardBodyKg(record, log, date), m_lnReference, record.variant.value.band.high,
            kAssumedReserve};
}

void LineTracker::advance(const LineRecord& record, std::span<const CountedExposure> counted, const AthleteLog& log,
                          QDate until)
{
    if (m_taken == 0) m_lnReference = referenceOf(record, log);
    m_line = record.line;
    for (; m_taken < record.exposures.size() && record.exposures[m_taken].date <= until; ++m_taken) {
        closeWeeksBefore(weekOf(record.exposures[m_taken].date), counted, log);
        takeSession(record, m_taken, log);
    }
    closeWeeksBefore(weekOf(until), counted, log);
}

void LineTracker::keepSurprisesFrom(QDate from)
{
    m_surprisesFrom = from;
    std::erase_if(m_surprises, [&](const SessionSurprise& one) { return one.date < from; });
}

void LineTracker::takeSession(const LineRecord& record, std::size_t at, const AthleteLog& log)
{
    const Exposure& exposure = record.exposures[at];
    SetContext context = frameAt(record, log, exposure.date);
    const bool asksForReserve =
        std::ranges::any_of(exposure.sets, [](const LoggedSet& logged) { return !reserveOf(logged.set); });
    if (asksForReserve) context.usualReserve = usualReserve();
    HeardSession heard{at, {}, {}, m_weekdays.effectOn(exposure.date)};
    heard.observations.reserve(2 * exposure.sets.size());  // a set may say two things
    heard.sets.reserve(2 * exposure.sets.size());
    int number = 0;
    for (std::size_t i = 0; i < exposure.sets.size(); ++i) {
        const SetEntry& set = exposure.sets[i].set;
        if (set.kind == SetKind::WarmUp) continue;
        const HeardSet one = hearSet(set, ++number, context);
        for (const RegimeObservation& said : one.observations()) {
            heard.observations.push_back(said);
            heard.sets.push_back(i);
        }
    }
    leaveOutSlips(heard);
    for (const LoggedSet& logged : exposure.sets) {
        const auto reserve = reserveOf(logged.set);
        if (!isWorkingSet(logged.set) || !logged.set.effort || !reserve) continue;
        m_reserves.push_back(*reserve);
        if (m_reserves.size() > kReservesKept) m_reserves.pop_front();
    }
    if (heard.observations.empty()) return;
    if (m_before) m_before(*this, heard);
    if (m_surprisesFrom && exposure.date >= *m_surprisesFrom)
        if (const auto surprise = surpriseOf(*this, exposure, heard)) m_surprises.push_back(*surprise);
    learnWeekday(exposure, heard);
    const auto observations = heard.ofUsualDay();
    for (TrackedCase& one : m_cases) one.filter.session(static_cast<double>(exposure.date.toJulianDay()), observations);
    if (!m_week) m_week = weekOf(exposure.date);
    if (m_after) m_after(*this, heard);
}

// The first set that says exactly how strong the lifter was speaks for the day; the later ones depend on it.
void LineTracker::learnWeekday(const Exposure& exposure, const HeardSession& heard)
{
    if (!started()) return;
    for (std::size_t i = 0; i < heard.observations.size(); ++i) {
        const RegimeObservation& said = heard.observations[i];
        if (said.kind != ObservationKind::Exact || !isWorkingSet(exposure.sets[heard.sets[i]].set)) continue;
        const auto expected = likeliest().filter.expect(static_cast<double>(exposure.date.toJulianDay()), said);
        m_weekdays.take(exposure.date, said.z - expected.mean);
        return;
    }
}

const TrackedCase& LineTracker::likeliest() const
{
    const auto weights = caseWeights();
    return m_cases[static_cast<std::size_t>(std::ranges::max_element(weights) - weights.begin())];
}

void LineTracker::leaveOutSlips(HeardSession& heard)
{
    std::optional<double> usual;
    if (m_singles.size() >= kLeastUsualSessions)
        usual = median(std::vector<double>(m_singles.begin(), m_singles.end()));
    const auto isSlip = [&](const RegimeObservation& said) {
        const double apart = roughLnSingle(said) - usual.value_or(0);
        // A bound that a slip makes meaningless on one side only still is one.
        if (said.kind == ObservationKind::AtLeast) return usual && apart > kSlipRatio;
        if (said.kind == ObservationKind::AtMost) return usual && apart < -kSlipRatio;
        return usual && std::abs(apart) > kSlipRatio;
    };
    if (std::ranges::any_of(heard.observations, isSlip)) {
        HeardSession kept{heard.exposure, {}, {}, heard.weekdayEffect};
        for (std::size_t i = 0; i < heard.observations.size(); ++i) {
            if (isSlip(heard.observations[i])) continue;
            kept.observations.push_back(heard.observations[i]);
            kept.sets.push_back(heard.sets[i]);
        }
        const bool allSlips = kept.observations.empty();
        const bool oftenEnough = allSlips && ++m_slips > kMostSlips;
        if (oftenEnough)
            m_singles.clear();  // then it is so
        else
            heard = std::move(kept);
        if (allSlips && !oftenEnough) return;
    }
    m_slips = 0;
    rememberSingle(heard);
}

// What the session stands for, roughly.
void LineTracker::rememberSingle(const HeardSession& heard)
{
    std::vector<double> singles;
    singles.reserve(heard.observations.size());
    for (const RegimeObservation& said : heard.observations)
        if (said.kind == ObservationKind::Exact) singles.push_back(roughLnSingle(said));
    if (const auto single = median(std::move(singles))) {
        m_singles.push_back(*single);
        if (m_singles.size() > kUsualSessions) m_singles.pop_front();
    }
}

void LineTracker::closeWeeksBefore(qint64 week, std::span<const CountedExposure> counted, const AthleteLog& log)
{
    if (!m_week) return;
    for (; *m_week < week; ++*m_week) {
        const auto now = chances();
        const Finding found = findingWith(now, counted, log.blocks, lastDayOfWeek(*m_week));
        m_weeks.push_back({*m_week, *now, weeksNotRising(), found.verdict, found.reason});
        // A week that says nothing of itself leaves the word as it was.
        if (found.verdict == Verdict::CantTell)
            m_said.reset();
        else if (!isOfTheCalendar(found.reason))
            m_said = found.verdict;
        for (TrackedCase& one : m_cases) one.filter.startWeek();
        dropUnlikelyCases();
    }
}

void LineTracker::dropUnlikelyCases()
{
    const auto weights = caseWeights();
    std::size_t at = 0;
    std::erase_if(m_cases, [&](const TrackedCase&) { return weights[at++] < kLeastCaseWeight; });
}

std::vector<double> LineTracker::caseWeights() const
{
    return weightsOf(m_cases);
}

std::optional<RegimeChances> LineTracker::chances() const
{
    if (!started()) return std::nullopt;
    return chancesOf(m_cases);
}

std::vector<double> LineTracker::weightsOf(std::span<const TrackedCase> cases) const
{
    std::vector<double> weights(cases.size());
    double most = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < cases.size(); ++i) {
        weights[i] = cases[i].logPrior + cases[i].filter.logLikelihood()
                     + m_elsewhere[static_cast<std::size_t>(cases[i].experience)];
        most = std::max(most, weights[i]);
    }
    double sum = 0;
    for (double& weight : weights) sum += weight = std::exp(weight - most);
    for (double& weight : weights) weight /= sum;
    return weights;
}

RegimeChances LineTracker::chancesOf(std::span<const TrackedCase> cases) const
{
    const auto weights = weightsOf(cases);
    RegimeChances all;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        const auto one = cases[i].filter.probabilities();
        all.rising += weights[i] * one[0];
        all.flat += weights[i] * one[1];
        all.falling += weights[i] * one[2];
    }
    return all;
}

double LineTracker::weeksNotRising() const
{
    const auto weights = caseWeights();
    double sum = 0;
    double total = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const auto byAge = m_cases[i].filter.notRisingByAge();
        for (std::size_t age = 0; age < byAge.size(); ++age) {
            total += weights[i] * byAge[age];
            sum += weights[i] * byAge[age] * static_cast<double>(age);
        }
    }
    return total > 0 ? sum / total : 0;
}

double LineTracker::notRisingLimit() const
{
    const auto weights = caseWeights();
    double limit = 0;
    for (std::size_t i = 0; i < m_cases.size(); ++i)
        limit += weights[i] * m_thresholds->notRising(m_cases[i].experience);
    return limit;
}

double LineTracker::usualReserve() const
{
    if (m_reserves.size() < kLeastReserves) return kAssumedReserve;
    return median(std::vector<double>(m_reserves.begin(), m_reserves.end())).value_or(kAssumedReserve);
}

Finding LineTracker::finding(std::span<const CountedExposure> counted, const std::vector<Row<Block>>& blocks,
                             QDate day) const
{
    return findingWith(chances(), counted, blocks, day);
}

Finding LineTracker::findingWith(const std::optional<RegimeChances>& chances, std::span<const CountedExposure> counted,
                                 const std::vector<Row<Block>>& blocks, QDate day) const
{
    return decideVerdict(gatesAt(counted, blocks, day, *m_thresholds, m_line), chances, notRisingLimit(), m_said,
                         *m_thresholds);
}

}  // namespace steelyard
