// What a progress chart of one lift line shows, as a value: two panels on one time axis (capacity above, counted
// repetitions of the best set below), with blocks and decisions on the time axis. The view only draws it.
//
//   const ProgressSpec spec = buildProgressSpec({reading, log.blocks, log.decisions, record.id}, options);
//   spec.capacity.points.front().kind == PointKind::Unwatched
//
// Units: capacity in options.unit; repetitions are counts; days are dates.
// Invariants: points are oldest first; `exposure` is the index into reading.points; every tick, trend and band lies within
// its axis, and so does every point but those that would flatten it (chart_scale.h): these keep their value, are drawn at
// the edge with it written beside them, and are joined to nothing. Off-standard and deload sessions are points but no part
// of any joining line. A stretch of more than kGapDays without a comparable session breaks the joining line. The trend is
// what was known right after each session; it and its band break where the reading left a session out. The next set is
// drawn behind the last day, never dated. Behind today stands what is likely to come, dated (capacity_ahead.h); nothing of it
// where the record ended long ago.
#pragma once

#include "core/analysis/capacity_ahead.h"
#include "core/analysis/line_reading.h"
#include "ui/charts/chart_axis.h"
#include "ui/charts/chart_scale.h"
#include "ui/charts/chart_table.h"

#include <QtCore/QPointF>

#include <array>

