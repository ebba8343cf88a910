// One lifter's own curve of repetitions to failure against load on one line, as it stands today, with the sets it can be held
// against.
//
//   const auto curve = curveOfLine(engine, record, log, asOf);
//   curve->curve.repsAt(curve->movedKg(45))       // repetitions to failure with 45 kg on the bar
//   curve->published.repsAt(curve->movedKg(45))   // what Epley's equation says of the same lifter
//
// The curve is the filter's (regime_filter.h): z = ln(1 + R/30) falls by lambda for a unit of ln load, which is the curve of
// rep_curve.h with scale 30. Lambda is learned from the record's sets at different loads, from the lifter's other ways of
// doing the same exercise, and before these from what lifters are like; `ownShare` says how much of it is the record's.
// Published: Epley 1985 (lambda 1 for everybody), put through the lifter's own curve at `anchorKg`, the median load of the
// sets that went near failure: a curve that is laid through a maximum nobody lifted would compare two extrapolations.
//
// The sets are those of the last `weeks` weeks. They are heard as everywhere (set_evidence.h): exactly, or as a lower bound;
// those known only from above, and those of a deload, are left out. `today` says what such a set would be now: moved by what was known to have
// changed in strength since the moment before its session, and by what the earlier sets of that session cost.
//
// Units: kilograms moved inside; external load through loadKg() and movedKg(). Failures: absent when the line hasn't
// started, or when the sets that speak exactly in those weeks are fewer than kLeastCurveSets or all at one load (loads
// within kLeastLoadRatio): then there is no curve to see, only an equation.
#pragma once

#include "core/analysis/regime_engine.h"
#include "core/numerics/rep_curve.h"

namespace steelyard {

inline constexpr int kCurveWeeks = 26;
inline constexpr int kLeastCurveSets = 4;
inline constexpr double kLeastLoadRatio = 1.03;  // lightest to heaviest: about one plate of a small lift; convention

struct CurveSet {
    std::size_t exposure = 0;  // index into the record's exposures
    QDate date;
    Load load;
    double loadKg = 0;         // external
    double repsToFailure = 0;  // as it was heard
    double today = 0;          // to failure
    bool exact = true;         // false: at least so many
    friend bool operator==(const CurveSet&, const CurveSet&) = default;
};

struct LineCurve {
    RepCurve curve;      // in kilograms moved
    RepCurve published;  // Epley's, the same at the anchor
    double enduranceSd = 0;
    double levelSd = 0;   // of z at the reference load
    double ownShare = 0;  // 0: lambda is as expected of anybody, 1: the record alone says it
    double anchorKg = 0;  // external
    double lightestKg = 0;
    double heaviestKg = 0;  // external, of the sets that speak exactly
    Loading loading = Loading::BarTotal;
    double bodyKg = 0;
    std::vector<CurveSet> sets;  // oldest first

    [[nodiscard]] double movedKg(double loadKg) const { return systemKg(loading, loadKg, bodyKg); }
    [[nodiscard]] double loadKg(double movedKg) const
    {
        return loading == Loading::Assisted ? bodyKg - movedKg : movedKg - bodyKg;
    }
};

[[nodiscard]] std::optional<LineCurve> curveOfLine(const RegimeEngine&, const LineRecord&, const AthleteLog&,
                                                   QDate asOf, int weeks = kCurveWeeks);

}  // namespace steelyard
