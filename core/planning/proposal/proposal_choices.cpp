#include "core/planning/proposal/proposal_choices.h"

#include "core/planning/gym_offers.h"
#include "core/planning/usual_lift.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr double kUnknownRating = 0.5;
constexpr double kNewRating = 0.4;
constexpr double kFeltWeight = 0.7;
constexpr double kSeldomDone = 0.2;  // worth of staying in the plan
constexpr double kOftenDone = 0.4;
constexpr int kOftenSessions = 6;

double ratingOf(const LineSummary& record)
{
    if (record.sessions == 0) return kNewRating;
    const double felt = record.felt ? *record.felt / 10 : kUnknownRating;
    const double first = record.limiterRated > 0
                             ? static_cast<double>(record.targetFirst) / static_cast<double>(record.limiterRated)
                             : kUnknownRating;
    return kFeltWeight * felt + (1 - kFeltWeight) * first;
}

class ChoiceFinder {
public:
    ChoiceFinder(const AthleteLog& log, const Library& library, const Gym* gym, const ProposalWishes& wishes)
        : m_log(log),
          m_library(library),
          m_gym(gym),
          m_wishes(wishes),
          m_advice(trialAdvice(log, library, wishes.today))
    {}

    [[nodiscard]] std::vector<ProposalChoice> run(const std::vector<int>& weekdays, const std::set<Id<Muscle>>& wanted)
    {
        for (const PinnedSlot& pin : m_wishes.pinned) addPinned(pin, weekdays);
        for (const Row<Exercise>& exercise : m_library.exercises)
            if (!exercise.value.hidden) addExercise(exercise, wanted);
        followTrials();
        return std::move(m_choices);
    }

private:
    void addPinned(const PinnedSlot& pin, const std::vector<int>& weekdays);
    void addExercise(const Row<Exercise>& exercise, const std::set<Id<Muscle>>& wanted);
    void addDone(const Row<Exercise>& exercise, const Row<Variant>& variant);
    void addNew(const Row<Exercise>& exercise);
    void followTrials();
    ProposalChoice& add(const LiftLine& lift, const Row<Exercise>& exercise, const Row<Variant>& variant);
    [[nodiscard]] bool isProgressing(const LineRecord& line) const
    {
        return std::ranges::find(m_wishes.progressing, line.id) != m_wishes.progressing.end();
    }

    const AthleteLog& m_log;
    const Library& m_library;
    const Gym* m_gym;
    const ProposalWishes& m_wishes;
    std::vector<TrialAdvice> m_advice;
    std::vector<ProposalChoice> m_choices;
};

ProposalChoice& ChoiceFinder::add(const LiftLine& lift, const Row<Exercise>& exercise, const Row<Variant>& variant)
{
    const auto known = std::ranges::find(m_choices, lift, &ProposalChoice::lift);
    if (known != m_choices.end()) return *known;
    ProposalChoice choice{.lift = lift,
                          .exercise = &exercise,
                          .variant = &variant,
                          .slot = {.variant = lift.variant, .grip = lift.grip, .standard = lift.standard}};
    for (const LineRecord& line : m_log.lines)
        if (line.line == lift) {
            choice.record = lineSummary(m_log, line, m_wishes.today);
            choice.progressing = isProgressing(line);
        }
    const LineSummary& record = choice.record;
    choice.possible = record.sessions > 0 || gymOffers(m_gym, variant.value);
    choice.rating = ratingOf(record);
    if (record.sessions > 0) choice.continuity = record.sessions >= kOftenSessions ? kOftenDone : kSeldomDone;
    if (choice.progressing) choice.continuity = 1;
    choice.slot.band = record.band.value_or(variant.value.band);
    choice.slot.restSeconds = record.restSeconds;
    m_choices.push_back(std::move(choice));
    return m_choices.back();
}

