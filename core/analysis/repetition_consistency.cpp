#include "core/analysis/repetition_consistency.h"

#include "core/analysis/typical_error.h"
#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr double kNineOfTen = 0.9;

const SetEntry* findSet(const LineRecord& record, Id<SetEntry> id)
{
    for (const Exposure& exposure : record.exposures)
        for (const LoggedSet& logged : exposure.sets)
            if (logged.id == id) return &logged.set;
    return nullptr;
}

bool areAlike(const SetEntry& a, const SetEntry& b)
{
    const double most = std::max(a.load.kilograms(), b.load.kilograms());
    return a.kind == b.kind && std::abs(a.load.kilograms() - b.load.kilograms()) <= kLikeLoadShare * most + 1e-9;
}

template <class Keep>
std::vector<std::vector<Repetition>> lineSets(const LineRecord& record, std::span<const SetRepetitions> all, Keep keep)
{
    std::vector<std::vector<Repetition>> found;
    for (const Exposure& exposure : record.exposures)
        for (const LoggedSet& logged : exposure.sets) {
            const auto* repetitions = repetitionsOf(all, logged.id);
            if (repetitions && keep(logged.set)) found.push_back(*repetitions);
        }
    return found;
}

}  // namespace

std::optional<double> valueOf(const Repetition& one, RepetitionQuantity quantity)
{
    std::optional<double> value;
    if (one.partWay) return value;
    if (quantity == RepetitionQuantity::Travel) value = one.travel();
    if (quantity == RepetitionQuantity::Lowering && one.loweringSeconds) value = one.loweringSeconds->toDouble();
    if (quantity == RepetitionQuantity::Rhythm && one.loweringSeconds && one.liftingSeconds)
        value = one.loweringSeconds->toDouble() + one.liftingSeconds->toDouble();
    if (value && *value <= 0) value.reset();
    return value;
}

std::optional<RepetitionConsistency> repetitionConsistency(std::span<const std::vector<Repetition>> sets,
                                                           RepetitionQuantity quantity)
{
    RepetitionConsistency found;
    std::vector<double> values;
    std::vector<double> steps;
    std::vector<double> shares;
    for (const auto& set : sets) {
        std::optional<double> before;
        const std::size_t pairsBefore = steps.size();
        for (const Repetition& one : set) {
            const auto value = valueOf(one, quantity);
            if (value) values.push_back(*value);
            if (value && before) {
                steps.push_back(*value - *before);
                shares.push_back(std::log(*value) - std::log(*before));
            }
            before = value;
        }
        if (steps.size() > pairsBefore) ++found.sets;
    }
    found.pairs = static_cast<int>(steps.size());
    const auto error = typicalError(steps);
    const auto share = typicalError(shares);
    const auto middle = median(std::move(values));
    if (found.pairs < kFewestPairs || !error || !share || !middle) return std::nullopt;
    found.median = *middle;
    found.typicalError = *error;
    found.variation = std::expm1(*share);
    found.realChange = smallestRealChange(*error, kNineOfTen);
    return found;
}

const std::vector<Repetition>* repetitionsOf(std::span<const SetRepetitions> all, Id<SetEntry> set)
{
    const auto at = std::ranges::lower_bound(all, set, {}, &SetRepetitions::set);
    return at != all.end() && at->set == set ? &at->repetitions : nullptr;
}

std::vector<std::vector<Repetition>> likeSets(const LineRecord& record, std::span<const SetRepetitions> all,
                                              Id<SetEntry> set)
{
    const SetEntry* asked = findSet(record, set);
    if (!asked) return {};
    return lineSets(record, all, [&](const SetEntry& other) { return areAlike(*asked, other); });
}

std::vector<std::vector<Repetition>> lineRepetitions(const LineRecord& record, std::span<const SetRepetitions> all)
{
    return lineSets(record, all, [](const SetEntry&) { return true; });
}

}  // namespace steelyard
