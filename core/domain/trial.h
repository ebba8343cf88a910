// A trial: two to four ways of training one lift, tried by one athlete in an order drawn by lot, so that the answer is about
// this athlete and fair to every way. The design stands before the first session that counts and does not change afterwards;
// what happened otherwise is written to the days.
//
//   Trial trial{.athlete = athlete};
//   trial.question = "Supinated or neutral?";
//   trial.factor = TrialFactor::Grip;
//   trial.arms = {supinated, neutral};
//
// Units: rep bands in repetitions, lowering in seconds, ratings 0-10. Arms are named by their place: the first is A.
// Source of the terms (period, block, run-in): Vohra et al. 2015, BMJ 350:h1738; Kravitz and Duan (eds) 2014, AHRQ
// 13(14)-EHC122.
#pragma once

#include "core/domain/block.h"

#include <cstdint>

namespace steelyard {

// The one thing in which the arms differ.
enum class TrialFactor { Grip, Variant, Implement, Position, Path, RepBand, Lowering };

enum class TrialEnd {
    Concluded,   // answered, or all that was planned was done
    Discomfort,  // an arm hurt more than the limit allows
    Stopped,     // the coach's decision; the reason says why
};

inline constexpr std::size_t kFewestArms = 2;
inline constexpr std::size_t kMostArms = 4;

struct TrialArm {
    Id<Variant> variant;
    Id<Grip> grip;
    Id<RepStandard> standard;
    RepBand band;
    std::optional<Decimal> loweringSeconds;  // asked for; absent: as the standard says
    int runIn = 0;                           // sessions at the beginning that get the lifter used to it and don't count
    friend bool operator==(const TrialArm&, const TrialArm&) = default;
};

// What is looked at, and how much it weighs in the one answer. The key names an outcome of the registry (core/trials); unknown
// keys are kept, they may be a newer program's.
struct TrialOutcome {
    QString key;
    double weight = 0;  // 0 and above; of no unit, only the ratios matter
    friend bool operator==(const TrialOutcome&, const TrialOutcome&) = default;
};

// Discomfort is a veto, never averaged away: an arm that reaches this rating in any joint this many sessions running is out.
struct DiscomfortLimit {
    int rating = 4;
    int sessionsRunning = 2;
    friend bool operator==(const DiscomfortLimit&, const DiscomfortLimit&) = default;
};

// One session of the schedule, as drawn, and what became of it.
struct TrialDay {
    QDate date;
    int block = 0;                            // 1.. : each arm once in each block; 0: getting used to it, doesn't count
    std::size_t arm = 0;                      // as drawn; place in Trial::arms
    std::optional<std::size_t> armDone = {};  // what the coach says was done; absent: what the log says
    bool missed = false;                      // the coach says that it was not trained
    QString note = {};
    friend bool operator==(const TrialDay&, const TrialDay&) = default;
};

// Somebody looked at the results before the trial had ended. Said in the verdict.
struct TrialLook {
    QDate date;
    int sessionsDone = 0;
    friend bool operator==(const TrialLook&, const TrialLook&) = default;
};

struct TrialEnding {
    QDate date;
    TrialEnd kind = TrialEnd::Concluded;
    QString reason = {};
    std::optional<std::size_t> choice = {};  // the arm that the coach goes on with
    friend bool operator==(const TrialEnding&, const TrialEnding&) = default;
};

struct Trial {
    Id<Athlete> athlete;
    QString question;
    QDate designedOn;
    TrialFactor factor = TrialFactor::Grip;
    QString whyMoreThanOne = {};  // arms that differ in more than the factor need this reason
    std::vector<TrialArm> arms;
    std::vector<TrialOutcome> outcomes;  // each key once
    DiscomfortLimit limit = {};
    int sets = 3;  // of every session, whichever the arm
    std::optional<Decimal> plannedRir = {};
    int daysBetween = 2;                     // fewest from one session to the next
    int blocks = 6;                          // that count; each holds every arm once
    std::uint64_t seed = 1;                  // the order can be drawn again from it
    std::vector<TrialDay> days;              // by date
    std::vector<TrialLook> looks = {};       // by date
    std::optional<TrialEnding> ending = {};  // absent: it runs
    friend bool operator==(const Trial&, const Trial&) = default;
};

// "A", "B", "C", "D".
[[nodiscard]] QString armLetter(std::size_t arm);
// The arm of a letter, small or capital; absent: no letter from A to D.
[[nodiscard]] std::optional<std::size_t> armOfLetter(QStringView letter);
// The day of a date. Null: the trial has no session then.
[[nodiscard]] const TrialDay* dayOfTrial(const Trial&, QDate date);

// Of the shape alone; whether the arms differ in one thing is core/trials' to say, it needs the library.
[[nodiscard]] Problems validate(const Trial&);

template <>
struct EnumText<TrialFactor> {
    static constexpr auto table = std::to_array<EnumKey<TrialFactor>>({{TrialFactor::Grip, "grip"},
                                                                       {TrialFactor::Variant, "variant"},
                                                                       {TrialFactor::Implement, "implement"},
                                                                       {TrialFactor::Position, "position"},
                                                                       {TrialFactor::Path, "path"},
                                                                       {TrialFactor::RepBand, "rep_band"},
                                                                       {TrialFactor::Lowering, "lowering"}});
};
template <>
struct EnumText<TrialEnd> {
    static constexpr auto table = std::to_array<EnumKey<TrialEnd>>(
        {{TrialEnd::Concluded, "concluded"}, {TrialEnd::Discomfort, "discomfort"}, {TrialEnd::Stopped, "stopped"}});
};

}  // namespace steelyard
