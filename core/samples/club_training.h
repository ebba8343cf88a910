// How an invented lifter trains: a hidden strength that rises, rests, stalls or falls, and the sets that a coach would have
// written down, with everything that real logs suffer from: days off form, efforts not said, repetitions nobody watched,
// swings that creep in, slips of the pen.
//
// The reps curve, the noise and the habits are assumptions of this generator, made to look like a club and not measured on
// one. It shares nothing with the analysis that reads its logs.
#pragma once

#include "core/domain/logbook.h"
#include "core/samples/club_random.h"

namespace steelyard {

// What is fixed for one lift line of one invented lifter.
struct TrainedLift {
    Loading loading = Loading::BarTotal;
    RepBand band;
    MassUnit unit = MassUnit::kg;
    double stepAmount = 2.5;     // in the unit
    double emptyAmount = 20;     // the least that can be loaded
    double strengthKg = 60;      // hidden one-repetition strength at the start
    double endurance = 30;       // reps curve: reps = endurance * (strength / load - 1)
    double pacePerWeek = 0.004;  // share of strength
    double jointTrouble = 0;     // 0..1: how often the joint complains
    Joint joint = Joint::Elbow;
    bool leanIsMeasured = false;  // while swings creep in
};

// Habits of one invented lifter and of who watches them.
struct LifterHabits {
    double watchedShare = 0.8;
    double saysEffort = 0.95;  // how often RIR is written down
    bool usesRpe = false;
    double dayNoise = 0.02;
    double slipOfThePen = 0.003;
    double ratesExercises = 0.5;
};

struct WrittenExposure {
    std::vector<SetEntry> sets;
    ExerciseRating rating;
};

// Goes through one lift line session by session.
class LiftTraining {
public:
    LiftTraining(TrainedLift lift, LifterHabits habits, ClubRandom& random);
    // One session; weeks are counted from the club's first day. `restedWeeks` is the pause before it.
    [[nodiscard]] WrittenExposure next(double week, double restedWeeks, bool deload);

private:
    enum class Spell { Rise, Flat, Fall };
    void moveOn(double week, double restedWeeks);
    [[nodiscard]] SetEntry workSet(int index, double strengthToday, bool deload);
    void addQuality(SetEntry& set);
    void addSlip(SetEntry& set);
    [[nodiscard]] ExerciseRating rate();
    [[nodiscard]] Load loadOf(double amount) const;
    void progressLoad(const std::vector<SetEntry>& sets);

    TrainedLift m_lift;
    LifterHabits m_habits;
    ClubRandom* m_random;  // a pointer, so that a lift can be moved within its day
    double m_strength;
    double m_load;  // working amount in the lift's unit
    double m_week = 0;
    Spell m_spell = Spell::Rise;
    double m_spellEnds = 0;
    double m_cheatFrom = 1e9;  // weeks in which swings creep in
    double m_cheatUntil = 1e9;
    double m_painFrom = 1e9;
    double m_painUntil = 1e9;
};

}  // namespace steelyard
