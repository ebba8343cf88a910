#include "core/numerics/agreement.h"

#include "core/numerics/distribution.h"

#include <cmath>
#include <numbers>

namespace steelyard {

std::optional<PairedAgreement> pairedAgreement(std::span<const double> first, std::span<const double> second)
{
    if (first.size() != second.size() || first.size() < 2) return std::nullopt;
    const auto n = static_cast<double>(first.size());
    double meanChange = 0;
    double meanOfBoth = 0;
    for (std::size_t i = 0; i < first.size(); ++i) {
        meanChange += (second[i] - first[i]) / n;
        meanOfBoth += 0.5 * (first[i] + second[i]) / n;
    }
    double differences = 0;
    double subjects = 0;
    for (std::size_t i = 0; i < first.size(); ++i) {
        const double change = second[i] - first[i] - meanChange;
        const double subject = 0.5 * (first[i] + second[i]) - meanOfBoth;
        differences += change * change;
        subjects += subject * subject;
    }
    PairedAgreement result;
    result.pairs = first.size();
    result.meanChange = meanChange;
    const double meanSquareError = 0.5 * differences / (n - 1.0);
    const double meanSquareSubjects = 2.0 * subjects / (n - 1.0);
    result.typicalError = std::sqrt(meanSquareError);
    if (meanSquareSubjects + meanSquareError > 0)
        result.consistency = (meanSquareSubjects - meanSquareError) / (meanSquareSubjects + meanSquareError);
    return result;
}

double minimalDetectableChange(double typicalError, double confidence, int sessionsAveraged)
{
    const double z = normalQuantile(0.5 + 0.5 * confidence);
    return z * typicalError * std::numbers::sqrt2 / std::sqrt(static_cast<double>(sessionsAveraged));
}

double chanceBeyond(double observedChange, double worthwhile, double typicalError)
{
    return normalUpperTail((worthwhile - observedChange) / (typicalError * std::numbers::sqrt2));
}

}  // namespace steelyard
