#include "core/planning/proposal/proposal_problem.h"

#include "core/analysis/discomfort_zones.h"
#include "core/planning/session_time.h"
#include "core/planning/usual_weekdays.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace steelyard {
namespace {

constexpr double kRecordLow = 0.75;
constexpr double kRecordHigh = 1.25;
constexpr double kLeastRoom = 4;      // between both ends of a band that the record gives
constexpr double kLeastRecorded = 2;  // weekly sets under which a muscle isn't trained
constexpr double kPlainLow = 4;
constexpr double kPlainHigh = 10;
constexpr double kFreeHigh = 20;
constexpr double kAimWeight = 1;
constexpr double kRecordWeight = 0.5;
constexpr double kFreeWeight = 0.25;
constexpr double kSecondsAMinute = 60;
constexpr double kWorthComingFor = 0.5;  // of an even share of the week's sets
constexpr int kMostTrainingDays = 6;
constexpr int kFirstSetsMost = 5;
constexpr int kTwiceAWeek = 2;

// The larger groups of muscles, by the keys of the library that ships.
constexpr std::array kPlainMuscles{u"chest",  u"lats",   u"upper_back", u"side_deltoid", u"quadriceps", u"hamstrings",
                                   u"glutes", u"biceps", u"triceps",    u"calves",       u"abdominals"};

int backOf(BackLoading loading)
{
    return loading == BackLoading::None ? 0 : loading == BackLoading::Some ? 1 : kMostBackLoading;
}

const MuscleAim* aimOf(const std::vector<MuscleAim>& aims, Id<Muscle> muscle)
{
    const auto found = std::ranges::find(aims, muscle, &MuscleAim::muscle);
    return found == aims.end() ? nullptr : &*found;
}

class ProblemMaker {
public:
    ProblemMaker(const AthleteLog& log, const Library& library, const Gym* gym, const ProposalWishes& wishes)
        : m_log(log), m_library(library), m_gym(gym), m_wishes(wishes), m_usual(usualWeeklySets(log, wishes.today))
    {}

    [[nodiscard]] ProposalProblem run()
    {
        const auto weekdays = trainingWeekdays(m_log, m_wishes);
        const int minutes =
            m_wishes.minutesPerDay.value_or(m_log.athlete.value.minutesPerDay.value_or(kUsualTrainingMinutes));
        for (const int weekday : weekdays) m_made.problem.days.push_back({weekday, static_cast<double>(minutes)});
        for (const Row<Muscle>& muscle : m_library.muscles) addMuscle(muscle);
        wishForFullDays();
        for (const JointComplaint& joint : complaintsOf(m_log, m_wishes.today)) {
            const bool high = discomfortZone(joint.rating) == DiscomfortZone::High;
            const auto* exercise = m_library.find(joint.exercise);
            m_made.joints.push_back(joint);
            m_made.jointExercises.push_back(exercise ? exercise->value.name : QString());
            m_made.problem.joints.push_back({joint.rating / 10.0, high});
        }
        m_made.trials = trialAdvice(m_log, m_library, m_wishes.today);
        for (const TrialAdvice& advice : m_made.trials) m_made.trialLifts.push_back(nameOfLift(advice.lift));
        // The day after a heavy back, and the day before it, are no days to load the back again.
        m_made.problem.limits.backBesideHigh = 0;
        m_made.choices = proposalChoices(m_log, m_library, m_gym, m_wishes, weekdays, m_wanted);
        for (const ProposalChoice& choice : m_made.choices) addCandidate(choice);
        return std::move(m_made);
    }

private:
    void addMuscle(const Row<Muscle>& muscle);
    void wishForFullDays();
    void addCandidate(const ProposalChoice& choice);
    [[nodiscard]] QString nameOfLift(const LiftLine& lift) const
    {
        const auto* variant = m_library.find(lift.variant);
        const auto* grip = m_library.find(lift.grip);
        if (!variant || !grip) return {};
        return m_library.fullName(variant->value) + QStringLiteral(", ") + grip->value.name;
    }
    [[nodiscard]] PlanMuscle bandOf(const Row<Muscle>& muscle) const;

