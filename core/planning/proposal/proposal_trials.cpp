#include "core/planning/proposal/proposal_trials.h"

#include "core/trials/discomfort_veto.h"

#include <algorithm>
#include <ranges>
#include <set>

namespace steelyard {
namespace {

LiftLine liftOfArm(const Trial& trial, std::size_t arm)
{
    const TrialArm& of = trial.arms[arm];
    return {trial.athlete, of.variant, of.grip, of.standard};
}

// The arm with the highest rating in its sessions, but the one that was chosen; absent: nothing was rated above 0.
std::optional<std::size_t> worstArm(const Trial& trial, const TrialRecord& record)
{
    std::optional<std::size_t> worst;
    int highest = 0;
    for (const TrialObservation& observation : record.observations) {
        const int rating = observation.worstDiscomfort().value_or(0);
        if (!observation.done || trial.ending->choice == observation.done || rating <= highest) continue;
        highest = rating;
        worst = observation.done;
    }
    return worst;
}

std::vector<std::size_t> armsThatHurt(const AthleteLog& log, const Trial& trial)
{
    const TrialRecord record = trialRecord(trial, log, {}, trial.ending->date);
    std::vector<std::size_t> hurt;
    for (const VetoedArm& out : vetoedArms(trial, record))
        if (trial.ending->choice != out.arm) hurt.push_back(out.arm);
    if (const auto worst = worstArm(trial, record); hurt.empty() && worst) hurt.push_back(*worst);
    return hurt;
}

bool hasEnded(const Trial& trial, QDate today)
{
    return trial.ending && trial.ending->date <= today;
}

class AdviceFinder {
public:
    AdviceFinder(const AthleteLog& log, const Library& library, QDate today)
        : m_log(log), m_library(library), m_today(today)
    {}

    [[nodiscard]] std::vector<TrialAdvice> run()
    {
        // What runs comes before what was chosen, and the newest first.
        for (const bool ended : {false, true})
            for (const Row<Trial>& row : std::views::reverse(m_log.trials))
                if (hasEnded(row.value, m_today) == ended && !row.value.arms.empty()) add(row.value, ended);
        return std::move(m_all);
    }

private:
    void add(const Trial& trial, bool ended)
    {
        const auto* variant = m_library.find(trial.arms.front().variant);
        if (!variant) return;
        const std::optional<std::size_t> kept = ended ? trial.ending->choice : std::optional<std::size_t>(0);
        if (kept && m_settled.insert(variant->value.exercise).second)
            m_all.push_back({ended ? TrialSay::Chosen : TrialSay::UnderTrial, liftOfArm(trial, *kept), &trial});
        if (!ended || trial.ending->kind != TrialEnd::Discomfort) return;
        for (const std::size_t arm : armsThatHurt(m_log, trial)) {
            const LiftLine lift = liftOfArm(trial, arm);
            if (std::ranges::find(m_all, lift, &TrialAdvice::lift) == m_all.end())
                m_all.push_back({TrialSay::Avoided, lift, &trial});
        }
    }

    const AthleteLog& m_log;
    const Library& m_library;
    QDate m_today;
    std::set<Id<Exercise>> m_settled;
    std::vector<TrialAdvice> m_all;
};

}  // namespace

std::vector<TrialAdvice> trialAdvice(const AthleteLog& log, const Library& library, QDate today)
{
    return AdviceFinder(log, library, today).run();
}

}  // namespace steelyard
