// What several rules share: evidence of capacity, and the choice between one flag a line and one for the lifter.
// Days and numbers in sentences go through snapshot.wording, masses in evidence through snapshot.massIn().
#pragma once

#include "core/domain/gave_out.h"
#include "core/flags/flag_rule.h"

namespace steelyard {

// Capacity at the sessions since the verdict began: where it began, and the newest five.
[[nodiscard]] std::vector<Evidence> capacityEvidence(const ReviewSnapshot&, const LineReading&);

// The parameter "worse" that a rule with a measure has, and the measure: what was dismissed comes back when it is worse by so much.
[[nodiscard]] RuleParameter worseParameter(const QString& unit, double usual, double low, double high);
[[nodiscard]] FlagMeasure measured(double value, const RuleParameters& limits);

// The exposures of the last `weeks` weeks for which `wanted` holds, oldest first.
template <class Wanted>
[[nodiscard]] std::vector<const Exposure*> exposuresSince(const ReviewSnapshot& snapshot, const SnapshotLine& line,
                                                          int weeks, Wanted&& wanted)
{
    std::vector<const Exposure*> found;
    for (const Exposure& exposure : line.record->exposures)
        if (exposure.date > snapshot.asOf.addDays(-7 * weeks) && exposure.date <= snapshot.asOf && wanted(exposure))
            found.push_back(&exposure);
    return found;
}

struct LineFinding {
    const SnapshotLine* line = nullptr;
    Flag flag;
};

// One flag a line; when more than half of the lines trained lately (and at least two) are found, the matter is the
// lifter's and becomes one flag with `sentence` and the newest evidence of each line.
void addByLineOrLifter(std::vector<LineFinding> findings, const ReviewSnapshot&, const QString& sentence,
                       std::vector<Flag>& flags);

}  // namespace steelyard
