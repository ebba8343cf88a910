#include "core/flags/attention.h"

#include "core/flags/registry.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace steelyard {
namespace {

constexpr std::array<double, 5> kConcernWeights{81, 27, 9, 3, 1};

double severityPoints(Severity severity)
{
    return 1.0 + 0.5 * static_cast<double>(severity);
}

}  // namespace

Concern concernOf(const Flag& flag)
{
    const FlagRule* rule = findRule(flag.rule);
    return rule ? rule->concern() : Concern::Housekeeping;
}

double attentionOf(const std::vector<Flag>& flags)
{
    std::array<double, kConcernWeights.size()> points{};
    for (const Flag& flag : flags) points[static_cast<std::size_t>(concernOf(flag))] += severityPoints(flag.severity);
    double attention = 0;
    for (std::size_t i = 0; i < points.size(); ++i) attention += kConcernWeights[i] * (1.0 - std::exp2(-points[i]));
    return attention;
}

void sortWorstFirst(std::vector<Flag>& flags)
{
    const auto rank = [](const Flag& flag) {
        return std::tuple(static_cast<int>(concernOf(flag)), -static_cast<int>(flag.severity), flag.rule,
                          flag.line ? flag.line->value() : std::int64_t{0});
    };
    std::ranges::stable_sort(flags, [&](const Flag& a, const Flag& b) { return rank(a) < rank(b); });
}

}  // namespace steelyard
