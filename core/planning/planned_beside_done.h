// What a block planned beside what was done, by slot and week, for the days up to today.
//
//   const PlannedBesideDone beside = plannedBesideDone(log, block, today);
//   beside.weeks[0].days[1].slotList[0].outcome == SlotOutcome::Fewer;   beside.weeks[0].days[1].slotList[0].countedReps == {10, 9}
//   beside.ofBlock().sessionShare()                                      == 0.92
//
// A planned day belongs to the session on its date, else to one on another day of the same plan week that no planned day has: who
// trains on Tuesday instead of Monday skipped nothing. Sets are working sets of the slot's own line; where another line of the
// same exercise was done that day and isn't planned there, the slot was done otherwise. In an easier week deload sets are what was
// planned. Today's day counts as soon as there is a session; days of a holiday are not expected.
//
// Shares are of what was to be done so far, between 0 and 1: sets beyond the plan make up for nothing. A set is on target with the
// planned load, or more, for at least the low end of the planned band in counted repetitions; without a planned load the
// repetitions alone decide.
// Pure; no failures. A share of nothing is absent.
#pragma once

#include "core/analysis/athlete_log.h"

namespace steelyard {

enum class SlotOutcome {
    Ahead,    // still to come, or not expected
    Done,     // all planned sets, or more
    Fewer,    // some of them
    Changed,  // another line of the exercise instead
    Skipped,
};

struct SlotBesideDone {
    SlotOutcome outcome = SlotOutcome::Ahead;
    int plannedSets = 0;
    RepBand plannedBand;
    std::optional<Load> plannedLoad;
    std::vector<Load> loads;           // of the sets that were done, in order
    std::vector<int> countedReps;      // of the same sets
    const LineRecord* line = nullptr;  // what was done; null when nothing
    friend bool operator==(const SlotBesideDone&, const SlotBesideDone&) = default;
};

struct DayBesideDone {
    QDate planned;
    std::optional<QDate> done;             // absent: no session yet, or none
    bool expected = false;                 // over by today, and no holiday
    std::vector<SlotBesideDone> slotList;  // as in the planned day
};

struct WeekBesideDone {
    std::vector<DayBesideDone> days;  // as in the planned week
};

struct Adherence {
    int expectedSessions = 0;
    int doneSessions = 0;
    int expectedSets = 0;
    int doneSets = 0;    // of the expected ones
    int targetSets = 0;  // of those that were done
    int skippedSlots = 0;
    int changedSlots = 0;

    [[nodiscard]] std::optional<double> sessionShare() const;
    [[nodiscard]] std::optional<double> setShare() const;
    [[nodiscard]] std::optional<double> targetShare() const;
};

struct PlannedBesideDone {
    std::vector<WeekBesideDone> weeks;  // as in the block

    [[nodiscard]] Adherence ofWeek(std::size_t week) const;
    [[nodiscard]] Adherence ofBlock() const;
};

// The log outlives what is returned.
[[nodiscard]] PlannedBesideDone plannedBesideDone(const AthleteLog& log, const Block& block, QDate today);

}  // namespace steelyard
