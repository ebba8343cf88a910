// The numbers that a fit may move, each on a scale on which a step means the same everywhere: the logarithm, or the
// logarithm of the odds for shares.
//
//   for (const FitCoordinate& one : fitCoordinates(lines)) one.move(parameters, 0.1);   // about 10 % more of it
//
// Offsets count from the shipped numbers, so that a fit of a fit can't walk away.
#pragma once

#include "core/analysis/fit_line.h"

#include <functional>
#include <string>

namespace steelyard {

struct FitCoordinate {
    std::string name;
    std::function<double(const ReadingParameters&)> place;  // on its scale
    std::function<void(ReadingParameters&, double step)> move;

    [[nodiscard]] double offset(const ReadingParameters& parameters) const
    {
        return place(parameters) - place(ReadingParameters{});
    }
};

// A pace is moved only where this many lines are of lifters of that experience. Our convention.
inline constexpr int kLeastLinesOfAPace = 10;

// In a fixed order, those that matter most first.
[[nodiscard]] std::vector<FitCoordinate> fitCoordinates(std::span<const FitLine>);

}  // namespace steelyard
