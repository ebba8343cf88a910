// The backward lean that balance alone asks of a standing lifter who holds a load in front of the body.
//
//   balanceLeanDegrees({.bodyKg = 80, .loadKg = 40, .centreHeightM = 0.9378, .loadHeightM = 1.0674, .loadForwardM = 0.3474})
//   // 6.712
//
// Body and load are taken as one rigid body that turns about the ankle until its common centre stands as far ahead of the
// ankle as in quiet standing. What it leaves out: bending at the hip, the mass of the arms that move with the load, a belt,
// a wall or a bench behind the back; so it says about how much, never exactly.
//
// Units as named; heights are above the ankle, distances ahead are positive. Preconditions (asserted): masses positive,
// heights positive, a load at or ahead of the body. Plain statics; source of the lengths: elbowFlexionHold().
#pragma once

namespace steelyard {

struct HeldLoad {
    double bodyKg = 0;
    double loadKg = 0;
    double centreHeightM = 0;      // of the body's centre of mass
    double loadHeightM = 0;        // of the load
    double loadForwardM = 0;       // of the load, ahead of the body's centre of mass
    double centreForwardM = 0.05;  // of the body's centre of mass in quiet standing: common practice
};

// Degrees from upright; 0 when nothing is held.
[[nodiscard]] double balanceLeanDegrees(const HeldLoad& held);

// Where a load is while the elbows are bent to a right angle and the upper arms hang, for a lifter of this stature: the
// hardest point of a curl. `reachM` replaces the estimated distance from elbow to the centre of the grip.
// Sources: heights as fractions of stature, Drillis & Contini 1966 in Winter, Biomechanics and Motor Control (shoulder .818,
// upper arm .186, ankle .039; from memory); centre of mass .56 (men) and .55 (women) of stature (common practice); elbow to
// grip .193 and .188 of stature, de Leva 1996, J Biomech 29(9):1223-1230, with ANSUR II (2012). Sex unknown: between.
enum class BodyTable { Men, Women, Between };
[[nodiscard]] HeldLoad elbowFlexionHold(double bodyKg, double loadKg, double statureM, BodyTable table,
                                        double reachM = 0);

}  // namespace steelyard
