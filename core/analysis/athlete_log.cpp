#include "core/analysis/athlete_log.h"

#include <algorithm>

namespace steelyard {

QString AthleteLog::muscleName(Id<Muscle> id) const
{
    const auto found = std::ranges::find(muscles, id, &Row<Muscle>::id);
    return found == muscles.end() ? QString() : found->value.name;
}

QString AthleteLog::muscleName(QStringView key) const
{
    const auto found = std::ranges::find_if(muscles, [&](const Row<Muscle>& row) { return row.value.key == key; });
    return found == muscles.end() ? QString() : found->value.name;
}

}  // namespace steelyard
