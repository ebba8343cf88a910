#include "core/numerics/beta.h"

#include <boost/math/distributions/beta.hpp>

#include <algorithm>

namespace steelyard {
namespace {

// Without the detour through long double.
using PlainBetaPolicy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using PlainBeta = boost::math::beta_distribution<double, PlainBetaPolicy>;

}  // namespace

double betaDensity(double x, double a, double b)
{
    // At the very ends a density may be infinite, which no integral needs.
    return x <= 0 || x >= 1 ? 0 : boost::math::pdf(PlainBeta(a, b), x);
}

double betaCdf(double x, double a, double b)
{
    return boost::math::cdf(PlainBeta(a, b), std::clamp(x, 0.0, 1.0));
}

double betaQuantile(double probability, double a, double b)
{
    return boost::math::quantile(PlainBeta(a, b), std::clamp(probability, 0.0, 1.0));
}

}  // namespace steelyard
