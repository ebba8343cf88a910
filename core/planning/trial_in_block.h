// A trial's sessions among the planned days: each has the trial's lift first, as its arm wants it.
//
//   const TrialGround ground{log.blocks, library, usualWeekdays(log, today), today};
//   const LaidTrial laid = layTrial(ground, trial);
//   laid.blocks                        // the blocks that change, as they will be
//   laid.outside                       // sessions that no block has room for: say so
//   relayTrial(ground, before, after)  // sessions were moved: the plan follows
//   carryChoice(ground, trial, arm)    // what was chosen becomes the lift of the weeks that remain
//
// A session takes the place of a slot of the same exercise on that day, with its rest, note and way to go on; other slots of the
// exercise go, because the trial is the exercise's work that day. Sets, band and reserve are the trial's own in every week, for an easier
// week would spoil the comparison (`easier` says where); the load is left to the lifter's record on that lift. A day that is
// missing is added where it is one of the training weekdays. A moved session changes places with what it finds. Days before `from`
// stay as they were. An exercise is that of the arms' variants.
//
// The blocks are to be laid out well (block_places.h) and stay so. Pure; no failures: what couldn't be done is said in the lists.
#pragma once

#include "core/domain/trial.h"
#include "core/planning/block_places.h"

namespace steelyard {

struct TrialGround {
    const std::vector<Row<Block>>& blocks;
    const Library& library;
    std::vector<int> weekdays;  // 1 is Monday: days that may become training days where none is planned
    QDate from;                 // the first day that may change
};

struct LaidTrial {
    std::vector<Row<Block>> blocks = {};  // those that change
    std::vector<QDate> laid = {};
    std::vector<QDate> noTraining = {};  // in a block, but no training day
    std::vector<QDate> daysOff = {};
    std::vector<QDate> outside = {};  // in no block
    std::vector<QDate> easier = {};   // laid, in an easier or a test week
};

// The slot of an arm's session; rest, note and way to go on are those of `base`, where there is one.
[[nodiscard]] Slot slotOfArm(const Trial&, std::size_t arm, const Slot* base = nullptr);
// Whether a variant is of the exercise (or one of the exercises) that the trial is about.
[[nodiscard]] bool isOfTrial(const Trial&, const Library&, Id<Variant>);

[[nodiscard]] LaidTrial layTrial(const TrialGround&, const Trial&);
[[nodiscard]] LaidTrial relayTrial(const TrialGround&, const Trial& before, const Trial& after);
// Every slot of the trial's exercise from `from` on gets the arm's lift and band. Sets and reserve stay as planned, loads of another
// lift are dropped. Where the arm's lift stands on that day already, the other slot goes.
[[nodiscard]] LaidTrial carryChoice(const TrialGround&, const Trial&, std::size_t arm);

}  // namespace steelyard
