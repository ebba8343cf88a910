// Nothing goes up: the load of the last session stays, and repetitions are what the lifter has that day.
#include "core/planning/progression_support.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct HoldText {
    Q_DECLARE_TR_FUNCTIONS(HoldText)
};

class Hold final : public ProgressionRule {
public:
    QString id() const override { return QStringLiteral("hold"); }
    QString title() const override { return HoldText::tr("Hold the load"); }
    QString description() const override
    {
        return HoldText::tr(
            "The load stays as it was. The target is what is likely at it with the planned reserve, wherever in the "
            "band "
            "that is: for weeks in which technique, a holiday or another lift comes first.");
    }
    std::optional<NextStep> next(const ProgressionInput& input, const RuleParameters&) const override
    {
        const auto last = lastDone(input);
        if (!last) return std::nullopt;
        NextStep step{last->load, {}, StepKind::Hold, HoldText::tr("The load is held by plan.")};
        if (likelyFirst(input, last->load)) {
            step.targetReps = likelyTargets(input, last->load, last->planned);
        } else {
            for (const DoneSet& set : last->sets) step.targetReps.push_back(std::max(1, set.countedReps));
            step.targetReps = fittedTo(std::move(step.targetReps), last->planned);
        }
        return step;
    }
};

}  // namespace

const ProgressionRule& holdRule();
const ProgressionRule& holdRule()
{
    static const Hold rule;
    return rule;
}

}  // namespace steelyard
