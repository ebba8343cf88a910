#include "core/sheets/sheet_cautions.h"

#include "core/sheets/sheet_target.h"

#include <algorithm>

namespace steelyard {
namespace {

// The latest rated day of a joint within the days that count, with the worst rating of that day.
struct LatestRating {
    QDate date;
    int rating = 0;
};

void takeRating(LatestRating& latest, QDate date, const std::optional<int>& rating)
{
    if (!rating) return;
    if (!latest.date.isValid() || date > latest.date)
        latest = {date, *rating};
    else if (date == latest.date)
        latest.rating = std::max(latest.rating, *rating);
}

std::array<LatestRating, kJointCount> latestRatings(const AthleteLog& log, QDate date)
{
    std::array<LatestRating, kJointCount> latest;
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date >= date || exposure.date.daysTo(date) > kDiscomfortDays) continue;
            for (std::size_t joint = 0; joint < kJointCount; ++joint)
                takeRating(latest[joint], exposure.date, exposure.rating.discomfort[joint]);
        }
    return latest;
}

bool hasHeavyBar(const SessionSheet& sheet)
{
    return std::ranges::any_of(sheet.exercises, [&](const SheetExercise& exercise) {
        const bool bar = exercise.loading == Loading::BarTotal;
        if (bar && sheet.week == WeekKind::Test) return true;
        return bar && exercise.target.load && exercise.target.load->load.mass() >= kHeavyBar;
    });
}

}  // namespace

std::vector<SheetCaution> cautionsFor(const SessionSheet& sheet, const AthleteLog& log)
{
    std::vector<SheetCaution> cautions;
    const auto ratings = latestRatings(log, sheet.date);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        if (ratings[joint].rating >= kDiscomfortRating)
            cautions.push_back(
                {CautionKind::Discomfort, static_cast<Joint>(joint), ratings[joint].rating, ratings[joint].date, 0});
    const auto later = std::ranges::lower_bound(log.sessionDates, sheet.date);
    if (later != log.sessionDates.begin()) {
        const auto days = static_cast<int>(std::prev(later)->daysTo(sheet.date));
        if (days >= kLayoffDays)
            cautions.push_back({CautionKind::AfterBreak, std::nullopt, 0, *std::prev(later), days / 7});
    }
    if (hasHeavyBar(sheet)) cautions.push_back({CautionKind::HeavyBar, std::nullopt, 0, {}, 0});
    const auto& born = log.athlete.value.born;
    if (born && born->addYears(18) > sheet.date) cautions.push_back({CautionKind::Under18, std::nullopt, 0, {}, 0});
    return cautions;
}

}  // namespace steelyard
