// The starter library: exercises over the whole body with their variants, grips and rep standards, and a few gyms, as
// data files of the program. A new book begins with it; the coach then owns every row.
//
//   STEELYARD_TRY(const StarterLibrary library, builtInStarterLibrary());
//
// The files refer by name. Reading is strict: an unknown key, muscle, grip or choice, a missing field or a name that stands
// twice is Invalid, and the message names the place.
#pragma once

#include "core/base/result.h"
#include "core/domain/gym.h"

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
    QString grip;
    RepBand band;
    bool isDefault = false;
    std::vector<StarterStandard> standards;
};

struct StarterExercise {
    QString name;
    std::vector<std::pair<QString, double>> shares;  // muscle key, share; the target first
    std::vector<StarterVariant> variants;
};

struct StarterLibrary {
    std::vector<Muscle> muscles;
    std::vector<Grip> grips;
    std::vector<StarterExercise> exercises;
    std::vector<Gym> gyms;
};

[[nodiscard]] Result<StarterLibrary> readStarterLibrary(const QByteArray& libraryJson, const QByteArray& gymsJson);
[[nodiscard]] Result<StarterLibrary> builtInStarterLibrary();

}  // namespace steelyard
