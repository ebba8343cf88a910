#include "core/planning/replan.h"

#include "core/analysis/rep_band_split.h"
#include "core/planning/usual_lift.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <functional>

namespace steelyard {
namespace {

struct ActionTraits {
    const char16_t* word;
    ActionPlace place = ActionPlace::Desk;
    bool needsLift = false;
    std::optional<ReplanScope> usualScope = {};  // absent: nothing to choose
};

// A rest or a hold is for a week; what needs time to show goes on to the end of the block.
constexpr auto kTraits = std::to_array<ActionTraits>({
    {u"hold_load", ActionPlace::Plan, false, ReplanScope::NextWeek},
    {u"drop_set", ActionPlace::Plan, false, ReplanScope::NextWeek},
    {u"add_set", ActionPlace::Plan, false, ReplanScope::RestOfBlock},
    {u"harder_sets", ActionPlace::Plan, false, ReplanScope::RestOfBlock},
    {u"move_day", ActionPlace::Plan, true, ReplanScope::RestOfBlock},
    {u"change_band", ActionPlace::Plan, true, ReplanScope::RestOfBlock},
    {u"change_grip", ActionPlace::Plan, true, ReplanScope::RestOfBlock},
    {u"change_variant", ActionPlace::Plan, true, ReplanScope::RestOfBlock},
    {u"keep_line", ActionPlace::Plan, true, ReplanScope::RestOfBlock},
    {u"deload", ActionPlace::Plan, false, {}},
    {u"retest_standard", ActionPlace::Sheet, false, {}},
    {u"watch_sets", ActionPlace::Sheet, false, {}},
    {u"film_check", ActionPlace::Sheet, false, {}},
    {u"ask_effort", ActionPlace::Sheet, false, {}},
    {u"refer_out", ActionPlace::Sheet, false, {}},
});

ActionTraits traitsOf(QStringView action)
{
    const auto found = std::ranges::find_if(kTraits, [&](const ActionTraits& row) { return action == row.word; });
    return found == kTraits.end() ? ActionTraits{u""} : *found;
}

// Bands in which the trade plans, from heavy to light; they meet at their ends.
constexpr std::array<RepBand, 6> kPlanBands{{{3, 5}, {5, 8}, {8, 12}, {12, 15}, {15, 20}, {20, 30}}};

RepBand bandNow(const ReplanInput& input)
{
    if (const Row<Block>* row = blockAhead(input.log, input.today))
        for (const PlannedWeek& week : row->value.weeks)
            for (const PlannedDay& day : week.days)
                for (const Slot& slot : day.slotList)
                    if (day.date > input.today && slot.variant == input.lift->variant && slot.grip == input.lift->grip
                        && slot.standard == input.lift->standard)
                        return slot.band;
    const auto* variant = input.library.find(input.lift->variant);
    return variant ? variant->value.band : RepBand{};
}

constexpr int kLeastRatedSessions = 4;  // in a band, to say how it felt; our convention
constexpr int kRatedWeeks = 26;

const LineRecord* recordOf(const ReplanInput& input)
{
    const auto& lines = input.log.lines;
    const auto found = std::ranges::find_if(lines, [&](const LineRecord& line) {
        return line.variant.id == input.lift->variant && line.grip.id == input.lift->grip
               && line.standard.id == input.lift->standard;
    });
    return found == lines.end() ? nullptr : &*found;
}

// In which the lift was felt more than in the present one, and the target gave out first at least as often.
std::optional<std::size_t> betterRatedBand(const ReplanInput& input, const RepBand& now)
{
    const LineRecord* line = recordOf(input);
    if (!line) return std::nullopt;
    const RatingsByBand ratings = ratingsByBand(*line, input.today.addDays(-7 * kRatedWeeks));
    const BandRatings& present = ratings.at(usualBandOf((now.low + now.high) / 2));
    if (!present.knows(kLeastRatedSessions)) return std::nullopt;
    std::optional<std::size_t> best;
    for (std::size_t band = 0; band < ratings.size(); ++band) {
        const BandRatings& other = ratings.at(band);
        if (!other.knows(kLeastRatedSessions) || other.strength() <= present.strength()
            || other.targetShare() < present.targetShare())
            continue;
        if (!best || other.strength() > ratings.at(*best).strength()) best = band;
    }
    return best;
}

// What can be chosen by its rank, lowest first, else as it stands.
template <class T>
std::vector<ReplanChoice> inRank(std::vector<std::pair<int, T>> ranked, std::optional<T> ReplanChoice::*field)
{
    std::ranges::stable_sort(ranked, {}, &std::pair<int, T>::first);
    std::vector<ReplanChoice> choices(ranked.size());
    for (std::size_t i = 0; i < ranked.size(); ++i) choices[i].*field = ranked[i].second;
    return choices;
}

std::vector<ReplanChoice> bandChoices(const ReplanInput& input)
{
    const RepBand now = bandNow(input);
    const auto better = betterRatedBand(input, now);
    // Below 0: better rated, the nearest lowest; 0: the next higher, 1: the next lower, 2: the others.
    const auto above = std::ranges::find_if(kPlanBands, [&](const RepBand& band) { return band.low >= now.high; });
    const auto below =
        std::find_if(kPlanBands.rbegin(), kPlanBands.rend(), [&](const RepBand& band) { return band.high <= now.low; });
    const auto rank = [&](const RepBand& band) {
        constexpr int better0 = -100;
        if (better && usualBandOf((band.low + band.high) / 2) == *better)
            return better0 + std::abs(band.low + band.high - now.low - now.high);
        if (above != kPlanBands.end() && band == *above) return 0;
        return below != kPlanBands.rend() && band == *below ? 1 : 2;
    };
    std::vector<std::pair<int, RepBand>> ranked;
    for (const RepBand& band : kPlanBands)
        if (band != now) ranked.emplace_back(rank(band), band);
    return inRank(std::move(ranked), &ReplanChoice::band);
}

// A rigid straight bar puts both hands in one line.
bool canHold(const Variant& variant, const Grip& grip)
{
    const bool straight = variant.implement == Implement::StraightBar || variant.implement == Implement::GuidedBar;
    return !straight || !grip.orientation || grip.orientation == HandOrientation::Supinated
           || grip.orientation == HandOrientation::Pronated;
}

// "pronated" is no other grip than "pronated, medium": it only says less.
bool saysTheSame(const Grip& a, const Grip& b)
{
    const auto isSpaced = [](const Grip& grip) { return grip.spacing || grip.spacingBetweenHands; };
    return a.orientation && a.orientation == b.orientation && !(isSpaced(a) && isSpaced(b));
}

std::vector<ReplanChoice> gripChoices(const ReplanInput& input)
{
    const auto* variant = input.library.find(input.lift->variant);
    const auto* now = input.library.find(input.lift->grip);
    if (!variant || !now) return {};
    const auto used = [&](Id<Grip> grip) {
        return std::ranges::any_of(input.log.lines, [&](const LineRecord& line) {
            return line.grip.id == grip && line.exercise.id == variant->value.exercise;
        });
    };
    std::vector<std::pair<int, Id<Grip>>> ranked;
    for (const Row<Grip>& grip : input.library.grips) {
        if (grip.id == now->id || grip.value.name == asUsualName() || saysTheSame(grip.value, now->value)) continue;
        if (!canHold(variant->value, grip.value)) continue;
        const bool sameWay = now->value.orientation && grip.value.orientation == now->value.orientation;
        ranked.emplace_back(used(grip.id) ? 0 : sameWay ? 1 : 2, grip.id);
    }
    return inRank(std::move(ranked), &ReplanChoice::grip);
}

std::vector<ReplanChoice> variantChoices(const ReplanInput& input)
{
    const auto* now = input.library.find(input.lift->variant);
    if (!now) return {};
    std::vector<std::pair<int, Id<Variant>>> ranked;
    for (const Row<Variant>& variant : input.library.variants) {
        if (variant.id == now->id || variant.value.hidden || variant.value.exercise != now->value.exercise) continue;
        if (!liftWithVariant(input, variant.id)) continue;
        const bool used =
            std::ranges::any_of(input.log.lines, [&](const LineRecord& line) { return line.variant.id == variant.id; });
        ranked.emplace_back(used ? 0 : 1, variant.id);
    }
    return inRank(std::move(ranked), &ReplanChoice::variant);
}

constexpr int kBackDays = 2;  // about what hard work for the back takes to settle; our convention, as the flag's

bool isSwung(const LineRecord& line, QDate today)
{
    return std::ranges::any_of(line.exposures, [&](const Exposure& one) {
        return one.date > today.addDays(-28) && std::ranges::any_of(one.sets, [](const LoggedSet& logged) {
                   return logged.set.marks.of(Mark::Swing) > 0;
               });
    });
}

// Days of the week on which another lift of the plan loads the back highly.
std::vector<int> backWeekdays(const ReplanInput& input, const Block& block)
{
    std::vector<int> weekdays;
    for (const PlannedWeek& week : block.weeks)
        for (const PlannedDay& day : week.days)
            for (const Slot& slot : day.slotList) {
                const auto* variant = input.library.find(slot.variant);
                const bool other = slot.variant != input.lift->variant || slot.grip != input.lift->grip;
                const int weekday = day.date.dayOfWeek();
                if (day.date > input.today && other && variant && variant->value.backLoading == BackLoading::High
                    && std::ranges::find(weekdays, weekday) == weekdays.end())
                    weekdays.push_back(weekday);
            }
    return weekdays;
}

// How near the lift would come to days that need the back, if it were on this one: 0 is not near.
int nearnessToBackDays(const ReplanInput& input, const Block& block, int weekday)
{
    const auto* variant = input.library.find(input.lift->variant);
    const bool loads = variant && variant->value.backLoading == BackLoading::High;
    const LineRecord* line = recordOf(input);
    if (!loads && !(line && isSwung(*line, input.today))) return 0;
    int nearness = 0;
    for (const int other : backWeekdays(input, block)) {
        const int after = (other - weekday + 7) % 7;
        const int before = (weekday - other + 7) % 7;
        if (after >= 1 && after <= kBackDays) nearness += kBackDays + 1 - after;
        // What is swung is paid for afterwards only; what needs the back itself wants it rested.
        if (loads && before >= 1 && before <= kBackDays) nearness += kBackDays + 1 - before;
    }
    return nearness;
}

std::vector<ReplanChoice> weekdayChoices(const ReplanInput& input)
{
    const Row<Block>* row = blockAhead(input.log, input.today);
    std::optional<int> now;
    std::vector<int> weekdays;
    if (!row) return {};
    for (const PlannedWeek& week : row->value.weeks)
        for (const PlannedDay& day : week.days) {
            if (day.date <= input.today || day.slotList.empty()) continue;
            const int weekday = day.date.dayOfWeek();
            if (std::ranges::find(weekdays, weekday) == weekdays.end()) weekdays.push_back(weekday);
            for (const Slot& slot : day.slotList)
                if (!now && slot.variant == input.lift->variant && slot.grip == input.lift->grip
                    && slot.standard == input.lift->standard)
                    now = weekday;
        }
    if (!now) return {};
    std::erase(weekdays, *now);
    std::ranges::sort(weekdays);
    std::vector<std::pair<int, int>> ranked;
    ranked.reserve(weekdays.size());
    constexpr int week = 7;
    for (const int weekday : weekdays)
        ranked.emplace_back(week * nearnessToBackDays(input, row->value, weekday) - std::abs(weekday - *now), weekday);
    return inRank(std::move(ranked), &ReplanChoice::weekday);
}

}  // namespace

ActionPlace placeOf(QStringView action)
{
    return traitsOf(action).place;
}

bool hasScope(QStringView action)
{
    return traitsOf(action).usualScope.has_value();
}

ReplanScope usualScope(QStringView action)
{
    return traitsOf(action).usualScope.value_or(ReplanScope::NextWeek);
}

bool needsLift(QStringView action)
{
    return traitsOf(action).needsLift;
}

std::vector<ReplanChoice> choicesFor(const ReplanInput& input)
{
    if (!input.lift) return {};
    if (input.action == u"change_band") return bandChoices(input);
    if (input.action == u"change_grip") return gripChoices(input);
    if (input.action == u"change_variant") return variantChoices(input);
    if (input.action == u"move_day") return weekdayChoices(input);
    return {};
}

std::optional<LiftLine> liftWithVariant(const ReplanInput& input, Id<Variant> variant)
{
    const LineRecord* last = nullptr;
    for (const LineRecord& line : input.log.lines) {
        if (line.variant.id != variant || line.exposures.empty()) continue;
        if (!last || line.exposures.back().date > last->exposures.back().date) last = &line;
    }
    if (last) return last->line;
    const auto* row = input.library.find(variant);
    if (!row || !input.lift) return std::nullopt;
    return usualLift(input.library, *row, input.log.athlete.id, input.lift->grip);
}

}  // namespace steelyard
