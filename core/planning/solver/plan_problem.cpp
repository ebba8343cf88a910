#include "core/planning/solver/plan_problem.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <set>

namespace steelyard {
namespace {

struct PlanProblemText {
    Q_DECLARE_TR_FUNCTIONS(PlanProblemText)
};

constexpr double kMostPlanMinutes = 1'440;
constexpr double kMostWeeklySets = 200;
constexpr double kMostWeight = 1'000;
constexpr int kMostSetsOfASlot = 30;

// False for what is no number, too.
bool liesWithin(double value, double low, double high)
{
    return value >= low && value <= high;
}

bool isIndex(int index, std::size_t count)
{
    return index >= 0 && static_cast<std::size_t>(index) < count;
}

class PlanProblemCheck {
public:
    explicit PlanProblemCheck(const PlanProblem& problem) : m_problem(problem) {}

    [[nodiscard]] Problems run()
    {
        checkDays();
        checkMuscles();
        checkWishes();
        if (m_problem.candidates.size() > kMostPlanCandidates)
            add("candidates", PlanProblemText::tr("There are more exercises to choose from than a plan can weigh."));
        for (const PlanCandidate& candidate : m_problem.candidates) checkCandidate(candidate);
        return std::move(m_found);
    }

private:
    void add(const char* field, const QString& text)
    {
        Problem problem{QString::fromLatin1(field), text};
        if (std::ranges::find(m_found, problem) == m_found.end()) m_found.push_back(std::move(problem));
    }
    void require(bool holds, const char* field, const QString& text)
    {
        if (!holds) add(field, text);
    }
    void checkDays();
    void checkMuscles();
    void checkWishes();
    void checkCandidate(const PlanCandidate&);
    void checkWork(const PlanCandidate&);
    void checkPins(const PlanCandidate&);

    const PlanProblem& m_problem;
    Problems m_found;
};

void PlanProblemCheck::checkDays()
{
    const auto& days = m_problem.days;
    require(!days.empty(), "days", PlanProblemText::tr("A plan needs at least one training day."));
    for (const PlanDay& day : days) {
        require(day.weekday >= 1 && day.weekday <= kMostPlanDays, "days",
                PlanProblemText::tr("A weekday is a number from 1, Monday, to 7, Sunday."));
        require(day.leastSets >= 0, "days", PlanProblemText::tr("The sets wished for on a day are not below 0."));
        require(liesWithin(day.minutes, 0, kMostPlanMinutes), "minutes",
                PlanProblemText::tr("A training day has 0 to 1,440 minutes."));
    }
    const auto inOrder = [](const PlanDay& a, const PlanDay& b) { return a.weekday >= b.weekday; };
    require(std::ranges::adjacent_find(days, inOrder) == days.end(), "days",
            PlanProblemText::tr("The training days stand in the order of the week, each once."));
}

void PlanProblemCheck::checkMuscles()
{
    for (const PlanMuscle& muscle : m_problem.muscles) {
        require(liesWithin(muscle.low, 0, muscle.high) && liesWithin(muscle.high, 0, kMostWeeklySets), "muscles",
                PlanProblemText::tr("Weekly sets begin with their low end and go up to 200."));
        require(liesWithin(muscle.mostADay, 0, kMostWeeklySets), "muscles",
                PlanProblemText::tr("The sets of a muscle on one day lie between 0 and 200."));
        require(muscle.leastDaysApart >= 1 && muscle.leastDaysApart <= kMostPlanDays, "muscles",
                PlanProblemText::tr("Days that train the same muscle lie 1 to 7 days apart."));
        require(liesWithin(muscle.weight, 0, kMostWeight), "muscles",
                PlanProblemText::tr("A weight lies between 0 and 1,000."));
    }
    for (const PlanJoint& joint : m_problem.joints)
        require(liesWithin(joint.complaint, 0, 1), "joints",
                PlanProblemText::tr("A joint's complaint lies between 0 and 1."));
}

void PlanProblemCheck::checkWishes()
{
    const PlanWishes& wishes = m_problem.wishes;
    for (const double weight : {wishes.under, wishes.over, wishes.crowding, wishes.joints, wishes.rating,
                                wishes.continuity, wishes.thin, wishes.exercises})
        require(liesWithin(weight, 0, kMostWeight), "wishes",
                PlanProblemText::tr("A weight lies between 0 and 1,000."));
    const PlanLimits& limits = m_problem.limits;
    require(limits.backADay >= 0 && limits.backBesideHigh >= 0 && limits.exercisesADay >= 0, "limits",
            PlanProblemText::tr("A limit is not below 0."));
}

void PlanProblemCheck::checkCandidate(const PlanCandidate& candidate)
{
    std::set<int> muscles;
    for (const PlanShare& share : candidate.shares) {
        require(isIndex(share.muscle, m_problem.muscles.size()) && muscles.insert(share.muscle).second, "shares",
                PlanProblemText::tr("An exercise names muscles of the plan, each once."));
        require(liesWithin(share.share, 0.001, 1), "shares",
                PlanProblemText::tr("A muscle's share of a set is above 0 and at most 1."));
    }
    for (const int joint : candidate.joints)
        require(isIndex(joint, m_problem.joints.size()), "joints",
                PlanProblemText::tr("An exercise names joints of the plan."));
    checkWork(candidate);
    checkPins(candidate);
}

void PlanProblemCheck::checkWork(const PlanCandidate& candidate)
{
    require(candidate.group >= 0, "group", PlanProblemText::tr("An exercise belongs to a group."));
    require(candidate.backLoading >= 0 && candidate.backLoading <= kMostBackLoading, "backLoading",
            PlanProblemText::tr("Back loading is none, some or high."));
    require(liesWithin(candidate.minutesASet, 0, kMostPlanMinutes)
                && liesWithin(candidate.setUpMinutes, 0, kMostPlanMinutes),
            "minutes", PlanProblemText::tr("Minutes of a set and of setting up are not below 0."));
    require(liesWithin(candidate.rating, 0, 1) && liesWithin(candidate.continuity, 0, 1), "rating",
            PlanProblemText::tr("Rating and continuity lie between 0 and 1."));
    require(
        candidate.leastSets >= 1 && candidate.mostSets >= candidate.leastSets && candidate.mostSets <= kMostSetsOfASlot,
        "sets", PlanProblemText::tr("An exercise has 1 to 30 sets a day, and its least number comes first."));
    require(candidate.mostDays >= 0 && candidate.mostDays <= kMostPlanDays, "mostDays",
            PlanProblemText::tr("An exercise stands on 0 to 7 days a week."));
}

void PlanProblemCheck::checkPins(const PlanCandidate& candidate)
{
    std::set<int> days;
    for (const PlanPin& pin : candidate.pins) {
        require(isIndex(pin.day, m_problem.days.size()) && days.insert(pin.day).second, "pins",
                PlanProblemText::tr("What is fixed stands on a day of the plan, once a day."));
        require(pin.sets >= 0 && pin.sets <= kMostSetsOfASlot, "pins",
                PlanProblemText::tr("What is fixed has 0 to 30 sets."));
    }
}

}  // namespace

Problems validate(const PlanProblem& problem)
{
    return PlanProblemCheck(problem).run();
}

}  // namespace steelyard
