#include "core/analysis/stall.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kDaysOfWeek = 7;

struct StallLook {
    bool clear = false;
    bool open = false;
};

std::vector<DatedEstimate> stallWindow(const std::vector<DatedEstimate>& usable, QDate asOf,
                                       const VerdictThresholds& limits)
{
    std::vector<DatedEstimate> window;
    for (const DatedEstimate& point : usable)
        if (point.date <= asOf && point.date > asOf.addDays(-kDaysOfWeek * limits.stallWindowWeeks))
            window.push_back(point);
    return window;
}

StallLook lookAt(const std::vector<DatedEstimate>& window, double worthwhile, const VerdictThresholds& limits)
{
    const auto fit = fitTrend(window);
    if (!fit) return {};
    const bool enough = window.size() >= static_cast<std::size_t>(limits.stallExposures)
                        && window.front().date.daysTo(window.back().date) >= kDaysOfWeek * limits.stallWeeks;
    const auto most = mostRise(window, limits.stallSure);
    StallLook look;
    look.clear = enough && most && *most < worthwhile;
    look.open = look.clear || fit->slope.pRising < limits.stallOver;
    return look;
}

}  // namespace

std::optional<std::vector<DatedEstimate>> stallOf(const std::vector<DatedEstimate>& usable, QDate asOf,
                                                  double worthwhile, const VerdictThresholds& limits)
{
    const auto lookBack = [&](int weeks) {
        return lookAt(stallWindow(usable, asOf.addDays(-kDaysOfWeek * weeks), limits), worthwhile, limits);
    };
    StallLook look = lookBack(0);
    for (int weeks = 0; weeks <= limits.stallMemoryWeeks && look.open; ++weeks) {
        const StallLook before = lookBack(weeks + 1);
        if (look.clear && before.clear) return stallWindow(usable, asOf, limits);
        look = before;
    }
    return std::nullopt;
}

}  // namespace steelyard
