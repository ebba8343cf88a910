#include "core/planning/slot_load.h"

#include "core/analysis/reserve_habit.h"
#include "core/planning/comparable.h"
#include "core/planning/lift_traits.h"
#include "core/planning/progression_support.h"
#include "core/planning/replan.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

struct SlotLoadText {
    Q_DECLARE_TR_FUNCTIONS(SlotLoadText)
};

constexpr std::size_t kExposuresLookedAt = 2;
constexpr double kToFailure = 0.5;  // a smaller reserve is none
// A new line begins between these shares of the load that the related line is measured against.
constexpr double kStartFrom = 0.2;
constexpr double kStartTo = 1.3;

class SlotLoadNumbers final : public AdjustableRule {
public:
    QString id() const override { return QStringLiteral("slot_load"); }
    std::vector<RuleParameter> parameters() const override
    {
        return {{QStringLiteral("percent"), SlotLoadText::tr("A target is reached in"), SlotLoadText::tr("% of sets"),
                 100 * kTargetChance, 50, 95,
                 SlotLoadText::tr(
                     "Our convention: three times in four is often enough to trust the plan and seldom enough to "
                     "ask for something.")}};
    }
};

QString lineWords(const LineRecord& record)
{
    return record.exercise.value.name + QStringLiteral(", ") + record.variant.value.name + QStringLiteral(", ")
           + record.grip.value.name;
}

void addSentence(QString& why, const QString& sentence)
{
    if (!why.isEmpty()) why += QLatin1Char(' ');
    why += sentence;
}

}  // namespace

const AdjustableRule& slotLoadNumbers()
{
    static const SlotLoadNumbers numbers;
    return numbers;
}

SlotLoads::SlotLoads(const PlanningInput& input)
    : m_input(input),
      m_loads(input.gym, input.log.athlete.value.unit),
      m_lifter(input.log, input.library, input.tracker, input.today),
      m_wanted(RuleParameters(slotLoadNumbers(), input.settings).value(u"percent") / 100),
      m_habit(reserveHabit(input.log, input.today))
{}

PlannedSet SlotLoads::setOn(QDate day, std::optional<double> reserve, int number) const
{
    const double planned = reserve.value_or(double{kUsualReserve});
    return {day, planned < kToFailure ? planned : std::max(kToFailure, planned + m_habit), number};
}

std::vector<DoneExposure> SlotLoads::exposuresBefore(const SlotOnDay& asked, const LineBasis& basis)
{
    std::vector<DoneExposure> all;
    if (basis.kind == LoadBasis::OwnRecord) {
        const auto known = m_done.find(basis.record->id);
        if (known != m_done.end()) {
            all = known->second;
        } else {
            const auto before = comparableBefore(*basis.record, m_input.today.addDays(1));
            const std::size_t from = before.size() - std::min(before.size(), kExposuresLookedAt);
            for (std::size_t i = from; i < before.size(); ++i) all.push_back(doneSets(before[i]));
            m_done.emplace(basis.record->id, all);
        }
    }
    std::ranges::copy(asked.before, std::back_inserter(all));
    if (all.size() > kExposuresLookedAt) all.erase(all.begin(), all.end() - kExposuresLookedAt);
    return all;
}

LikelySets SlotLoads::likelySets(const SlotOnDay& asked, const LineBasis& basis, std::optional<double> reserve) const
{
    if (!basis.outlook) return {};
    // Rules ask about the same set more than once.
    auto known = std::make_shared<std::map<std::pair<std::int64_t, int>, std::optional<LikelySet>>>();
    return [this, known, &basis, day = asked.day, reserve](const Load& load, int number) {
        const std::pair key(load.mass().steps(), number);
        if (const auto found = known->find(key); found != known->end()) return found->second;
        std::optional<LikelySet> likely;
        if (const auto set = basis.outlook->at(setOn(day, reserve, number), load.kilograms())) {
            const RepChance target = set->target(m_wanted);
            likely = LikelySet{target.reps, target.probability};
        }
        known->emplace(key, likely);
        return likely;
    };
}

