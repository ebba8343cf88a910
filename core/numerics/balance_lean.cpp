#include "core/numerics/balance_lean.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>

namespace steelyard {
namespace {

constexpr double kAnkleHeight = 0.039;  // of stature, as all that follow
constexpr double kElbowHeight = 0.818 - 0.186;

struct BodyFractions {
    double centre;
    double reach;
};

BodyFractions fractionsOf(BodyTable table)
{
    switch (table) {
    case BodyTable::Men:
        return {0.56, 0.193};
    case BodyTable::Women:
        return {0.55, 0.188};
    case BodyTable::Between:
        break;
    }
    return {0.555, 0.1905};
}

}  // namespace

double balanceLeanDegrees(const HeldLoad& held)
{
    assert(held.bodyKg > 0 && held.loadKg >= 0 && held.centreHeightM > 0 && held.loadHeightM > 0
           && held.loadForwardM >= 0);
    const double share = held.loadKg / (held.bodyKg + held.loadKg);
    const double forward = held.centreForwardM + share * held.loadForwardM;
    const double height = (1 - share) * held.centreHeightM + share * held.loadHeightM;
    const double lean = std::atan2(forward, height) - std::asin(held.centreForwardM / std::hypot(forward, height));
    return std::max(0.0, lean) * 180 / std::numbers::pi;  // rounding may leave a hair below nothing
}

HeldLoad elbowFlexionHold(double bodyKg, double loadKg, double statureM, BodyTable table, double reachM)
{
    const BodyFractions fractions = fractionsOf(table);
    return {.bodyKg = bodyKg,
            .loadKg = loadKg,
            .centreHeightM = (fractions.centre - kAnkleHeight) * statureM,
            .loadHeightM = (kElbowHeight - kAnkleHeight) * statureM,
            .loadForwardM = reachM > 0 ? reachM : fractions.reach * statureM};
}

}  // namespace steelyard