namespace steelyard {

inline constexpr int kGapDays = 16;

// Told apart by shape: solid disc, ring, cross, small disc.
enum class PointKind { Standard, Unwatched, OffStandard, Deload };

struct ChartPoint {
    int exposure = 0;
    QDate date;
    double value = 0;
    PointKind kind = PointKind::Standard;
    Beyond beyond = Beyond::No;
    QString label;  // of a point beyond the scale: its value, "513.3"
    friend bool operator==(const ChartPoint&, const ChartPoint&) = default;
};

// How near to failure a working set went; told by the shape of its mark.
enum class SetEffort { Near, Some, Far, Unknown };
inline constexpr double kNearFailure = 1;  // in reserve, at most; convention
inline constexpr double kSomeReserve = 4;  // the most that still says exactly how strong a set was (counting.h)

struct SetMark {
    int exposure = 0;
    QDate date;
    int number = 1;   // among the working sets of its session, from 1
    int of = 1;       // of so many
    int counted = 0;  // repetitions to standard
    int reps = 0;     // completed; more than counted when some were off standard
    SetEffort effort = SetEffort::Unknown;
    bool watched = false;
    friend bool operator==(const SetMark&, const SetMark&) = default;
};

// The best counted repetitions of each comparable session at one of the loads that were used most.
struct LoadSeries {
    QString label;  // "42.5"
    int sets = 0;   // at this load
    std::vector<std::vector<QPointF>> runs;
    friend bool operator==(const LoadSeries&, const LoadSeries&) = default;
};
inline constexpr std::size_t kMostLoadSeries = 3;  // told apart by their strokes

struct PanelSpec {
    QString title;  // with the unit: "capacity, kg"
    ChartAxis axis;
    std::vector<ChartPoint> points;
    std::vector<std::vector<QPointF>> runs;  // joined comparable points (chartDay, value), broken at gaps
    friend bool operator==(const PanelSpec&, const PanelSpec&) = default;
};

// Consecutive sessions whose best set was at one load: said once, at the first of them.
struct SameLoad {
    QDate from;
    QDate to;
    double topReps = 0;  // the highest point of the run, to write above it
    QString label;       // "42.5"
    friend bool operator==(const SameLoad&, const SameLoad&) = default;
};

struct BlockSpan {
    QDate from;  // first and last day, within the time axis
    QDate to;
    QString label;
    bool deload = false;  // a deload week within a block
    QString tip;          // the whole of it, for pointing at
    friend bool operator==(const BlockSpan&, const BlockSpan&) = default;
};

// What the next first set is expected to bring.
struct NextSet {
    QDate date;  // where it is drawn
    double reps = 0;
    double low80 = 0;
    double high80 = 0;
    QString label;  // its load, when it isn't the one written last
    friend bool operator==(const NextSet&, const NextSet&) = default;
};

struct DecisionTick {
    QDate date;
    DecisionKind kind = DecisionKind::Act;
    QString label;
    QString tip;  // with the date and what was said of the line
    friend bool operator==(const DecisionTick&, const DecisionTick&) = default;
};

// A session of a trial on this line: which arm of it the line is.
struct TrialTick {
    QDate date;
    QString letter;
    bool counts = true;  // false: the lifter was getting used to it
    QString tip;
    friend bool operator==(const TrialTick&, const TrialTick&) = default;
};

// What was noted at the sets of a session.
struct NoteTick {
    QDate date;
    QString label;
    QString tip;
    friend bool operator==(const NoteTick&, const NoteTick&) = default;
};

// Bands of the capacity that first sets are likely to show on a day to come, in options.unit.
struct FanDay {
    double day = 0;
    double median = 0;
    std::array<double, 3> low{};  // of 95, 80 and 50 %
    std::array<double, 3> high{};
    friend bool operator==(const FanDay&, const FanDay&) = default;
};

// The smallest change between two sessions that means anything (typical_error.h), as a band around what was known at a day.
struct RealChange {
    QDate from;
    double reference = 0;
    double low = 0;
    double high = 0;
    double typicalError = 0;  // share of capacity
    int pairs = 0;            // of sessions that it rests on
    QString words;            // the whole of it in a sentence
    friend bool operator==(const RealChange&, const RealChange&) = default;
};
inline constexpr double kRealChangeConfidence = 0.9;
inline constexpr std::size_t kLeastPairs = 10;  // convention: with fewer, an error of error is half of it

struct ProgressSpec {
    QDate from;
    QDate to;
    int valueTicks = 5;  // at most so many steps of an axis
    std::vector<DateTick> dates;
    PanelSpec capacity;
    PanelSpec reps;
    std::vector<QPointF> trend;     // (chartDay, capacity)
    std::vector<QPointF> trendLow;  // edges of the 90 % band, at the same days
    std::vector<QPointF> trendHigh;
    std::vector<std::size_t> trendStarts;  // index of the first point of every unbroken stretch
    std::vector<FanDay> fan;               // today and every week to come
    std::optional<RealChange> realChange;
    std::optional<NextSet> next;
    std::vector<SameLoad> loads;
    std::vector<SetMark> sets;           // by day and number
    std::vector<LoadSeries> loadSeries;  // the most used first
    std::vector<BlockSpan> blocks;
    std::vector<BlockSpan> layoffs;  // breaks between two sessions of the line
    std::vector<DecisionTick> decisions;
    std::vector<TrialTick> trials;  // sessions that were held, by date
    std::vector<NoteTick> notes;
    std::vector<QStringList> readouts;  // of each of reps.points: what stands there in words, a line each
    QString summary;
    ChartTable table;
    [[nodiscard]] bool empty() const { return reps.points.empty(); }
    friend bool operator==(const ProgressSpec&, const ProgressSpec&) = default;
};

struct ProgressSource {
    const LineReading& reading;
    const std::vector<Row<Block>>& blocks;
    const std::vector<Row<Decision>>& decisions;      // of the athlete; other lines' decisions are left out
    std::optional<Id<LiftLine>> line;                 // absent: only decisions about the lifter
    QString name;                                     // of the line, for the summary
    const LineRecord* record = nullptr;               // absent: no sets, no notes, no trials
    const std::vector<Row<Trial>>* trials = nullptr;  // of the athlete; absent: none
    std::vector<CapacityAhead> ahead = {};            // empty: nothing can be said
};

struct ProgressOptions {
    QLocale locale;
    MassUnit unit = MassUnit::kg;
    std::optional<QDate> from;  // leave out what came before
    QDate asOf;                 // the time axis reaches to here; invalid: to the last session
    int dateTicks = 9;
    int valueTicks = 5;
    bool nextSet = true;  // false: the record ended long ago, nothing is drawn behind it
    int layoffDays = 16;  // a longer break is a layoff (verdict_thresholds.h)
};

[[nodiscard]] ProgressSpec buildProgressSpec(const ProgressSource& source, const ProgressOptions& options);
// "at standard", "not watched", "off standard", "deload".
[[nodiscard]] QString pointKindWord(PointKind kind);
// "near failure", "some in reserve", "far from failure", "reserve unknown".
[[nodiscard]] QString setEffortWord(SetEffort effort);

}  // namespace steelyard
