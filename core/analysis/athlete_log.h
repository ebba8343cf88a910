// One athlete's record as a value: what analysis, flags, sheets and charts look at. It is read in one consistent
// snapshot by storage and never changes afterwards; nothing here knows a database.
#pragma once

#include "core/domain/block.h"
#include "core/domain/decision.h"
#include "core/domain/trial.h"

namespace steelyard {

struct LoggedSet {
    Id<SetEntry> id;
    int position = 1;  // order within the session over all exercises
    SetEntry set;
    friend bool operator==(const LoggedSet&, const LoggedSet&) = default;
};

// One session's sets on one lift line, in order.
struct Exposure {
    QDate date;
    std::vector<LoggedSet> sets;
    ExerciseRating rating;
    friend bool operator==(const Exposure&, const Exposure&) = default;
};

// One lift line with what names it and all its exposures, oldest first.
struct LineRecord {
    Id<LiftLine> id;
    LiftLine line;
    QString key;  // stable within the athlete: slugs of the four names joined by '/'
    Row<Exercise> exercise;
    Row<Variant> variant;
    Row<Grip> grip;
    Row<RepStandard> standard;
    std::vector<Exposure> exposures;
};

struct AthleteLog {
    Row<Athlete> athlete;
    std::vector<BodyMassEntry> bodyMass;    // oldest first
    std::vector<LineRecord> lines;          // by exercise, variant, grip and standard name
    std::vector<QDate> sessionDates;        // every day with a session, oldest first
    std::vector<Row<Block>> blocks;         // by start
    std::vector<Row<Decision>> decisions;   // oldest first
    std::vector<Row<Muscle>> muscles = {};  // of the library, so that muscles have names
    std::vector<Row<Trial>> trials = {};    // by the day of design

    // For people; empty when the library doesn't have it.
    [[nodiscard]] QString muscleName(Id<Muscle>) const;
    [[nodiscard]] QString muscleName(QStringView key) const;
};

}  // namespace steelyard
