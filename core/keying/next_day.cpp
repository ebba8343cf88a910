#include "core/keying/next_day.h"

#include <algorithm>

namespace steelyard {

std::optional<NextDayQuestions> nextDayQuestions(const AthleteLog& log, QDate day)
{
    const auto later = std::ranges::lower_bound(log.sessionDates, day);
    if (later == log.sessionDates.begin()) return std::nullopt;
    NextDayQuestions asked{*std::prev(later), {}};
    if (asked.session.daysTo(day) > kNextDayDays) return std::nullopt;
    std::vector<std::pair<int, NextDayQuestion>> found;
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            const bool answered = exposure.rating.nextSoreness || exposure.rating.nextWeakness;
            const bool trained = std::ranges::any_of(
                exposure.sets, [](const LoggedSet& logged) { return logged.set.kind != SetKind::WarmUp; });
            if (exposure.date != asked.session || answered || !trained) continue;
            found.emplace_back(exposure.sets.front().position,
                               NextDayQuestion{line.line, line.exercise.value.name, exposure.rating});
        }
    std::ranges::stable_sort(found, {}, [](const auto& entry) { return entry.first; });
    for (auto& entry : found) asked.questions.push_back(std::move(entry.second));
    if (asked.questions.empty()) return std::nullopt;
    return asked;
}

}  // namespace steelyard
