// A rule whose numbers the coach may change: a reason to look at a lifter, or a way to progress. Each number says its range
// and where its default comes from.
//
//   const RuleParameters limits(rule, settings);
//   limits.whole(u"weeks")
//
// Invariants: a default lies in its range. Failures: none; what was set is held within its range, and what was set for
// another rule is not looked at.
#pragma once

#include "core/domain/rule_settings.h"

#include <QtCore/QStringView>

#include <vector>

namespace steelyard {

struct RuleParameter {
    QString name;   // stable
    QString label;  // for people, before the value: "Looks back"
    QString unit;   // for people, after it: "weeks", "%", "of 10"
    double defaultValue = 0;
    double low = 0;
    double high = 0;
    QString sourceOfDefault;  // for people
    int decimals = 0;         // to set it in, where it goes finer than the numbers above
};

class AdjustableRule {
public:
    virtual ~AdjustableRule() = default;
    // Lower-case words joined by '_', the same for ever: what is stored about a rule is stored by it.
    [[nodiscard]] virtual QString id() const = 0;
    [[nodiscard]] virtual std::vector<RuleParameter> parameters() const { return {}; }
};

// The thresholds in force for one rule: its defaults, replaced by what the coach set, held within their ranges.
class RuleParameters {
public:
    RuleParameters(const AdjustableRule& rule, const RuleSettings& settings);
    // `name` is one of the rule's parameters (asserted).
    [[nodiscard]] double value(QStringView name) const;
    [[nodiscard]] int whole(QStringView name) const;

private:
    std::vector<std::pair<QString, double>> m_values;
};

}  // namespace steelyard
