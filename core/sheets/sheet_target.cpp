#include "core/sheets/sheet_target.h"

#include "core/planning/comparable.h"
#include "core/planning/load_steps.h"
#include "core/planning/progression_registry.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TargetText {
    Q_DECLARE_TR_FUNCTIONS(TargetText)
};

// The middle of what was reported last time, in halves.
std::optional<double> targetReserve(const std::vector<Exposure>& before)
{
    if (before.empty()) return std::nullopt;
    std::vector<double> reported;
    for (const DoneSet& set : doneSets(before.back()))
        if (set.repsInReserve) reported.push_back(*set.repsInReserve);
    if (reported.empty()) return std::nullopt;
    std::ranges::sort(reported);
    return reported[(reported.size() - 1) / 2];
}

std::size_t setsWanted(const TargetInput& input)
{
    if (input.sets) return static_cast<std::size_t>(std::max(1, *input.sets));
    return input.before.empty() ? 3 : std::max<std::size_t>(1, input.before.back().sets.size());
}

void withoutRecord(SheetTarget& target)
{
    target.why = TargetText::tr(
        "No comparable record yet: build up to a load that fits the band with the reserve, and "
        "write it down. It becomes the result to beat.");
}

void afterLayoff(SheetTarget& target, const TargetInput& input, const SheetEquipment& equipment, const Load& last)
{
    const auto easier = equipment.loads().next(last, input.variant, LoadChange::Easier);
    target.load = equipment.setUp(easier.value_or(last), input.variant);
    target.reps.assign(setsWanted(input), input.band.low);
    target.why = TargetText::tr(
        "This was last done three weeks ago or longer, so the old result says little about today: "
        "start a step lighter and go by the reserve.");
}

void deload(SheetTarget& target, const TargetInput& input, const SheetEquipment& equipment, const Load& last)
{
    const Mass mass = Mass::fromSteps(last.mass().steps() / 100 * input.deloadPercent);
    const bool lessIsHarder = input.variant.loading == Loading::Assisted;
    const SheetLoad load = equipment.setUp(lessIsHarder ? last : Load::nearest(mass, last.unit()), input.variant);
    target.load = load;
    // The share is a rule of thumb, so a neighbour that can be set is no miss worth a sentence.
    target.load->asked = load.load;
    target.load->exact = true;
    target.load->below.reset();
    target.load->above.reset();
    target.reps.assign(setsWanted(input), input.band.low);
    target.why =
        TargetText::tr("Deload week: lighter on purpose. Nothing to beat today; stop well before it gets hard.");
}

void fromPlan(SheetTarget& target, const TargetInput& input, const SheetEquipment& equipment,
              const std::optional<NextStep>& step)
{
    target.load = equipment.setUp(*input.plannedLoad, input.variant);
    if (input.likely && !input.likely->targetReps.empty()) {
        target.reps = input.likely->targetReps;
        target.why = input.likely->why;
        return;
    }
    const bool sameAsStep = step && step->load.mass() == input.plannedLoad->mass();
    if (sameAsStep) target.reps = step->targetReps;
    target.why = TargetText::tr("Load from the plan.");
    if (sameAsStep) target.why += QLatin1Char(' ') + step->why;
}

std::optional<NextStep> stepByRule(const TargetInput& input, std::vector<DoneExposure> done,
                                   std::optional<double> reserve, const SheetEquipment& equipment)
{
    const ProgressionRule& rule = progressionFor(input.progression);
    ProgressionInput asked{std::move(done), input.band, reserve, static_cast<int>(setsWanted(input)), {}};
    asked.stepper = [&](const Load& load, LoadChange change, Mass wish) {
        return steppedLoad(equipment.loads(), input.variant, load, change, wish, input.bodyKg);
    };
    asked.moreTrained = input.moreTrained;
    asked.lowerBody = input.lowerBody;
    return rule.next(asked, RuleParameters(rule, input.settings));
}

}  // namespace

std::optional<ResultToBeat> resultToBeat(const std::vector<Exposure>& before)
{
    if (before.empty()) return std::nullopt;
    ResultToBeat result{before.back().date, {}, true};
    for (const LoggedSet& logged : before.back().sets) {
        result.sets.push_back({logged.set.load, logged.set.countedReps(), logged.set.watched()});
        const bool known = logged.set.failed || (logged.set.effort && logged.set.effort->repsInReserve());
        result.effortKnown = result.effortKnown && known;
    }
    return result;
}

SheetTarget makeTarget(const TargetInput& input, const SheetEquipment& equipment)
{
    SheetTarget target;
    target.reserve = input.plannedReserve ? input.plannedReserve : targetReserve(input.before);
    target.reservePlanned = input.plannedReserve.has_value();
    std::vector<DoneExposure> done;
    done.reserve(input.before.size());
    for (const Exposure& exposure : input.before) done.push_back(doneSets(exposure));
    const auto last = done.empty() ? std::nullopt : workingLoad(done.back());
    const auto step = stepByRule(input, std::move(done), target.reserve, equipment);
    if (input.plannedLoad) {
        fromPlan(target, input, equipment, step);
    } else if (last && input.week == WeekKind::Deload) {
        deload(target, input, equipment, *last);
    } else if (last && input.before.back().date.daysTo(input.date) >= kLayoffDays) {
        afterLayoff(target, input, equipment, *last);
    } else if (input.likely && input.likely->load) {
        target.load = equipment.setUp(*input.likely->load, input.variant);
        target.reps = input.likely->targetReps;
        target.why = input.likely->why;
    } else if (!last || !step) {
        withoutRecord(target);
    } else {
        target.load = equipment.setUp(step->load, input.variant);
        target.reps = step->targetReps;
        target.why = step->why;
    }
    return target;
}

}  // namespace steelyard
