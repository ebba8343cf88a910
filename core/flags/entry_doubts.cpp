#include "core/flags/entry_doubts.h"

#include "core/numerics/robust_trend.h"

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr std::size_t kNeighboursEachSide = 4;
constexpr std::size_t kLeastNeighbours = 3;
constexpr int kLeastRepJump = 10;
// How far from the usual load what was meant may be, in ln: a few percent, or what sessions differ by anyway.
constexpr double kLoadTolerance = 0.08;
constexpr double kMostLoadTolerance = 0.15;
// Exact fits differ by rounding only; then the earlier slip of the list is the likelier.
constexpr double kSameFit = 0.005;

struct StandingSet {
    QDate date;
    const SetEntry* set = nullptr;
};

std::vector<StandingSet> standingSets(const LineRecord& record, QDate until)
{
    std::vector<StandingSet> sets;
    for (const Exposure& exposure : record.exposures) {
        if (exposure.date > until) break;
        StandingSet standing{exposure.date, nullptr};
        for (const LoggedSet& logged : exposure.sets)
            if (isWorkingSet(logged.set) && (!standing.set || logged.set.load.mass() > standing.set->load.mass()))
                standing.set = &logged.set;
        if (standing.set) sets.push_back(standing);
    }
    return sets;
}

struct Neighbourhood : UsualEntry {
    [[nodiscard]] double tolerance() const { return std::clamp(2 * scatter, kLoadTolerance, kMostLoadTolerance); }
    // How far a load is from the usual one.
    [[nodiscard]] double distance(const Load& load) const
    {
        return std::abs(std::log(std::max(load.kilograms(), 1e-3)) - lnLoad);
    }
    [[nodiscard]] bool suits(int count) const { return std::abs(count - reps) <= std::max(3.0, 0.3 * reps); }
};

// The sets nearest to a place: up to `at`, and from `after` on.
std::optional<Neighbourhood> neighboursBetween(const std::vector<StandingSet>& sets, std::size_t at, std::size_t after)
{
    std::vector<double> ln;
    std::vector<double> reps;
    const auto take = [&](std::size_t from, std::size_t end) {
        for (std::size_t i = from; i < end; ++i) {
            const SetEntry& set = *sets[i].set;
            if (set.load.mass() <= Mass{}) continue;
            ln.push_back(std::log(set.load.kilograms()));
            reps.push_back(set.reps);
        }
    };
    take(at - std::min(at, kNeighboursEachSide), at);
    take(after, std::min(sets.size(), after + kNeighboursEachSide));
    if (ln.size() < kLeastNeighbours) return std::nullopt;
    return Neighbourhood{{*median(ln), robustScale(ln).value_or(0), *median(reps)}};
}

MassUnit otherUnit(MassUnit unit)
{
    return unit == MassUnit::kg ? MassUnit::lb : MassUnit::kg;
}

struct PossibleMeaning {
    EntrySlip slip = EntrySlip::Unclear;
    FittingEntry meant;
};

void addLoad(std::vector<PossibleMeaning>& meanings, EntrySlip slip, std::optional<Load> load, int reps)
{
    if (load && load->mass() > Mass{}) meanings.push_back({slip, {*load, reps}});
}

// Every number that one digit less would have given, the digits that were typed twice or last first.
std::vector<std::int64_t> withoutADigit(std::int64_t number)
{
    std::vector<std::int64_t> shorter;
    for (std::int64_t place = 1; place <= number; place *= 10)
        shorter.push_back(number / (place * 10) * place + number % place);
    return shorter;
}

// What may have been meant, the commonest slip first.
std::vector<PossibleMeaning> possibleMeanings(const SetEntry& set)
{
    const Decimal amount = set.load.amount();
    const MassUnit unit = set.load.unit();
    std::vector<PossibleMeaning> meanings;
    addLoad(meanings, EntrySlip::Unit, Load::make(amount, otherUnit(unit)), set.reps);
    const double typed = amount.toDouble();
    const double factor =
        Load::make(Decimal(1), MassUnit::kg)->kilograms() / Load::make(Decimal(1), MassUnit::lb)->kilograms();
    const double undone = unit == MassUnit::kg ? typed * factor : typed / factor;
    addLoad(meanings, EntrySlip::Converted, Load::make(Decimal::nearest(undone, 1), unit), set.reps);
    for (const double shift : {0.1, 10.0, 0.01, 100.0})
        addLoad(meanings, EntrySlip::Point, Load::make(Decimal::nearest(typed * shift, 3), unit), set.reps);
    for (const std::int64_t shorter : withoutADigit(amount.mantissa()))
        addLoad(meanings, EntrySlip::Digits, Load::make(Decimal::fromScaled(shorter, amount.decimals()), unit),
                set.reps);
    if (typed == std::floor(typed) && set.reps > 0)
        addLoad(meanings, EntrySlip::Exchanged, Load::make(Decimal(set.reps), unit), static_cast<int>(typed));
    return meanings;
}

