#include "ui/pages/lifter/lifter_view.h"

#include <algorithm>

namespace steelyard {

int ShownLine::exposure() const
{
    const auto& exposures = record().exposures;
    const auto at = std::ranges::find(exposures, session, &Exposure::date);
    return static_cast<int>((at == exposures.end() ? std::ssize(exposures) - 1 : at - exposures.begin()));
}

std::optional<QDate> ShownLine::from() const
{
    if (months == 0 || record().exposures.empty()) return std::nullopt;
    return record().exposures.back().date.addMonths(-months);
}

}  // namespace steelyard
