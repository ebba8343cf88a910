#include "core/keying/trial_ratings.h"

#include <algorithm>

namespace steelyard {
namespace {

// Outcomes of a trial that are rated right after the exercise, by their key. What isn't here is worked out or asked the day after.
struct AskedCell {
    QStringView outcome;
    RatingCell cell;
};
constexpr auto kAskedCells = std::to_array<AskedCell>({{u"tension", RatingCell::Tension},
                                                       {u"burn", RatingCell::Burn},
                                                       {u"pump", RatingCell::Pump},
                                                       {u"target_first", RatingCell::GaveOut}});

bool isRated(const ExerciseRating& rating, RatingCell cell)
{
    return cell == RatingCell::GaveOut ? !rating.gaveOut.isEmpty() : scoreOf(rating, cell).has_value();
}

bool asks(const SheetTrial& trial, const AskedCell& asked)
{
    return std::ranges::find(trial.asked, asked.outcome) != trial.asked.end();
}

std::vector<RatingCell> missingCells(const SheetTrial& trial, const ExerciseRating& rating, bool discomfort)
{
    std::vector<RatingCell> missing;
    for (const AskedCell& asked : kAskedCells)
        if (asks(trial, asked) && !isRated(rating, asked.cell)) missing.push_back(asked.cell);
    if (discomfort && !rating.hasDiscomfort()) missing.push_back(RatingCell::Elbow);
    return missing;
}

}  // namespace

std::vector<MissingRatings> missingTrialRatings(const KeyingSheet& sheet)
{
    std::vector<MissingRatings> all;
    for (std::size_t i = 0; i < sheet.exercises.size(); ++i) {
        const KeyingExercise& exercise = sheet.exercises[i];
        if (!exercise.words.trial || !exercise.anyStored() || !sheet.ratesAfter(i)) continue;
        auto cells = missingCells(*exercise.words.trial, exercise.rating, exercise.words.asksDiscomfort);
        if (!cells.empty()) all.push_back({i, std::move(cells)});
    }
    return all;
}

std::vector<QString> askedAfterExercise(const SheetTrial& trial, bool discomfort)
{
    std::vector<QString> keys;
    for (const AskedCell& asked : kAskedCells)
        if (asks(trial, asked)) keys.push_back(asked.outcome.toString());
    if (discomfort) keys.push_back(QStringLiteral("discomfort"));
    return keys;
}

}  // namespace steelyard