ProgressionInput SlotLoads::progressionInput(const SlotOnDay& asked, const Variant& variant, const LineBasis& basis,
                                             std::optional<double> reserve) const
{
    ProgressionInput input{{}, asked.slot.band, reserve, asked.slot.sets, {}, likelySets(asked, basis, reserve)};
    const double bodyKg = basis.outlook ? basis.outlook->context().bodyKg : 0;
    input.stepper = [this, &variant, bodyKg](const Load& load, LoadChange change, Mass wish) {
        return steppedLoad(m_loads, variant, load, change, wish, bodyKg);
    };
    input.moreTrained = isMoreTrained(m_input.log.athlete.value);
    const auto* exercise = m_input.library.find(variant.exercise);
    input.lowerBody = exercise && trainsLowerBody(exercise->value, m_input.library.muscles);
    return input;
}

// The heaviest load at which the middle of the band is likely.
void SlotLoads::planStart(SlotLoad& planned, const ProgressionInput& input, const Variant& variant,
                          const LineBasis& basis) const
{
    if (!basis.outlook) {
        planned.why = SlotLoadText::tr(
            "No comparable record and none of a related line: build up in small steps to a set in the band with the "
            "planned "
            "reserve, and write it down. The loads after it follow from it.");
        return;
    }
    const double reference = std::exp(basis.outlook->context().lnReference);
    const double body =
        variant.loading == Loading::Added || variant.loading == Loading::Assisted ? basis.outlook->context().bodyKg : 0;
    const auto massOf = [](double kg) { return massFromGrams(std::llround(1000 * std::max(0.0, kg))); };
    std::vector<Load> loads =
        m_loads.between(massOf(kStartFrom * reference - body),
                        massOf(variant.loading == Loading::Assisted ? body : kStartTo * reference - body), variant);
    if (variant.loading == Loading::Assisted) std::ranges::reverse(loads);  // from easy to hard
    const int goal = (input.band.low + input.band.high) / 2;
    const std::size_t sets = static_cast<std::size_t>(std::max(1, input.plannedSets.value_or(1)));
    const auto tooHard = std::ranges::partition_point(
        loads, [&](const Load& load) { return likelyMiddle(input, load, sets).value_or(0) >= goal; });
    if (loads.empty()) return;
    planned.load = tooHard == loads.begin() ? loads.front() : *std::prev(tooHard);
    planned.targetReps = likelyTargets(input, *planned.load, sets);
    planned.why = basis.kind == LoadBasis::OwnRecord
                      ? SlotLoadText::tr("The heaviest load at which the middle of the band is likely.")
                      : SlotLoadText::tr(
                            "Nothing is on record on this line. The load comes from “%1”, so it is uncertain: go by "
                            "the reserve, and what is written down decides the next one.")
                            .arg(lineWords(*basis.record));
}

void SlotLoads::planDeload(SlotLoad& planned, const ProgressionInput& input, const SlotOnDay& asked,
                           const Variant& variant) const
{
    const Load last = *workingLoad(input.exposures.back());
    const Mass share = Mass::fromSteps(last.mass().steps() / 100 * asked.easing.loadPercent);
    // Less help is more load: what share of it is easier can't be said.
    planned.load = variant.loading == Loading::Assisted ? last : m_loads.nearest(share, variant).load;
    if (planned.load->mass() > last.mass()) planned.load = last;
    planned.targetReps.assign(static_cast<std::size_t>(std::max(1, asked.slot.sets)), asked.slot.band.low);
    planned.kind = StepKind::Reduce;
    planned.why = SlotLoadText::tr("Easier week: %1 % of the last working load, on purpose. Nothing to beat.")
                      .arg(asked.easing.loadPercent);
}

