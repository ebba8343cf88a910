#include "core/analysis/plain_trend.h"

#include <algorithm>

namespace steelyard {

std::vector<DatedEstimate> plainWindow(std::span<const CountedExposure> counted, const VerdictThresholds& limits)
{
    constexpr int kDaysAWeek = 7;
    std::vector<DatedEstimate> window;
    QDate later;
    for (auto it = counted.rbegin(); it != counted.rend(); ++it) {
        const QDate date = it->point.date;
        if (later.isValid() && date.daysTo(later) > limits.layoffDays) break;
        later = date;
        if (!it->estimate || it->point.offStandard) continue;
        if (!window.empty()) {
            const qint64 days = date.daysTo(window.front().date);
            const bool dense = window.size() >= limits.windowExposures && days > kDaysAWeek * limits.windowLeastWeeks;
            if (dense || days > kDaysAWeek * limits.windowMostWeeks) break;
        }
        window.push_back({date, *it->estimate});
    }
    std::ranges::reverse(window);
    return window;
}

}  // namespace steelyard