// The slip whose meaning is closest to the usual.
std::optional<PossibleMeaning> closestMeaning(const SetEntry& set, const Neighbourhood& around)
{
    std::optional<PossibleMeaning> best;
    for (const PossibleMeaning& one : possibleMeanings(set)) {
        const double distance = around.distance(one.meant.load);
        const bool suits =
            one.slip == EntrySlip::Exchanged ? around.suits(one.meant.reps) && !around.suits(set.reps) : true;
        if (distance > around.tolerance() || !suits) continue;
        if (!best || distance < around.distance(best->meant.load) - kSameFit) best = one;
    }
    return best;
}

EntryDoubt doubtOf(const StandingSet& standing, const Neighbourhood& around, EntrySlip slip,
                   std::optional<FittingEntry> fitting)
{
    return {standing.date, standing.set, slip, fitting, std::exp(around.lnLoad), around.reps};
}

std::optional<EntryDoubt> doubtAbout(const StandingSet& standing, const Neighbourhood& around,
                                     const DoubtLimits& limits)
{
    const SetEntry& set = *standing.set;
    const double ln = std::log(std::max(set.load.kilograms(), 1e-3)) - around.lnLoad;
    const bool odd = std::abs(ln) > std::log(limits.ratio) && std::abs(ln) > 4 * around.scatter;
    if (set.load.mass() > Mass{} && odd) {
        const auto meant = closestMeaning(set, around);
        // A lighter day with many more repetitions is training, not a slip, unless the two numbers changed places.
        const bool exchanged = meant && meant->slip == EntrySlip::Exchanged;
        if (ln > 0 || exchanged || set.reps < 1.5 * around.reps)
            return doubtOf(standing, around, meant ? meant->slip : EntrySlip::Unclear,
                           meant ? std::optional(meant->meant) : std::nullopt);
    }
    const bool many = set.reps >= limits.repsRatio * around.reps && set.reps >= around.reps + kLeastRepJump;
    if (!many || ln <= -0.1) return std::nullopt;
    for (const std::int64_t shorter : withoutADigit(set.reps))
        if (shorter > 0 && around.suits(static_cast<int>(shorter)))
            return doubtOf(standing, around, EntrySlip::Digits, FittingEntry{set.load, static_cast<int>(shorter)});
    return doubtOf(standing, around, EntrySlip::Repetitions, std::nullopt);
}

}  // namespace

std::vector<EntryDoubt> doubtfulEntries(const SnapshotLine& line, QDate from, QDate until, const DoubtLimits& limits)
{
    std::vector<EntryDoubt> doubts;
    const auto sets = standingSets(*line.record, until);
    for (std::size_t i = 0; i < sets.size(); ++i) {
        if (sets[i].date <= from) continue;
        const auto around = neighboursBetween(sets, i, i + 1);
        if (!around) continue;
        if (const auto doubt = doubtAbout(sets[i], *around, limits)) doubts.push_back(*doubt);
    }
    return doubts;
}

std::optional<UsualEntry> usualAround(const LineRecord& record, QDate date)
{
    auto sets = standingSets(record, QDate(9999, 12, 31));
    std::erase_if(sets, [&](const StandingSet& standing) { return standing.date == date; });
    const auto later = std::ranges::upper_bound(sets, date, {}, &StandingSet::date);
    const auto place = static_cast<std::size_t>(std::distance(sets.begin(), later));
    return neighboursBetween(sets, place, place);
}

std::optional<EntryDoubt> doubtBeside(const UsualEntry& usual, const SetEntry& set, QDate date,
                                      const DoubtLimits& limits)
{
    return doubtAbout({date, &set}, Neighbourhood{usual}, limits);
}

}  // namespace steelyard