void SlotLoads::planStep(SlotLoad& planned, const ProgressionInput& input, const ProgressionRule& rule,
                         const Variant& variant, double bodyKg) const
{
    const auto step = rule.next(input, RuleParameters(rule, m_input.settings));
    if (!step) return;
    planned.load = step->load;
    planned.targetReps = step->targetReps;
    planned.kind = step->kind;
    planned.why = step->why;
    if (step->kind != StepKind::AddLoad) return;
    const double rise = riseOf(variant, *workingLoad(input.exposures.back()), step->load, bodyKg);
    if (rise > kMostRise)
        addSentence(planned.why, SlotLoadText::tr("The smallest step here is %1 %: more than a tenth.")
                                     .arg(m_input.wording.number(100 * rise, 0)));
}

void SlotLoads::keepLoad(SlotLoad& planned, const ProgressionInput& input, const SlotOnDay& asked) const
{
    const auto sets = static_cast<std::size_t>(std::max(1, asked.slot.sets));
    planned.load = asked.slot.load;
    planned.kind = StepKind::Hold;
    planned.why =
        asked.slot.loadLocked ? SlotLoadText::tr("The coach's load.") : SlotLoadText::tr("Load from the plan.");
    if (asked.week == WeekKind::Deload)
        planned.targetReps.assign(sets, asked.slot.band.low);
    else if (input.likely && input.likely(*planned.load, 1))
        planned.targetReps = likelyTargets(input, *planned.load, sets);
}

void SlotLoads::addChances(SlotLoad& planned, const SlotOnDay& asked, const LineBasis& basis) const
{
    if (!planned.load || planned.targetReps.empty()) return;
    const auto set = basis.outlook ? basis.outlook->at(setOn(asked.day, planned.reserve, 1), planned.load->kilograms())
                                   : std::nullopt;
    if (!set) {
        addSentence(planned.why,
                    SlotLoadText::tr("How likely that is can't be said: the record has no set with a load."));
        return;
    }
    planned.chance = set->chanceOf(planned.targetReps.front());
    planned.within80 = set->within(0.8);
    if (asked.week == WeekKind::Deload) return;
    addSentence(planned.why, SlotLoadText::tr("About %1 of 100 such sets reach it; 80 of 100 end between %2 and %3.")
                                 .arg(m_input.wording.number(100 * *planned.chance, 0),
                                      m_input.wording.number(planned.within80->low, 0),
                                      m_input.wording.number(planned.within80->high, 0)));
}

SlotLoad SlotLoads::plan(const SlotOnDay& asked)
{
    return planAt(asked, asked.slot.loadLocked);
}

SlotLoad SlotLoads::atPlannedLoad(const SlotOnDay& asked)
{
    return planAt(asked, true);
}

SlotLoad SlotLoads::planAt(const SlotOnDay& asked, bool keepsLoad)
{
    SlotLoad planned;
    const auto* variant = m_input.library.find(asked.slot.variant);
    if (!variant) return planned;
    const LineBasis& basis = m_lifter.of(asked.slot);
    const ProgressionRule& rule = progressionFor(asked.slot.progression);
    const bool eased = asked.week == WeekKind::Deload;
    planned.basis = basis.kind;
    // An easier week's reserve stands in its slots.
    planned.reserve = eased ? asked.place.reserve : rule.reserve(asked.place, RuleParameters(rule, m_input.settings));
    ProgressionInput input = progressionInput(asked, variant->value, basis, planned.reserve);
    input.exposures = exposuresBefore(asked, basis);
    if (keepsLoad && asked.slot.load)
        keepLoad(planned, input, asked);
    else if (input.exposures.empty())
        planStart(planned, input, variant->value, basis);
    else if (eased)
        planDeload(planned, input, asked, variant->value);
    else
        planStep(planned, input, rule, variant->value, basis.outlook ? basis.outlook->context().bodyKg : 0);
    addChances(planned, asked, basis);
    return planned;
}

}  // namespace steelyard