    const AthleteLog& m_log;
    const Library& m_library;
    const Gym* m_gym;
    const ProposalWishes& m_wishes;
    std::map<Id<Muscle>, double> m_usual;
    std::set<Id<Muscle>> m_wanted;
    ProposalProblem m_made;
};

PlanMuscle ProblemMaker::bandOf(const Row<Muscle>& muscle) const
{
    PlanMuscle band;
    const MuscleAim* aim = aimOf(m_wishes.aims, muscle.id);
    if (!aim) aim = aimOf(m_log.athlete.value.aims, muscle.id);
    if (aim) {
        band.low = aim->weeklySetsLow;
        band.high = aim->weeklySetsHigh;
        band.weight = kAimWeight;
        return band;
    }
    const auto usual = m_usual.find(muscle.id);
    const bool recorded = usual != m_usual.end() && usual->second >= kLeastRecorded;
    const bool plain = m_usual.empty() && std::ranges::any_of(kPlainMuscles, [&](const char16_t* key) {
                           return muscle.value.key == QStringView(key);
                       });
    band.low = recorded ? std::floor(kRecordLow * usual->second) : plain ? kPlainLow : 0;
    band.high = recorded ? std::max(band.low + kLeastRoom, std::ceil(kRecordHigh * usual->second))
                : plain  ? kPlainHigh
                         : kFreeHigh;
    band.weight = recorded || plain ? kRecordWeight : kFreeWeight;
    return band;
}

void ProblemMaker::addMuscle(const Row<Muscle>& muscle)
{
    const PlanMuscle band = bandOf(muscle);
    m_made.muscles.push_back(muscle);
    m_made.problem.muscles.push_back(band);
    if (band.low > 0) m_wanted.insert(muscle.id);
}

// Nobody comes for one lift. Helpers count in the bands, so their sum is more than the sets that will be done: half is little.
void ProblemMaker::wishForFullDays()
{
    double week = 0;
    for (const PlanMuscle& muscle : m_made.problem.muscles) week += muscle.low;
    const double share = week / static_cast<double>(m_made.problem.days.size());
    for (PlanDay& day : m_made.problem.days) day.leastSets = static_cast<int>(kWorthComingFor * share);
}

void ProblemMaker::addCandidate(const ProposalChoice& choice)
{
    PlanCandidate made;
    for (const MuscleShare& share : choice.exercise->value.shares) {
        const auto at = std::ranges::find(m_made.muscles, share.muscle, &Row<Muscle>::id);
        if (at != m_made.muscles.end())
            made.shares.push_back({static_cast<int>(at - m_made.muscles.begin()), share.share});
    }
    made.group = static_cast<int>(choice.exercise - m_library.exercises.data());
    made.backLoading = backOf(choice.variant->value.backLoading);
    const double rest = restSecondsOf(choice.slot);
    made.minutesASet = (setSecondsOf(choice.slot, m_library) + rest) / kSecondsAMinute;
    // Nobody rests after the last set; where the rest is longer than setting up, the plan is a little on the long side.
    made.setUpMinutes = std::max(0.0, kSetUpSeconds - rest) / kSecondsAMinute;
    for (int joint = 0; joint < static_cast<int>(m_made.joints.size()); ++joint)
        if (m_made.joints[static_cast<std::size_t>(joint)].exercise == choice.exercise->id)
            made.joints.push_back(joint);
    made.rating = choice.rating;
    made.continuity = choice.continuity;
    made.mostSets = kFirstSetsMost;
    made.mostDays = kTwiceAWeek;
    made.possible = choice.possible;
    made.pins = choice.pins;
    m_made.problem.candidates.push_back(std::move(made));
}

}  // namespace

std::vector<int> trainingWeekdays(const AthleteLog& log, const ProposalWishes& wishes)
{
    std::optional<int> wanted = wishes.daysPerWeek ? wishes.daysPerWeek : log.athlete.value.daysPerWeek;
    if (const auto habit = sessionsAWeek(log, wishes.today); !wanted && habit)
        wanted = std::clamp(static_cast<int>(std::lround(*habit)), 1, kMostTrainingDays);
    std::vector<int> chosen;
    for (const PinnedSlot& pin : wishes.pinned)
        if (std::ranges::find(chosen, pin.weekday) == chosen.end()) chosen.push_back(pin.weekday);
    const auto usual = usualWeekdays(log, wishes.today);
    const auto sessions = trainedWeekdays(log, wishes.today);
    // The usual days, those most often trained first; then those that are furthest from the days there are, Monday first.
    const auto worth = [&](int weekday) {
        int nearest = kMostPlanDays;
        for (const int other : chosen) {
            const int apart = std::abs(other - weekday);
            nearest = std::min({nearest, apart, kMostPlanDays - apart});
        }
        return std::tuple(std::ranges::find(usual, weekday) != usual.end(),
                          sessions[static_cast<std::size_t>(weekday - 1)], nearest);
    };
    while (std::ssize(chosen) < wanted.value_or(kUsualTrainingDays)) {
        int best = 0;
        for (int weekday = 1; weekday <= kMostPlanDays; ++weekday)
            if (std::ranges::find(chosen, weekday) == chosen.end() && (best == 0 || worth(weekday) > worth(best)))
                best = weekday;
        if (best == 0) break;
        chosen.push_back(best);
    }
    std::ranges::sort(chosen);
    return chosen;
}

ProposalProblem proposalProblem(const AthleteLog& log, const Library& library, const Gym* gym,
                                const ProposalWishes& wishes)
{
    return ProblemMaker(log, library, gym, wishes).run();
}

}  // namespace steelyard
