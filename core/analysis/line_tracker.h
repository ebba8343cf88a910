// Follows one lift line through its weeks and says at any day what the record up to then says. The state is a value that is
// kept: a new session costs one step, and whatever is said of a day rests on nothing after it.
//
//   LineTracker tracker(parameters, thresholds);
//   tracker.advance(record, counted, log, asOf);
//   const Finding finding = tracker.finding(counted, log.blocks, asOf);
//
// A lifter may be steadier or noisier than usual, and when nobody wrote it down, of any experience: a filter runs for each
// case, and the record decides between them.
//
// Sets that can't be true beside the sessions before (a moved decimal point, pounds for kilograms) are left out until more
// say the same.
//
// Loads are measured against the median of the line's first five sets, which every reading with a word has seen.
#pragma once

#include "core/analysis/reading_parameters.h"
#include "core/analysis/set_evidence.h"
#include "core/analysis/verdict_rules.h"
#include "core/analysis/weekday_habits.h"

#include <deque>
#include <functional>

namespace steelyard {

// The record of one case of the grid: how noisy, how experienced.
struct TrackedCase {
    Experience experience = Experience::Intermediate;
    double noise = 1;
    double logPrior = 0;
    RegimeFilter filter;
};

// What a week ended with.
struct TrackedWeek {
    qint64 week = 0;
    RegimeChances chances;
    double weeksNotRising = 0;  // mean over the flat and falling hypotheses
    Verdict verdict = Verdict::CantTell;
    const char16_t* reason = u"too_few";
};

// A session as the filter hears it.
struct HeardSession {
    std::size_t exposure = 0;  // index into the record's exposures
    std::vector<RegimeObservation> observations;
    std::vector<std::size_t> sets;  // of each observation: index into the exposure's sets
    double weekdayEffect = 0;       // what z owes to the day of the week

    // What a usual day would have brought: what the filters are told.
    [[nodiscard]] std::vector<RegimeObservation> ofUsualDay() const;
};

// Kilograms of the body that a set of this line moves on that day; an assumed body where none is written down.
[[nodiscard]] double heardBodyKg(const LineRecord&, const AthleteLog&, QDate);

class LineTracker {
public:
    // Both must outlive the tracker. `experience` absent: not known.
    LineTracker(const ReadingParameters&, const VerdictThresholds&, std::optional<Experience> experience);

    // Takes in every exposure up to `until`. `counted` are those of the record. Called again with a later day and a longer
    // record that begins with the same exposures, it goes on from where it was.
    void advance(const LineRecord&, std::span<const CountedExposure> counted, const AthleteLog&, QDate until);
    // What happens just before a session is taken in, and just after; for those who explain and those who draw.
    using SessionListener = std::function<void(const LineTracker&, const HeardSession&)>;
    void listen(SessionListener before, SessionListener after = {})
    {
        m_before = std::move(before);
        m_after = std::move(after);
    }

    [[nodiscard]] bool started() const { return m_cases.front().filter.started(); }
    // Weights of the cases: sum to 1.
    [[nodiscard]] std::vector<double> caseWeights() const;
    [[nodiscard]] const std::vector<TrackedCase>& cases() const { return m_cases; }
    // The case of most weight.
    [[nodiscard]] const TrackedCase& likeliest() const;
    // Absent before the first session.
    [[nodiscard]] std::optional<RegimeChances> chances() const;
    // What they would be with these in place of this tracker's cases, all started; for those who try sets one by one.
    [[nodiscard]] RegimeChances chancesOf(std::span<const TrackedCase> cases) const;
    [[nodiscard]] double weeksNotRising() const;
    [[nodiscard]] Finding finding(std::span<const CountedExposure> counted, const std::vector<Row<Block>>&,
                                  QDate day) const;
    // Every closed week, oldest first.
    [[nodiscard]] const std::vector<TrackedWeek>& weeks() const { return m_weeks; }
    // From that day on surprises are kept (session_surprises.h); earlier ones are forgotten. Before it is called, none are.
    void keepSurprisesFrom(QDate);
    [[nodiscard]] const std::vector<SessionSurprise>& surprises() const { return m_surprises; }  // oldest first
    [[nodiscard]] const WeekdayHabits& weekdays() const { return m_weekdays; }
    [[nodiscard]] double lnReference() const { return m_lnReference; }
    [[nodiscard]] double usualReserve() const;
    // How likely "not rising" must be for this lifter.
    [[nodiscard]] double notRisingLimit() const;
    [[nodiscard]] const ReadingParameters& parameters() const { return *m_parameters; }
    // For a set of this lifter on this line at that day.
    [[nodiscard]] SetContext contextAt(const LineRecord&, const AthleteLog&, QDate) const;
    // What the record says of the lifter's experience: ln likelihood, by Experience.
    [[nodiscard]] std::array<double, 3> experienceEvidence() const;
    // What the lifter's other lines say of it.
    void hearOfExperience(const std::array<double, 3>& evidence) { m_elsewhere = evidence; }
    // Before the first session: how noisy the lifter's other lines are, by noise scale.
    void expectNoise(const std::vector<double>& weights);
    // The same: what load costs on the other ways of doing the exercise.
    void expectElasticity(double mean, double sd);
    [[nodiscard]] std::vector<double> noiseWeights() const;

private:
    [[nodiscard]] std::span<const NoiseScale> noiseScalesOf() const;
    [[nodiscard]] std::vector<double> weightsOf(std::span<const TrackedCase> cases) const;
    [[nodiscard]] Finding findingWith(const std::optional<RegimeChances>&, std::span<const CountedExposure>,
                                      const std::vector<Row<Block>>&, QDate day) const;
    void closeWeeksBefore(qint64 week, std::span<const CountedExposure>, const AthleteLog&);
    [[nodiscard]] SetContext frameAt(const LineRecord&, const AthleteLog&, QDate) const;
    void dropUnlikelyCases();
    void leaveOutSlips(HeardSession&);
    void rememberSingle(const HeardSession&);
    void takeSession(const LineRecord&, std::size_t exposure, const AthleteLog&);
    void learnWeekday(const Exposure&, const HeardSession&);

    const ReadingParameters* m_parameters;
    const VerdictThresholds* m_thresholds;
    std::vector<TrackedCase> m_cases;
    bool m_fineNoises = false;
    std::vector<TrackedWeek> m_weeks;
    std::deque<double> m_reserves;  // the last reported ones
    std::deque<double> m_singles;   // what the last sessions stood for, roughly
    int m_slips = 0;                // sessions in a row that were left out
    WeekdayHabits m_weekdays;
    std::vector<SessionSurprise> m_surprises;
    std::optional<QDate> m_surprisesFrom;
    std::optional<Verdict> m_said;
    std::optional<LiftLine> m_line;  // whose record it is
    std::optional<qint64> m_week;    // the one that is open
    std::size_t m_taken = 0;         // exposures
    std::array<double, 3> m_elsewhere{};
    double m_lnReference = 0;
    SessionListener m_before;
    SessionListener m_after;
};

}  // namespace steelyard
