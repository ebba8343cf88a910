// What several rules share: evidence of capacity, and the choice between one flag a line and one for the lifter.
// Days and numbers in sentences go through snapshot.wording, masses in evidence through snapshot.massIn().
#pragma once

#include "core/flags/flag_rule.h"

namespace steelyard {

// Capacity at the sessions since the verdict began: where it began, and the newest five.
[[nodiscard]] std::vector<Evidence> capacityEvidence(const ReviewSnapshot&, const LineReading&);

struct LineFinding {
    const SnapshotLine* line = nullptr;
    Flag flag;
};

// One flag a line; when more than half of the lines trained lately (and at least two) are found, the matter is the
// lifter's and becomes one flag with `sentence` and the newest evidence of each line.
void addByLineOrLifter(std::vector<LineFinding> findings, const ReviewSnapshot&, const QString& sentence,
                       std::vector<Flag>& flags);

}  // namespace steelyard
