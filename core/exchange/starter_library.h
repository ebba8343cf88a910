// The library and the gyms a new book begins with, read from two data files.
//
//   STEELYARD_TRY(const StarterLibrary library, builtInStarterLibrary());
//   for (const StarterExercise& exercise : library.exercises) ...   // insert, then toVariant(variant, id, gripId)
//
// Rows refer to each other by muscle key and grip name, because Ids exist only once a book has stored them.
// Invariants of what is returned: muscle keys, muscle names, grip names, exercise names and gym names are unique;
// variant names within their exercise and standard names within their variant too; every reference is known; each
// exercise has exactly one default variant, each variant exactly one default standard; every row passes the domain's
// validate().
// Failures: ErrorCode::Invalid with the place ("exercise “Arm curl”, variant “straight bar, upright”: ...");
// NotFound when the program was built without its data files.
// Source of the data: the project's own wording and judgement. Shares are starting values from general anatomy, from
// memory and not from measurement; the coach edits them.
#pragma once

#include "core/base/result.h"
#include "core/domain/gym.h"
#include "core/domain/library.h"

#include <QtCore/QByteArray>

#include <utility>
#include <vector>

namespace steelyard {

struct StarterStandard {
    QString name;
    QString start;
    QString end;
    QString path;
    QString body;
    QString lowering;
    std::optional<int> leastTravelPercent;
    bool isDefault = false;
    friend bool operator==(const StarterStandard&, const StarterStandard&) = default;
};

struct StarterVariant {
    QString name;
    Implement implement = Implement::Other;
    QString position;
    QString path;
    Loading loading = Loading::BarTotal;
    std::optional<Load> barMass;
    std::optional<Load> step;
    BackLoading backLoading = BackLoading::None;
    Sides sides = Sides::Both;
    TravelKind travel = TravelKind::Straight;
    QString grip;  // name of one of the library's grips
    RepBand band;
    bool isDefault = false;
    std::vector<StarterStandard> standards;
    friend bool operator==(const StarterVariant&, const StarterVariant&) = default;
};

struct StarterExercise {
    QString name;
    std::vector<std::pair<QString, double>> shares;  // muscle key, share; largest share first
    std::vector<StarterVariant> variants;
    friend bool operator==(const StarterExercise&, const StarterExercise&) = default;
};

struct StarterLibrary {
    std::vector<Muscle> muscles;
    std::vector<Grip> grips;
    std::vector<StarterExercise> exercises;
    std::vector<Gym> gyms;
    friend bool operator==(const StarterLibrary&, const StarterLibrary&) = default;
};

[[nodiscard]] Result<StarterLibrary> readStarterLibrary(const QByteArray& libraryJson, const QByteArray& gymsJson);
// The files that ship inside the program.
[[nodiscard]] Result<StarterLibrary> builtInStarterLibrary();

// The rows as a book stores them.
[[nodiscard]] Variant toVariant(const StarterVariant& variant, Id<Exercise> exercise, std::optional<Id<Grip>> grip);
[[nodiscard]] RepStandard toStandard(const StarterStandard& standard, Id<Variant> variant);

}  // namespace steelyard
