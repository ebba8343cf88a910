// Where a rating of discomfort in a joint lies in the pain-monitoring model.
//
//   discomfortZone(4) == DiscomfortZone::Acceptable
//
// The model: 0 to 2 is safe, 3 to 5 acceptable, more than 5 a high risk; it may reach 5 during and after training when it has
// settled by the next morning and does not rise from week to week. A stricter variant in clinics calls 4 and 5 the edge.
// Sources: Thomeé 1997, Phys Ther 77:1690-1703; Silbernagel et al. 2007, Am J Sports Med 35:897-906 (cut-offs from memory).
// The rule of joint discomfort (flags/rules/joint_discomfort.cpp) takes its limit from here.
//
// Units: the 0-10 numeric rating. It sorts what was said; what the discomfort is, only somebody who examines the joint can say.
#pragma once

namespace steelyard {

inline constexpr int kSafeDiscomfort = 2;        // up to here
inline constexpr int kAcceptableDiscomfort = 5;  // up to here

enum class DiscomfortZone { Safe, Acceptable, High };

[[nodiscard]] constexpr DiscomfortZone discomfortZone(int rating)
{
    if (rating <= kSafeDiscomfort) return DiscomfortZone::Safe;
    return rating <= kAcceptableDiscomfort ? DiscomfortZone::Acceptable : DiscomfortZone::High;
}

}  // namespace steelyard
