// How much of a fault is tried: a share of it in the ordinary suite, all of it with STEELYARD_FAULTS=long (packaging/faults long).
#pragma once

#include <QtCore/QtGlobal>

#include <algorithm>

namespace steelyard::test {

[[nodiscard]] inline bool faultsAreLong()
{
    return qgetenv("STEELYARD_FAULTS") == "long";
}

// The place of the next fault: every place, or all of the first few and then ever fewer.
[[nodiscard]] inline int nextFault(int place)
{
    return place + (faultsAreLong() ? 1 : std::max(1, place / 6));
}

}  // namespace steelyard::test
