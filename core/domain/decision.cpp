#include "core/domain/decision.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct DecisionText {
    Q_DECLARE_TR_FUNCTIONS(DecisionText)
};

}  // namespace

Problems validate(const Decision& decision)
{
    Problems problems;
    if (decision.rule.isEmpty())
        problems.push_back({QStringLiteral("rule"), DecisionText::tr("A decision answers a flag.")});
    if (decision.kind == DecisionKind::Watch && (!decision.until || *decision.until <= decision.madeOn))
        problems.push_back(
            {QStringLiteral("until"), DecisionText::tr("Watching needs a day to look again, after today.")});
    if (decision.kind == DecisionKind::Dismiss && decision.reason.trimmed().isEmpty())
        problems.push_back({QStringLiteral("reason"), DecisionText::tr("Dismissing needs a reason, for later.")});
    return problems;
}

}  // namespace steelyard
