#include "core/domain/adjustable_rule.h"

#include <algorithm>
#include <cmath>

namespace steelyard {

RuleParameters::RuleParameters(const AdjustableRule& rule, const RuleSettings& settings)
{
    for (const RuleParameter& parameter : rule.parameters()) {
        const auto set = settings.find({rule.id(), parameter.name});
        const bool usable = set != settings.end() && std::isfinite(set->second);
        m_values.emplace_back(parameter.name,
                              usable ? std::clamp(set->second, parameter.low, parameter.high) : parameter.defaultValue);
    }
}

double RuleParameters::value(QStringView name) const
{
    const auto found = std::ranges::find_if(m_values, [&](const auto& entry) { return entry.first == name; });
    Q_ASSERT(found != m_values.end());
    return found == m_values.end() ? 0.0 : found->second;
}

int RuleParameters::whole(QStringView name) const
{
    return static_cast<int>(std::lround(value(name)));
}

}  // namespace steelyard
