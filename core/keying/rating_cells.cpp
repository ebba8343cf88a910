#include "core/keying/rating_cells.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RatingCellText {
    Q_DECLARE_TR_FUNCTIONS(RatingCellText)
};

constexpr std::array kAfterExercise{RatingCell::Tension, RatingCell::Burn,     RatingCell::Pump,  RatingCell::GaveOut,
                                    RatingCell::Elbow,   RatingCell::Shoulder, RatingCell::Wrist, RatingCell::LowerBack,
                                    RatingCell::Hip,     RatingCell::Knee,     RatingCell::Neck,  RatingCell::Ankle};
constexpr std::array kDayAfter{RatingCell::NextSoreness, RatingCell::NextWeakness};

// Where a score stands; null for the cell without one.
std::optional<int>* scorePlace(ExerciseRating& rating, RatingCell cell)
{
    if (const auto joint = jointOf(cell)) return &rating.discomfort[static_cast<std::size_t>(*joint)];
    switch (cell) {
    case RatingCell::Tension:
        return &rating.tension;
    case RatingCell::Burn:
        return &rating.burn;
    case RatingCell::Pump:
        return &rating.pump;
    case RatingCell::NextSoreness:
        return &rating.nextSoreness;
    case RatingCell::NextWeakness:
        return &rating.nextWeakness;
    default:
        return nullptr;
    }
}

}  // namespace

std::span<const RatingCell> afterExercise(bool discomfort)
{
    const std::span<const RatingCell> all(kAfterExercise);
    return discomfort ? all : all.first(all.size() - kJointCount);
}

std::span<const RatingCell> dayAfter()
{
    return kDayAfter;
}

std::optional<Joint> jointOf(RatingCell cell)
{
    if (cell < RatingCell::Elbow || cell > RatingCell::Ankle) return std::nullopt;
    return static_cast<Joint>(static_cast<int>(cell) - static_cast<int>(RatingCell::Elbow));
}

std::optional<int> scoreOf(const ExerciseRating& rating, RatingCell cell)
{
    ExerciseRating copy = rating;
    const auto* place = scorePlace(copy, cell);
    return place ? *place : std::nullopt;
}

void putScore(ExerciseRating& rating, RatingCell cell, std::optional<int> score)
{
    if (auto* place = scorePlace(rating, cell)) *place = score;
}

QChar letterOf(Joint joint)
{
    static constexpr std::array<char16_t, kJointCount> letters{u'e', u's', u'w', u'b', u'h', u'k', u'n', u'a'};
    return letters[static_cast<std::size_t>(joint)];
}

std::vector<MuscleChoice> muscleChoices(const Library& library, const Exercise* exercise)
{
    std::vector<MuscleChoice> choices{{QStringLiteral("target"), RatingCellText::tr("target")}};
    const auto add = [&](const Row<Muscle>& row) {
        const MuscleChoice choice{row.value.key, row.value.name};
        if (!std::ranges::count(choices, choice)) choices.push_back(choice);
    };
    auto shares = exercise ? exercise->shares : std::vector<MuscleShare>();
    std::ranges::stable_sort(shares, std::ranges::greater(), &MuscleShare::share);
    for (const MuscleShare& share : shares)
        if (const auto* row = library.find(share.muscle); row && share.share < 1) add(*row);
    auto muscles = library.muscles;
    std::ranges::sort(muscles, {}, [](const Row<Muscle>& row) { return searchKey(row.value.name); });
    for (const auto& row : muscles) add(row);
    return choices;
}

std::optional<std::size_t> findMuscle(std::span<const MuscleChoice> choices, QStringView typed)
{
    const QString wanted = searchKey(typed);
    if (wanted.isEmpty()) return std::nullopt;
    for (std::size_t i = 0; i < choices.size(); ++i)
        if (searchKey(choices[i].name).startsWith(wanted)) return i;
    for (std::size_t i = 0; i < choices.size(); ++i)
        if (searchKey(choices[i].name).contains(u' ' + wanted)) return i;
    return std::nullopt;
}

}  // namespace steelyard
