#include "core/flags/reading_thresholds.h"

#include "core/flags/registry.h"

#include <algorithm>

namespace steelyard {

VerdictThresholds readingThresholds(const RuleSettings& settings)
{
    VerdictThresholds thresholds;
    if (const FlagRule* effort = findRule(u"effort_unknown")) {
        const RuleParameters limits(*effort, settings);
        thresholds.mostEffortless = limits.value(u"percent") / 100;
        thresholds.effortExposures = limits.whole(u"sessions");
    }
    if (const FlagRule* stalled = findRule(u"stalled")) {
        const RuleParameters limits(*stalled, settings);
        // The window keeps its room around the weeks asked for.
        thresholds.stallWindowWeeks += limits.whole(u"weeks") - thresholds.stallWeeks;
        thresholds.stallWeeks = limits.whole(u"weeks");
        thresholds.stallExposures = limits.whole(u"sessions");
    }
    return thresholds;
}

}  // namespace steelyard
