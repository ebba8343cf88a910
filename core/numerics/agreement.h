// How far a measurement strays when nothing changed: typical error and the smallest change that means anything.
//
//   const auto agreement = pairedAgreement(firstTrials, secondTrials);
//   const double least = minimalDetectableChange(agreement->typicalError);   // 95 %, one test against one test
//
// Units: whatever the trials are in. Failures: fewer than two pairs, or lists of different length, give nullopt.
// Sources: Hopkins 2000, Sports Med 30:1-15; Weir 2005, JSCR 19(1):231-240.
#pragma once

#include <cstddef>
#include <optional>
#include <span>

namespace steelyard {

struct PairedAgreement {
    std::size_t pairs = 0;
    double meanChange = 0;          // second minus first: learning or fatigue shared by all
    double typicalError = 0;        // SD of the differences / sqrt 2; equals sqrt(MSE) of the two-way table
    double consistency = 0;         // ICC(3,1); meaningless (0) when nobody differs from anybody
};

[[nodiscard]] std::optional<PairedAgreement> pairedAgreement(std::span<const double> first,
                                                             std::span<const double> second);

// Smallest change that is beyond the noise of two measurements with this confidence (two-sided):
// z * typicalError * sqrt 2. When each side is a mean of k sessions, the error of each shrinks by sqrt k.
[[nodiscard]] double minimalDetectableChange(double typicalError, double confidence = 0.95,
                                             int sessionsAveraged = 1);

// Probability that the true change is above `worthwhile`, given the observed change and nothing known beforehand.
[[nodiscard]] double chanceBeyond(double observedChange, double worthwhile, double typicalError);

}  // namespace steelyard
