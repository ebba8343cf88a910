// Which values of a panel would flatten its scale: a slip of the pen far from all the rest, not a record that moved far.
//
//   beyondScale({50, 51, 510, 52}, 0)  -> No, No, Above, No
//
// A value stands beyond the scale when it lies further from the median than six robust standard deviations (1.4826 x the
// median absolute deviation), than 60 % of the median and than `leastReach`, all three. Values far out that follow one
// another, three or more, are a series and stay. Nothing is cut where the rest would keep a third of the height anyway:
// then there is nothing to gain. Fewer than three values have no middle to be far from.
//
// Units: the caller's. `values` are in order of time and finite. Failures: none.
// Sources: the median and its deviation as a fence: Leys et al. 2013, J Exp Soc Psychol 49:764-766 (from memory). Six
// deviations, 60 %, three in a row and a third of the height are our conventions: 60 % lets any gain of an honest block
// pass and catches kilograms taken for pounds (120 %) and a moved decimal point.
#pragma once

#include <span>
#include <vector>

namespace steelyard {

enum class Beyond { No, Below, Above };

[[nodiscard]] std::vector<Beyond> beyondScale(std::span<const double> values, double leastReach);

}  // namespace steelyard
