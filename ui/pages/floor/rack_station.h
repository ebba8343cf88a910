// One lifter at the rack: what stands on their sheet, the set that is being counted, and since when they rest.
//
//   RackStation station = stationOf(daySheet);
//   station.step(1);                          // the next exercise of the sheet
//   station.counter.repetition(now);
//   const SetEntry set = *station.set();      // what would be stored
//
// The load is the sheet's target until another one is typed; it stays with the exercise. Without either there is no set to store.
#pragma once

#include "core/book/day_sheets.h"
#include "core/keying/rep_counter.h"

namespace steelyard {

struct RackStation {
    std::optional<Id<Athlete>> athlete;  // absent: nobody stands here
    QString lifter;
    SetKind kind = SetKind::Work;
    std::vector<SheetExercise> exercises;
    std::vector<std::optional<Load>> loads;  // by exercise, as typed
    std::size_t at = 0;                      // the exercise
    RepCounter counter;
    QString typed;               // of a load that isn't finished
    std::vector<SetEntry> done;  // in the book: of this lift, this day
    std::optional<RepCounter::Time> restSince;

    [[nodiscard]] bool isEmpty() const { return !athlete || exercises.empty(); }
    [[nodiscard]] const SheetExercise& exercise() const { return exercises[at]; }
    [[nodiscard]] std::optional<Load> load() const;
    [[nodiscard]] std::optional<SetEntry> set() const;  // repetitions and all; absent without a load or a repetition
    // Not while a set is being counted; stays within the sheet.
    bool step(int by);
    // Takes what was typed as the load; false: it is none, and stays to be mended.
    bool takeTyped();
    // m:ss of a time that has passed.
    [[nodiscard]] static QString clockWords(RepCounter::Time passed);
};

[[nodiscard]] RackStation stationOf(const DaySheet& day);

}  // namespace steelyard
