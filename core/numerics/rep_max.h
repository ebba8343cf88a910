// The published equations that turn a load and repetitions to failure into a one-repetition maximum.
//
//   oneRepMax(RepMaxEquation::Epley, 100, 5)        == 116.667
//   oneRepMax(RepMaxEquation::Brzycki, 100, 15)     == nullopt: outside the range it was made for
//   repsAtFraction(RepMaxEquation::Epley, 0.8)      == 7.5
//
// Repetitions to failure = counted repetitions + repetitions in reserve, so they may be fractional.
// Invariants: one repetition returns the load itself (five of the seven would not); the equations only interpolate,
// so there is no answer under one repetition or over mostReps().
// An estimate is an index of trend, not a maximum: on small lifts the total error of prediction was over 10 %
// (Hutchins & Gearhart 2010).
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace steelyard {

enum class RepMaxEquation { Epley, Brzycki, Lander, Lombardi, Mayhew, OConnor, Wathan };

struct RepMaxInfo {
    RepMaxEquation equation;
    std::string_view name;    // the author's: the same in every language
    std::string_view source;  // bibliographic details from memory, formulas read
    double mostReps;
};

// Two of them divide by a line that reaches zero near 37 repetitions and are wrong long before; linear equations
// should stay within about ten repetitions (Reynolds, Gordon & Robergs 2006, JSCR 20(3):584-592). 12 and 20 are our
// conventions: the end of the tables that are printed, and the end of the loads for which strength is what gives out.
inline constexpr double kMostRepsLinearDenominator = 12;
inline constexpr double kMostRepsOther = 20;

inline constexpr std::array<RepMaxInfo, 7> kRepMaxEquations{{
    {RepMaxEquation::Epley, "Epley", "Epley 1985, Poundage chart, Boyd Epley Workout", kMostRepsOther},
    {RepMaxEquation::Brzycki, "Brzycki", "Brzycki 1993, JOPERD 64(1):88-90", kMostRepsLinearDenominator},
    {RepMaxEquation::Lander, "Lander", "Lander 1985, NSCA J 6:60-61", kMostRepsLinearDenominator},
    {RepMaxEquation::Lombardi, "Lombardi", "Lombardi 1989, Beginning Weight Training", kMostRepsOther},
    {RepMaxEquation::Mayhew, "Mayhew", "Mayhew et al. 1992, J Appl Sport Sci Res 6(4):200-206", kMostRepsOther},
    {RepMaxEquation::OConnor, "O'Connor", "O'Connor, Simmons & O'Shea 1989, Weight Training Today", kMostRepsOther},
    {RepMaxEquation::Wathan, "Wathan", "Wathan 1994, in Baechle (ed.), Essentials", kMostRepsOther},
}};

[[nodiscard]] const RepMaxInfo& info(RepMaxEquation equation);
[[nodiscard]] double mostReps(RepMaxEquation equation);

// nullopt for a load that isn't above zero, for less than one repetition, and for more than mostReps().
[[nodiscard]] std::optional<double> oneRepMax(RepMaxEquation equation, double loadKg, double repsToFailure);
// The load that this maximum lets be lifted so often; the inverse of oneRepMax in the load.
[[nodiscard]] std::optional<double> loadForReps(RepMaxEquation equation, double oneRepMaxKg, double repsToFailure);
// Repetitions to failure with a fraction (0, 1] of the maximum; never under 1. nullopt beyond mostReps().
[[nodiscard]] std::optional<double> repsAtFraction(RepMaxEquation equation, double fractionOfMax);

// Reported reserve is off by about one repetition up to five left and by more than two from seven on
// (Hackett et al. 2017, JSCR 31(8):2162-2168), so a set stopped far from failure says little about the maximum.
inline constexpr double kMostReserveForEstimate = 4;
// Whether a set may enter an estimate: effort known, at most kMostReserveForEstimate in reserve, and repetitions
// plus reserve within the equation's range. A set that ended in a failed repetition has 0 in reserve.
[[nodiscard]] bool usableForEstimate(RepMaxEquation equation, int countedReps, std::optional<double> repsInReserve);

struct PercentRow {
    int reps;
    int percentOfMax;
    bool fromMemory;  // not re-read; printed charts differ here (one gives 70 % for 12)
};

// Source: NSCA Essentials of Strength Training and Conditioning, 4th ed. (Haff & Triplett 2016), ch. 17.
inline constexpr std::array<PercentRow, 13> kHandbookPercents{{
    {1, 100, false}, {2, 95, false}, {3, 93, false}, {4, 90, false}, {5, 87, false},
    {6, 85, false},  {7, 83, false}, {8, 80, false}, {9, 77, false}, {10, 75, false},
    {11, 70, true},  {12, 67, true}, {15, 65, true},
}};

// The table's percentage for that many repetitions; nullopt where the table has no column.
[[nodiscard]] std::optional<int> handbookPercent(int reps);

}  // namespace steelyard
