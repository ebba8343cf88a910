// What the record of one lift line says: did it improve, can we tell, and what comes next.
//
//   const LineReading reading = engine.read(record, log, asOf);
//   reading.verdict == Verdict::CantTell && reading.reason == u"mixed_record"
//
// Only counted repetitions speak. A number that the record can't carry is absent, never zero.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

enum class Verdict { Progressing, Holding, Stalled, Slipping, CantTell };

// How likely it is that a line rises, stays level or falls, as the filter states it; they sum to 1.
struct RegimeChances {
    double rising = 0;
    double flat = 0;
    double falling = 0;
    friend bool operator==(const RegimeChances&, const RegimeChances&) = default;

    [[nodiscard]] double notRising() const { return flat + falling; }
};

// Shares of capacity a week (0.004 = 0.4 %), with a 90 % interval, and how likely the line rises or falls.
struct TrendRate {
    double perWeek = 0;
    double low90 = 0;
    double high90 = 0;
    double pRising = 0;
    double pFalling = 0;
    friend bool operator==(const TrendRate&, const TrendRate&) = default;
};

// Strength on this line as a one-repetition-maximum equivalent, kilograms of external load. On assisted lines it is
// negative while help is needed: -20 stands for one repetition with 20 kg taken off.
// It is an index to compare a line with itself; as a maximum it means something up to 12 repetitions at most.
struct CapacityEstimate {
    double kg = 0;
    double low90Kg = 0;
    double high90Kg = 0;
    friend bool operator==(const CapacityEstimate&, const CapacityEstimate&) = default;
};

// Repetitions to expect in the first working set next time, at this load and reserve.
struct Forecast {
    Load load;
    int repsInReserve = 0;
    double repsMedian = 0;
    double repsLow80 = 0;
    double repsHigh80 = 0;
    friend bool operator==(const Forecast&, const Forecast&) = default;
};

// One exposure as a chart and a rule see it.
struct ReadingPoint {
    QDate date;
    Load topLoad;         // of the best working set
    int countedReps = 0;  // of the best working set
    int workSets = 0;
    int reps = 0;                      // completed in all working sets
    int offReps = 0;                   // of these, off standard
    bool watched = false;              // at least one working set was watched
    bool offStandard = false;          // too many repetitions off standard to compare
    bool deload = false;               // only deload sets
    std::optional<double> capacityKg;  // absent: no set of this session carries an estimate
    friend bool operator==(const ReadingPoint&, const ReadingPoint&) = default;
};

// What was known of capacity after a session, for drawing: nothing later went into it.
struct TrendPoint {
    QDate date;
    double kg = 0;
    double low90Kg = 0;
    double high90Kg = 0;
    friend bool operator==(const TrendPoint&, const TrendPoint&) = default;
};

inline constexpr int kSurpriseWeeks = 8;  // that they are kept for

// How far the first working set of a session was from what was to be expected of it the moment before.
struct SessionSurprise {
    QDate date;
    Load load;
    int reps = 0;          // completed
    double extraReps = 0;  // above what was expected; below when negative
    double errorSds = 0;   // the same in standard deviations of such a set on a usual day
    bool watched = false;
    friend bool operator==(const SessionSurprise&, const SessionSurprise&) = default;
};

struct LineReading {
    Verdict verdict = Verdict::CantTell;
    QString reason;              // machine word: why this verdict
    QString why;                 // the same as a sentence for the coach, with its numbers
    std::optional<QDate> since;  // about when it began
    // Between these with 80 %; `sinceEarliest` is absent when it may have begun before the filter's memory.
    std::optional<QDate> sinceEarliest;
    std::optional<QDate> sinceLatest;
    int exposures = 0;
    double countedShare = 0;              // counted of completed repetitions, recent exposures
    double watchedShare = 0;              // watched of working sets, recent exposures
    std::optional<RegimeChances> stated;  // before calibration: what words rest on. Absent: no set that says anything
    // Set on the lines that fall with the lifter's others for a reason they likely share: how likely that is.
    std::optional<double> commonFall;
    std::optional<TrendRate> rate;
    // Growth a week that one rising lifter in twenty of this experience is faster than.
    std::optional<double> fastPerWeek;
    std::optional<TrendRate> plain;  // a robust straight line through the last sessions, for those who check by eye
    int plainSessions = 0;           // that it goes through
    // Weeks in which a stop of this lifter's expected pace would show, at this rate of training; absent when unknown.
    std::optional<double> weeksToTell;
    std::optional<CapacityEstimate> capacity;
    std::optional<Forecast> next;
    std::vector<ReadingPoint> points;        // every exposure, oldest first
    std::vector<TrendPoint> trend;           // empty when there is none
    std::vector<SessionSurprise> surprises;  // of the last kSurpriseWeeks weeks, oldest first
    int parametersVersion = 0;               // of the numbers it rests on; 0: as shipped
};

// How a line is read. `record` is one of `log.lines`; the log gives what a line alone can't: experience, body mass and
// planned deloads. Implementations are pure: the same record and day give the same reading.
class ReadingEngine {
public:
    virtual ~ReadingEngine() = default;
    // Every line of the log, in its order: lines of one lifter help to read each other.
    [[nodiscard]] virtual std::vector<LineReading> readAll(const AthleteLog& log, QDate asOf) const = 0;
    // The same reading of one of them.
    [[nodiscard]] LineReading read(const LineRecord& record, const AthleteLog& log, QDate asOf) const
    {
        return readAll(log, asOf).at(static_cast<std::size_t>(&record - log.lines.data()));
    }
};

template <>
struct EnumText<Verdict> {
    static constexpr auto table = std::to_array<EnumKey<Verdict>>({{Verdict::Progressing, "progressing"},
                                                                   {Verdict::Holding, "holding"},
                                                                   {Verdict::Stalled, "stalled"},
                                                                   {Verdict::Slipping, "slipping"},
                                                                   {Verdict::CantTell, "cant_tell"}});
};

}  // namespace steelyard
