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
        thresholds.caution = static_cast<Caution>(limits.whole(u"caution"));
    }
    if (const FlagRule* whole = findRule(u"whole_lifter_drop"))
        thresholds.sureOfCommonFall = RuleParameters(*whole, settings).value(u"percent") / 100;
    return thresholds;
}

}  // namespace steelyard
