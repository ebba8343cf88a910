#include "core/planning/double_progression.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct ProgressionText {
    Q_DECLARE_TR_FUNCTIONS(ProgressionText)
};

std::optional<double> reserveOf(const DoneSet& set)
{
    return set.failed ? std::optional(0.0) : set.repsInReserve;
}

bool reserveKept(const DoneSet& set, const ProgressionInput& input)
{
    const auto reserve = reserveOf(set);
    return !input.plannedRir || !reserve || *reserve >= *input.plannedRir;
}

DoneExposure setsAt(const DoneExposure& exposure, Mass mass)
{
    DoneExposure sets;
    for (const DoneSet& set : exposure)
        if (set.load.mass() == mass) sets.push_back(set);
    return sets;
}

// Most of the sets at this load stayed under the band.
bool mostlyUnder(const DoneExposure& exposure, Mass mass, RepBand band)
{
    const DoneExposure sets = setsAt(exposure, mass);
    const auto under =
        std::count_if(sets.begin(), sets.end(), [&](const DoneSet& set) { return set.countedReps < band.low; });
    return 2 * static_cast<std::size_t>(under) > sets.size();
}

std::size_t setCount(const ProgressionInput& input, const DoneExposure& done)
{
    return input.plannedSets ? static_cast<std::size_t>(std::max(1, *input.plannedSets)) : done.size();
}

// The targets of the sets that were done; sets that weren't take the last one's.
std::vector<int> fitTo(std::vector<int> targets, std::size_t count)
{
    const int last = targets.back();
    targets.resize(count, last);
    return targets;
}

NextStep bandFull(const ProgressionInput& input, const LoadStepper& stepper, const Load& load, std::size_t count)
{
    const auto harder = stepper(load, LoadChange::Harder);
    if (!harder)
        return {load, std::vector<int>(count, input.band.high), StepKind::Hold,
                ProgressionText::tr("Every set reached the top of the band, but there is no harder load to set here.")};
    QString why = ProgressionText::tr(
        "Every set reached %n counted repetition(s): take the next load and start from "
        "the low end of the band.",
        nullptr, input.band.high);
    const double cost = repCostOfStep(load.mass(), harder->mass(), input.band.high);
    if (cost > input.band.high - input.band.low)
        why += QLatin1Char(' ')
               + ProgressionText::tr("The step is large for this load: expect about %n repetition(s) fewer.", nullptr,
                                     static_cast<int>(std::lround(cost)));
    return {*harder, std::vector<int>(count, input.band.low), StepKind::AddLoad, why};
}

NextStep keepsLoad(const ProgressionInput& input, const Load& load, const DoneExposure& done, std::size_t count)
{
    std::vector<int> targets;
    bool added = false;
    for (const DoneSet& set : done) {
        const bool more = set.countedReps < input.band.high && reserveKept(set, input);
        targets.push_back(std::clamp(set.countedReps + (more ? 1 : 0), 1, input.band.high));
        added = added || more;
    }
    if (added)
        return {
            load, fitTo(std::move(targets), count), StepKind::AddReps,
            ProgressionText::tr("Same load: add a repetition to the sets that are not at the top of the band yet.")};
    if (done.size() < count)
        return {load, fitTo(std::move(targets), count), StepKind::Hold,
                ProgressionText::tr("Same load: do all the planned sets before the load goes up.")};
    return {load, fitTo(std::move(targets), count), StepKind::Hold,
            ProgressionText::tr("Same load and repetitions until the planned reserve is there.")};
}

}  // namespace

std::optional<Load> workingLoad(const DoneExposure& exposure)
{
    std::optional<Load> best;
    std::size_t most = 0;
    for (const DoneSet& set : exposure) {
        const std::size_t uses = setsAt(exposure, set.load.mass()).size();
        if (uses > most || (uses == most && set.load.mass() > best->mass())) {
            most = uses;
            best = set.load;
        }
    }
    return best;
}

std::optional<NextStep> doubleProgression(const ProgressionInput& input, const LoadStepper& stepper)
{
    const auto load = input.exposures.empty() ? std::nullopt : workingLoad(input.exposures.back());
    if (!load) return std::nullopt;
    const DoneExposure done = setsAt(input.exposures.back(), load->mass());
    const std::size_t count = setCount(input, done);
    const bool full = done.size() >= count && std::all_of(done.begin(), done.end(), [&](const DoneSet& set) {
                          return set.countedReps >= input.band.high && reserveKept(set, input);
                      });
    if (full) return bandFull(input, stepper, *load, count);
    const std::size_t exposures = input.exposures.size();
    const bool underTwice = exposures >= 2 && mostlyUnder(input.exposures[exposures - 1], load->mass(), input.band)
                            && mostlyUnder(input.exposures[exposures - 2], load->mass(), input.band);
    if (underTwice)
        if (const auto easier = stepper(*load, LoadChange::Easier))
            return NextStep{*easier, std::vector<int>(count, input.band.low), StepKind::Reduce,
                            ProgressionText::tr("Most sets stayed under %n counted repetition(s) twice running: one "
                                                "step down brings them back into the band.",
                                                nullptr, input.band.low)};
    return keepsLoad(input, *load, done, count);
}

bool twoForTwo(const DoneExposure& previous, const DoneExposure& latest, int goalReps)
{
    if (previous.empty() || latest.empty()) return false;
    const DoneSet& before = previous.back();
    const DoneSet& now = latest.back();
    return before.load.mass() == now.load.mass() && before.countedReps >= goalReps + 2
           && now.countedReps >= goalReps + 2;
}

double repCostOfStep(Mass from, Mass to, double reps)
{
    if (from <= Mass()) return 0;  // from body mass alone the rise is no fraction of anything known here
    const double rise = toKilograms(to) / toKilograms(from) - 1.0;
    return (30.0 + reps) * rise / (1.0 + rise);
}

const PublishedLoadStep& publishedLoadStep(bool moreTrained, bool lowerBody)
{
    return kPublishedLoadSteps[(moreTrained ? 2U : 0U) + (lowerBody ? 1U : 0U)];
}

}  // namespace steelyard
