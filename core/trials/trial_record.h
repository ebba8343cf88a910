// What became of a trial: its days beside the athlete's log, as a list of observations.
//
//   const auto surprises = trialSurprises(trial, log, parameters, thresholds, asOf);
//   const TrialRecord record = trialRecord(trial, log, surprises, asOf);
//   record.observations[3].done          // the arm that was trained, absent when it was missed
//
// The arm that was done is, first, what the coach says (TrialDay::armDone, TrialDay::missed); else the arm whose line (variant,
// grip, standard) was trained on the day, or on one of the next kMostDaysLate days before the trial's next one. Arms that
// share a line are told apart by the repetitions of their sets (rep band) or by the lowering written down; where that says
// nothing, the drawn arm is believed.
//
// Getting stronger is credited to no arm: performance is what the first set brought beyond the forecast that the line's own
// record gave the moment before (analysis/session_surprises.h), absent in a line's first sessions.
//
// Units: those of trial_outcomes.h. Pure; no failures.
#pragma once

#include "core/analysis/reading_parameters.h"
#include "core/analysis/verdict_thresholds.h"
#include "core/base/wording.h"
#include "core/trials/trial_outcomes.h"

namespace steelyard {

inline constexpr int kMostDaysLate = 3;

struct OutcomeValue {
    QString key;
    double value = 0;
    friend bool operator==(const OutcomeValue&, const OutcomeValue&) = default;
};

// One of Trial::days that is due.
struct TrialObservation {
    std::size_t day = 0;  // place in Trial::days
    QDate date;           // as scheduled
    int block = 0;        // 0: getting used to it, doesn't count
    std::size_t drawn = 0;
    std::optional<std::size_t> done;                           // the arm trained; absent: missed, or nothing is known
    bool missed = false;                                       // the coach says so
    std::optional<QDate> doneOn;                               // of the log's session; absent: the log has none
    std::vector<OutcomeValue> values;                          // those that are known, in the order of outcomeKinds()
    std::array<std::optional<int>, kJointCount> discomfort{};  // by Joint, as rated
    int workingSets = 0;
    friend bool operator==(const TrialObservation&, const TrialObservation&) = default;

    [[nodiscard]] std::optional<double> value(QStringView key) const;
    [[nodiscard]] std::optional<int> worstDiscomfort() const;  // over the joints
};

enum class TrialDeviation {
    OtherArm,     // another arm than the drawn one was done
    Missed,       // the coach says so, or its day and the days after it are past without a session
    Late,         // done on a later day than drawn
    Unscheduled,  // an arm's line was trained on a day of its own, while the trial ran
    OtherSets,    // not as many working sets as the trial asks for
    Clouded,      // the muscle was trained again before the next day's rating: soreness and weakness left out
    Stopped,      // the trial ended before its last session
};

struct NotedDeviation {
    TrialDeviation kind = TrialDeviation::Missed;
    QDate date;
    std::optional<std::size_t> day;  // place in Trial::days; absent for Unscheduled and Stopped
    std::optional<std::size_t> arm;  // the one that was done
    friend bool operator==(const NotedDeviation&, const NotedDeviation&) = default;
};

struct TrialRecord {
    std::vector<TrialObservation> observations;  // every day up to `asOf` (of an ended trial: up to its end), by date
    std::vector<NotedDeviation> deviations;      // by date
    QDate asOf;
};

// Of one line of the log.
struct LineSurprises {
    Id<LiftLine> line;
    std::vector<SessionSurprise> sessions;  // oldest first, from the trial's first day on
};

// Follows the lifter's record up to `asOf`, about 15 ms for two years of training.
[[nodiscard]] std::vector<LineSurprises> trialSurprises(const Trial&, const AthleteLog&, const ReadingParameters&,
                                                        const VerdictThresholds&, QDate asOf);
[[nodiscard]] TrialRecord trialRecord(const Trial&, const AthleteLog&, const std::vector<LineSurprises>&, QDate asOf);
// One sentence a kind, with its number: "2 sessions were missed." In the order of the kinds.
[[nodiscard]] std::vector<QString> deviationSentences(const TrialRecord&);
// The line of the log that an arm is trained on; null when it has none yet.
[[nodiscard]] const LineRecord* lineOf(const TrialArm&, const AthleteLog&);

template <>
struct EnumText<TrialDeviation> {
    static constexpr auto table = std::to_array<EnumKey<TrialDeviation>>({{TrialDeviation::OtherArm, "other_arm"},
                                                                          {TrialDeviation::Missed, "missed"},
                                                                          {TrialDeviation::Late, "late"},
                                                                          {TrialDeviation::Unscheduled, "unscheduled"},
                                                                          {TrialDeviation::OtherSets, "other_sets"},
                                                                          {TrialDeviation::Clouded, "clouded"},
                                                                          {TrialDeviation::Stopped, "stopped"}});
};

}  // namespace steelyard
