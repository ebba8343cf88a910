#include "core/analysis/verdict_rules.h"

#include "core/numerics/calibration_curve.h"

#include <array>

namespace steelyard {
namespace {

// Chance of not rising, pooled over 1091 simulated lift lines and 41242 weeks.
constexpr std::array<CalibrationKnot, 12> kNotRisingCame{{{0, 0.07},
                                                          {0.05, 0.10},
                                                          {0.15, 0.18},
                                                          {0.25, 0.26},
                                                          {0.35, 0.34},
                                                          {0.45, 0.40},
                                                          {0.55, 0.46},
                                                          {0.65, 0.55},
                                                          {0.75, 0.63},
                                                          {0.85, 0.71},
                                                          {0.95, 0.81},
                                                          {1, 0.85}}};

bool isDown(std::optional<Verdict> said)
{
    return said == Verdict::Stalled || said == Verdict::Slipping;
}

}  // namespace

Finding decideVerdict(const LineGates& gates, const std::optional<RegimeChances>& chances, double notRisingLimit,
                      std::optional<Verdict> said, const VerdictThresholds& limits)
{
    if (gates.tooFew) return {Verdict::CantTell, u"too_few"};
    if (gates.mixed) return {Verdict::CantTell, u"mixed_record"};
    // An easy week says nothing new: the word of the week before stands.
    if (gates.deload && said) return {*said, u"deload"};
    const double keptRise = said == Verdict::Progressing ? limits.stay : 0;
    if (gates.effortUnknown) {
        const bool sure = chances && chances->rising >= limits.sureWithoutEffort - keptRise / 2;
        if (sure && !gates.afterLayoff && !gates.deload && !gates.plannedHold) return {Verdict::Progressing, u"rising"};
        return {Verdict::CantTell, u"effort_unknown"};
    }
    if (!chances) return {Verdict::CantTell, u"no_estimate"};
    if (gates.afterLayoff) return {Verdict::Holding, u"after_layoff"};
    if (gates.deload) return {Verdict::Holding, u"deload"};
    if (gates.plannedHold) return {Verdict::Holding, u"planned_hold"};
    if (chances->notRising() >= notRisingLimit - (isDown(said) ? limits.stay : 0)) {
        const double fall = limits.falling - (said == Verdict::Slipping ? limits.stay : 0);
        if (chances->falling >= fall) return {Verdict::Slipping, u"falling"};
        return {Verdict::Stalled, u"no_rise"};
    }
    if (chances->rising >= limits.rising - keptRise) return {Verdict::Progressing, u"rising"};
    return {Verdict::Holding, u"within_noise"};
}

bool isOfTheCalendar(QStringView reason)
{
    return reason == u"after_layoff" || reason == u"deload" || reason == u"planned_hold";
}

RegimeChances calibrated(const RegimeChances& stated)
{
    const double notRising = stated.notRising();
    const double came = cameTrue(kNotRisingCame, notRising);
    const double share = notRising > 0 ? stated.falling / notRising : 0;
    return {1 - came, came * (1 - share), came * share};
}

}  // namespace steelyard
