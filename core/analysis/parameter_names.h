// The readings' numbers by name: how they are stored, exported and told apart.
//
//   const std::map<QString, double> numbers = numbersOf(parameters);      // "day_noise" -> 0.027
//   const auto parameters = parametersFrom(numbers, version);
//
// All of them, not only the fitted ones: what a later program ships must not change what an earlier fit says. Names that
// aren't known are left alone, numbers that are missing are the shipped ones. Failure: absent when a known number is out of
// its range.
#pragma once

#include "core/analysis/reading_parameters.h"

#include <QtCore/QString>

#include <map>
#include <optional>

namespace steelyard {

[[nodiscard]] std::map<QString, double> numbersOf(const ReadingParameters&);
[[nodiscard]] std::optional<ReadingParameters> parametersFrom(const std::map<QString, double>&, int version);

}  // namespace steelyard