void ChoiceFinder::addPinned(const PinnedSlot& pin, const std::vector<int>& weekdays)
{
    const auto* variant = m_library.find(pin.slot.variant);
    const auto* exercise = variant ? m_library.find(variant->value.exercise) : nullptr;
    const auto day = std::ranges::find(weekdays, pin.weekday);
    if (!exercise || day == weekdays.end()) return;
    const LiftLine lift{m_log.athlete.id, pin.slot.variant, pin.slot.grip, pin.slot.standard};
    ProposalChoice& choice = add(lift, *exercise, *variant);
    const int at = static_cast<int>(day - weekdays.begin());
    if (std::ranges::find(choice.pins, at, &PlanPin::day) == choice.pins.end())
        choice.pins.push_back({at, pin.slot.sets});
    choice.slot.band = pin.slot.band;
    choice.slot.restSeconds = pin.slot.restSeconds;
}

void ChoiceFinder::followTrials()
{
    const auto isArm = [](const Trial& trial, const LiftLine& lift) {
        return std::ranges::any_of(trial.arms, [&](const TrialArm& arm) {
            return arm.variant == lift.variant && arm.grip == lift.grip && arm.standard == lift.standard;
        });
    };
    for (const TrialAdvice& advice : m_advice) {
        const bool avoided = advice.say == TrialSay::Avoided;
        std::erase_if(m_choices, [&](const ProposalChoice& choice) {
            if (!choice.pins.empty() || choice.trial) return false;
            return avoided ? choice.lift == advice.lift
                           : choice.lift != advice.lift && isArm(*advice.trial, choice.lift);
        });
        const auto* variant = m_library.find(advice.lift.variant);
        const auto* exercise = variant ? m_library.find(variant->value.exercise) : nullptr;
        if (avoided || !exercise || exercise->value.hidden) continue;
        ProposalChoice& choice = add(advice.lift, *exercise, *variant);
        choice.trial = advice;
        choice.continuity = 1;
    }
}

void ChoiceFinder::addDone(const Row<Exercise>& exercise, const Row<Variant>& variant)
{
    const LineRecord* newest = nullptr;
    bool anyProgressing = false;
    for (const LineRecord& line : m_log.lines) {
        if (line.variant.id != variant.id) continue;
        const auto last = lineSummary(m_log, line, m_wishes.today).last;
        if (!last) continue;
        if (isProgressing(line)) {
            add(line.line, exercise, variant);
            anyProgressing = true;
        }
        if (!newest || *last > newest->exposures.back().date) newest = &line;
    }
    if (newest && !anyProgressing) add(newest->line, exercise, variant);
}

void ChoiceFinder::addNew(const Row<Exercise>& exercise)
{
    const Row<Variant>* best = nullptr;
    const auto rank = [&](const Row<Variant>& row) {
        return (gymOffers(m_gym, row.value) ? 2 : 0) + (row.value.isDefault ? 1 : 0);
    };
    for (const Row<Variant>& row : m_library.variants)
        if (row.value.exercise == exercise.id && !row.value.hidden && usualLift(m_library, row, m_log.athlete.id)
            && (!best || rank(row) > rank(*best)))
            best = &row;
    if (best) add(*usualLift(m_library, *best, m_log.athlete.id), exercise, *best);
}

void ChoiceFinder::addExercise(const Row<Exercise>& exercise, const std::set<Id<Muscle>>& wanted)
{
    const auto before = m_choices.size();
    for (const Row<Variant>& variant : m_library.variants)
        if (variant.value.exercise == exercise.id && !variant.value.hidden) addDone(exercise, variant);
    if (m_choices.size() > before) return;
    const bool serves = std::ranges::any_of(exercise.value.shares, [&](const MuscleShare& share) {
        return share.share >= kTargetShare && wanted.contains(share.muscle);
    });
    if (serves) addNew(exercise);
}

}  // namespace

std::vector<ProposalChoice> proposalChoices(const AthleteLog& log, const Library& library, const Gym* gym,
                                            const ProposalWishes& wishes, const std::vector<int>& weekdays,
                                            const std::set<Id<Muscle>>& wanted)
{
    return ChoiceFinder(log, library, gym, wishes).run(weekdays, wanted);
}

}  // namespace steelyard
