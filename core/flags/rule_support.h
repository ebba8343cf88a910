// What several rules share: words for evidence, and the choice between one flag a line and one for the lifter.
#pragma once

#include "core/flags/flag_rule.h"

namespace steelyard {

// "40" or "42.5": C locale, at most that many decimals, no trailing zeros.
[[nodiscard]] QString plainNumber(double value, int decimals = 1);
[[nodiscard]] QString plainDay(QDate);

struct LineFinding {
    const SnapshotLine* line = nullptr;
    Flag flag;
};

// One flag a line; when more than half of the lines trained lately (and at least two) are found, the matter is the
// lifter's and becomes one flag with `sentence` and the newest evidence of each line.
void addByLineOrLifter(std::vector<LineFinding> findings, const ReviewSnapshot&, const QString& sentence,
                       std::vector<Flag>& flags);

}  // namespace steelyard
