// The standard normal distribution.
//
//   normalCdf(1.96)        == 0.9750021...
//   normalQuantile(0.975)  == 1.9599640...
//
// Units: none. Accurate to about 1e-14 relative, in the tails too.
#pragma once

namespace steelyard {

[[nodiscard]] double normalCdf(double z);
// 1 - normalCdf(z) without losing the digits of a small tail.
[[nodiscard]] double normalUpperTail(double z);
// log(normalCdf(z)); finite for every finite z, also where the probability itself is below the smallest double.
[[nodiscard]] double normalLogCdf(double z);
// Density at z by upper tail at z: the mean of a standard normal value known only to lie above z (one over Mills' ratio).
[[nodiscard]] double normalHazard(double z);
// Its derivative, hazard * (hazard - z), between 0 and 1: how much of the variance that knowledge takes away. Keeps its
// digits where the hazard comes close to z.
[[nodiscard]] double normalHazardSlope(double z);
// The z with normalCdf(z) == probability. 0 gives -infinity, 1 gives infinity, anything outside [0, 1] gives NaN.
[[nodiscard]] double normalQuantile(double probability);

}  // namespace steelyard
