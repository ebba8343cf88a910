#include "core/keying/line_change.h"

#include "core/planning/usual_lift.h"

#include <algorithm>

namespace steelyard {
namespace {

// Each lift once, in the order in which they come.
class Choices {
public:
    explicit Choices(std::vector<LiftLine> without) : m_without(std::move(without)) {}
    void add(const LiftLine& lift)
    {
        if (std::ranges::count(m_without, lift) || std::ranges::count(m_lifts, lift)) return;
        m_lifts.push_back(lift);
    }
    [[nodiscard]] std::vector<LiftLine> take() { return std::move(m_lifts); }

private:
    std::vector<LiftLine> m_without;
    std::vector<LiftLine> m_lifts;
};

std::vector<const LineRecord*> ownLines(const AthleteLog& log)
{
    std::vector<const LineRecord*> lines;
    for (const LineRecord& line : log.lines)
        if (!line.exposures.empty()) lines.push_back(&line);
    std::ranges::stable_sort(lines, std::ranges::greater(),
                             [](const LineRecord* line) { return line->exposures.back().date; });
    return lines;
}

bool isFor(const RepStandard& standard, Id<Variant> variant, Id<Athlete> athlete)
{
    return standard.variant == variant && (!standard.athlete || *standard.athlete == athlete);
}

}  // namespace

LineHistory historyOf(const AthleteLog& log, const LiftLine& lift)
{
    LineHistory history;
    for (const LineRecord& line : log.lines) {
        if (line.line != lift) continue;
        for (const Exposure& exposure : line.exposures) {
            const auto sets = std::ranges::count_if(
                exposure.sets, [](const LoggedSet& logged) { return logged.set.kind != SetKind::WarmUp; });
            if (sets == 0) continue;
            history.sets += static_cast<int>(sets);
            ++history.sessions;
            if (!history.first) history.first = exposure.date;
            history.last = exposure.date;
        }
    }
    return history;
}

LineChange changeOfLine(const AthleteLog& log, const LiftLine& from, const LiftLine& to)
{
    return {historyOf(log, from), historyOf(log, to), from.variant != to.variant, from.grip != to.grip,
            from.standard != to.standard};
}

std::vector<LiftLine> otherWays(const AthleteLog& log, const Library& library, const LiftLine& from)
{
    Choices choices({from});
    const auto* variant = library.find(from.variant);
    if (!variant) return {};
    for (const LineRecord* line : ownLines(log))
        if (line->exercise.id == variant->value.exercise) choices.add(line->line);
    for (const auto& grip : library.grips) choices.add({from.athlete, from.variant, grip.id, from.standard});
    for (const auto& standard : library.standards)
        if (isFor(standard.value, from.variant, from.athlete))
            choices.add({from.athlete, from.variant, from.grip, standard.id});
    for (const auto& other : library.variants) {
        if (other.value.exercise != variant->value.exercise || other.value.hidden || other.id == from.variant) continue;
        if (const auto lift = usualLift(library, other, from.athlete, from.grip)) choices.add(*lift);
    }
    return choices.take();
}

std::vector<LiftLine> liftsToAdd(const AthleteLog& log, const Library& library, const std::vector<LiftLine>& without)
{
    Choices choices(without);
    const auto own = ownLines(log);
    for (const LineRecord* line : own) choices.add(line->line);
    for (const auto& variant : library.variants) {
        const auto* exercise = library.find(variant.value.exercise);
        if (variant.value.hidden || !exercise || exercise->value.hidden) continue;
        if (std::ranges::any_of(own, [&](const LineRecord* line) { return line->variant.id == variant.id; })) continue;
        if (const auto lift = usualLift(library, variant, log.athlete.id, std::nullopt)) choices.add(*lift);
    }
    return choices.take();
}

}  // namespace steelyard
