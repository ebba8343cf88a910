// The numbers that readings rest on, apart from the words' thresholds: what is taken for granted about lifters before their
// record speaks.
#pragma once

#include "core/domain/athlete.h"
#include "core/numerics/regime_parameters.h"

namespace steelyard {

// How much noisier or steadier than usual a lifter may be, and how likely that is beforehand.
struct NoiseScale {
    double scale = 1;
    double prior = 1;
    friend bool operator==(const NoiseScale&, const NoiseScale&) = default;
};

struct ReadingParameters {
    // Sixteen ages say the same on simulated rosters and take twice as long; so do off days asked for in every session.
    RegimeParameters filter{.ages = 8, .offFrom = 4};
    // By Experience: z a week in a rising segment. Of the size of published gains: the first year's are several times later
    // ones (Latella et al., preprint, on competing lifters).
    std::array<RegimePace, 3> paces{{{0.0153, 0.0067}, {0.0056, 0.0019}, {0.0012, 0.0005}}};
    // Of a lifter whose experience nobody wrote down. Convention.
    std::array<double, 3> experiencePrior{0.3, 0.45, 0.25};
    std::array<NoiseScale, 3> noises{{{0.7, 0.25}, {1.0, 0.50}, {1.4, 0.25}}};
    // How far a stated experience is believed, by Experience: a lifter may rise at the pace of the level above or below.
    // 1: it alone, which is best where paces are slow anyway.
    std::array<double, 3> experienceTrust{0.95, 0.95, 1.0};
    // The same where the experience is open too: coarser, because every one of these runs for every experience.
    std::array<NoiseScale, 2> coarseNoises{{{0.8, 0.50}, {1.2, 0.50}}};
    // How much of what one line says about a lifter's experience counts for the others: lines don't all rise at one pace.
    double experienceShare = 0.5;
    int version = 0;  // 0: as shipped; otherwise the number of the fit to this book
    friend bool operator==(const ReadingParameters&, const ReadingParameters&) = default;
};

}  // namespace steelyard
