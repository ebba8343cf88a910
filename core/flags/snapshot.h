// What the rules look at: one athlete's record, every line read, and the day. Built once a review.
//
//   const ReviewSnapshot snapshot = takeSnapshot(log, engine, asOf);
//   for (const SnapshotLine& line : snapshot.lines)
//       if (line.recent && line.reading.verdict == Verdict::Stalled) ...
//
// The log must outlive the snapshot. Pure; no failures.
#pragma once

#include "core/analysis/counting.h"
#include "core/base/wording.h"

namespace steelyard {

// A line that was not trained for longer is read but raises no flag about its progress.
inline constexpr int kRecentWeeks = 8;

struct SnapshotLine {
    const LineRecord* record = nullptr;  // never null
    LineReading reading;
    std::vector<CountedExposure> counted;  // same order and length as reading.points
    std::optional<QDate> lastTrained;
    bool recent = false;  // trained in the last kRecentWeeks weeks

    // The last `most` exposures with working sets, oldest first.
    [[nodiscard]] std::vector<const CountedExposure*> lastWorking(std::size_t most) const;
};

struct ReviewSnapshot {
    const AthleteLog& log;
    QDate asOf;
    std::vector<SnapshotLine> lines;  // as in log.lines
    Wording wording;                  // of sentences and evidence

    // The unit that masses are shown in to this lifter, "kg" or "lb", and a mass in it.
    [[nodiscard]] QString unitText() const;
    [[nodiscard]] double massIn(double kilograms) const;
};

[[nodiscard]] ReviewSnapshot takeSnapshot(const AthleteLog&, const ReadingEngine&, QDate asOf, Wording wording = {});

// "Arm curl, straight bar, supinated": a line as a sentence names it; names that say nothing special are left out.
[[nodiscard]] QString lineName(const LineRecord&);

}  // namespace steelyard
