#include "core/planning/proposal/proposal_words.h"

#include "core/analysis/discomfort_zones.h"
#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct ProposalText {
    Q_DECLARE_TR_FUNCTIONS(ProposalText)
};

QString limitWord(PlanLimit limit)
{
    switch (limit) {
    case PlanLimit::Minutes:
        return ProposalText::tr("the minutes of a day");
    case PlanLimit::BackADay:
        return ProposalText::tr("the back loading of a day");
    case PlanLimit::BackBesideHigh:
        return ProposalText::tr("a day of high back loading before or after");
    case PlanLimit::ExercisesADay:
        return ProposalText::tr("the number of exercises a day");
    case PlanLimit::OneOfAGroup:
        return ProposalText::tr("no two ways of one exercise on a day");
    case PlanLimit::DaysApart:
        return ProposalText::tr("the days between two sessions of a muscle");
    case PlanLimit::DaysAWeek:
        return ProposalText::tr("how often an exercise stands in a week");
    case PlanLimit::SetsADay:
        return ProposalText::tr("the sets of an exercise on a day");
    case PlanLimit::SparedJoint:
        return ProposalText::tr("a joint that is spared");
    case PlanLimit::Equipment:
        return ProposalText::tr("what the gym has");
    case PlanLimit::Pins:
        return ProposalText::tr("what is fixed");
    case PlanLimit::TrainingDays:
        return ProposalText::tr("the number of training days");
    case PlanLimit::OtherWishes:
        return ProposalText::tr("other wishes that weigh more");
    case PlanLimit::NoCandidate:
        return ProposalText::tr("no exercise to choose from that trains it");
    }
    return {};
}

QString fullLiftName(const ProposalChoice& choice)
{
    return QStringLiteral("%1, %2").arg(choice.exercise->value.name, choice.variant->value.name);
}

// Pinned slots of a plan, and which of them have to do with what.
class PinNames {
public:
    PinNames(const ProposalProblem& made, const PlanAnswer& answer, const Wording& wording)
        : m_made(made), m_answer(answer), m_wording(wording)
    {}

    // "Arm curl, straight bar (Monday); …"
    template <class Keep>
    [[nodiscard]] QString where(Keep keep) const
    {
        QStringList names;
        for (const PlanSlot& slot : m_answer.placed) {
            if (!slot.pinned || slot.sets == 0 || !keep(slot)) continue;
            const int weekday = m_made.problem.days[static_cast<std::size_t>(slot.day)].weekday;
            names << QStringLiteral("%1 (%2)").arg(
                fullLiftName(m_made.choices[static_cast<std::size_t>(slot.candidate)]),
                m_wording.locale.dayName(weekday));
        }
        return names.join(QStringLiteral("; "));
    }
    // Those that have to do with a wish: with too many sets of a muscle those that train it, with too few everything that takes
    // the room.
    [[nodiscard]] QString about(const UnmetWish& wish) const
    {
        return where([&](const PlanSlot& slot) {
            const PlanCandidate& one = candidate(slot);
            if (wish.wish == PlanWish::Joints) return std::ranges::find(one.joints, wish.index) != one.joints.end();
            if (wish.wish != PlanWish::Over && wish.wish != PlanWish::Crowding) return true;
            return std::ranges::find(one.shares, wish.index, &PlanShare::muscle) != one.shares.end();
        });
    }
    // Those that overstep a limit by themselves.
    [[nodiscard]] QString behind(const OversteppedLimit& one) const
    {
        return where([&](const PlanSlot& slot) { return isBehind(one, slot); });
    }

private:
    [[nodiscard]] const PlanCandidate& candidate(const PlanSlot& slot) const
    {
        return m_made.problem.candidates[static_cast<std::size_t>(slot.candidate)];
    }
    [[nodiscard]] bool sharesItsGroup(const PlanSlot& slot) const
    {
        return std::ranges::any_of(m_answer.placed, [&](const PlanSlot& other) {
            return other.pinned && other.day == slot.day && other.candidate != slot.candidate
                   && candidate(other).group == candidate(slot).group;
        });
    }
    [[nodiscard]] bool isBehind(const OversteppedLimit& one, const PlanSlot& slot) const
    {
        if (one.candidate) return slot.candidate == *one.candidate;
        if (one.muscle)
            return std::ranges::any_of(candidate(slot).shares, [&](const PlanShare& share) {
                return share.muscle == *one.muscle && share.share >= kTargetShare;
            });
        // The day beside a heavy one breaks it together with that one.
        if (one.limit == PlanLimit::BackBesideHigh) return candidate(slot).backLoading > 0;
        if (slot.day != one.day) return false;
        if (one.limit == PlanLimit::BackADay) return candidate(slot).backLoading > 0;
        return one.limit != PlanLimit::OneOfAGroup || sharesItsGroup(slot);
    }

    const ProposalProblem& m_made;
    const PlanAnswer& m_answer;
    const Wording& m_wording;
};

QString inTheWay(const UnmetWish& wish, const PinNames& pins)
{
    QStringList words;
    for (const PlanObstacle& obstacle : wish.inTheWay)
        words << (obstacle.limit == PlanLimit::Pins
                      ? QStringLiteral("%1: %2").arg(limitWord(obstacle.limit), pins.about(wish))
                      : limitWord(obstacle.limit));
    if (words.isEmpty()) return ProposalText::tr("No one limit alone is in the way.");
    return ProposalText::tr("In the way: %1.").arg(words.join(QStringLiteral("; ")));
}

double weeklySets(const ProposalProblem& made, const PlanAnswer& answer, int muscle)
{
    double sets = 0;
    for (const PlanSlot& slot : answer.placed)
        for (const PlanShare& share : made.problem.candidates[static_cast<std::size_t>(slot.candidate)].shares)
            if (share.muscle == muscle) sets += slot.sets * share.share;
    return sets;
}

QString reasonOf(const ProposalChoice& choice, bool pinned, const Wording& wording)
{
    if (pinned) return ProposalText::tr("Fixed by the coach.");
    if (choice.trial && choice.trial->say == TrialSay::Chosen)
        return ProposalText::tr("Chosen in the trial “%1” on %2.")
            .arg(choice.trial->trial->question, wording.day(choice.trial->trial->ending->date));
    if (choice.trial) return ProposalText::tr("Stays: the trial “%1” runs on it.").arg(choice.trial->trial->question);
    if (choice.progressing) return ProposalText::tr("Stays: it is progressing.");
    if (choice.record.sessions == 0) return ProposalText::tr("New to this lifter.");
    return ProposalText::tr("Done in %n session(s) of the last half year.", nullptr, choice.record.sessions);
}

QString ratingPart(const LineSummary& record, const Wording& wording)
{
    QStringList parts;
    if (record.felt) parts << ProposalText::tr("The target is felt at %1 of 10.").arg(wording.number(*record.felt));
    if (record.limiterRated > 0)
        parts << ProposalText::tr("It gave out first in %1 of %2 rated sessions.")
                     .arg(QString::number(record.targetFirst), QString::number(record.limiterRated));
    return parts.join(u' ');
}

// Muscles that it trains as a target and that somebody asked sets of.
QString servedPart(const ProposalProblem& made, const PlanAnswer& answer, int candidate, const Wording& wording)
{
    QStringList parts;
    for (const PlanShare& share : made.problem.candidates[static_cast<std::size_t>(candidate)].shares) {
        const PlanMuscle& band = made.problem.muscles[static_cast<std::size_t>(share.muscle)];
        if (share.share < kTargetShare || band.low <= 0) continue;
        parts << ProposalText::tr("For %1: %2 of %3 to %4 sets a week.")
                     .arg(made.muscles[static_cast<std::size_t>(share.muscle)].value.name,
                          wording.number(weeklySets(made, answer, share.muscle)), wording.number(band.low),
                          wording.number(band.high));
    }
    return parts.join(u' ');
}

QString unmetSentence(const ProposalProblem& made, const PlanAnswer& answer, const UnmetWish& wish,
                      const Wording& wording)
{
    const auto index = static_cast<std::size_t>(wish.index);
    switch (wish.wish) {
    case PlanWish::Under:
        return ProposalText::tr("%1: %2 of at least %3 sets a week.")
            .arg(made.muscles[index].value.name, wording.number(weeklySets(made, answer, wish.index)),
                 wording.number(made.problem.muscles[index].low));
    case PlanWish::Over:
        return ProposalText::tr("%1: %2 sets a week, %3 are the most that is wanted.")
            .arg(made.muscles[index].value.name, wording.number(weeklySets(made, answer, wish.index)),
                 wording.number(made.problem.muscles[index].high));
    case PlanWish::Crowding:
        return ProposalText::tr("%1: more than %2 sets on one day.")
            .arg(made.muscles[index].value.name, wording.number(made.problem.muscles[index].mostADay));
    case PlanWish::Joints:
        return ProposalText::tr("%1 stays in, though the %2 was noticeable in it.")
            .arg(made.jointExercises[index], jointName(made.joints[index].joint));
    case PlanWish::Continuity:
        return ProposalText::tr("%1 is progressing and has no place.").arg(fullLiftName(made.choices[index]));
    case PlanWish::Thin: {
        const PlanDay& day = made.problem.days[index];
        return ProposalText::tr("%1: %2 sets, %3 would make the day worth coming for.")
            .arg(wording.locale.dayName(day.weekday), wording.number(day.leastSets - wish.missing),
                 wording.number(day.leastSets));
    }
    case PlanWish::Rating:
    case PlanWish::Exercises:
        break;
    }
    return {};
}

// That a lift which merely was done gives way to another needs no excuse.
bool isWorthSaying(const ProposalProblem& made, const UnmetWish& wish)
{
    return wish.wish != PlanWish::Continuity || made.choices[static_cast<std::size_t>(wish.index)].progressing;
}

}  // namespace

QString proposalWhy(const ProposalProblem& made, const PlanAnswer& answer, const PlanSlot& slot, const Wording& wording)
{
    const ProposalChoice& choice = made.choices[static_cast<std::size_t>(slot.candidate)];
    QStringList parts{reasonOf(choice, slot.pinned, wording), ratingPart(choice.record, wording),
                      servedPart(made, answer, slot.candidate, wording)};
    parts.removeAll(QString());
    return parts.join(u' ');
}

QStringList proposalCautions(const ProposalProblem& made, const Wording& wording)
{
    QStringList cautions;
    for (std::size_t i = 0; i < made.joints.size(); ++i) {
        const JointComplaint& said = made.joints[i];
        const QString text =
            discomfortZone(said.rating) == DiscomfortZone::High
                ? ProposalText::tr(
                    "%1: discomfort in the %2 was rated %3 of 10 on %4. It is left out; stop what hurts, and if "
                    "it lasts, swells, or spreads, see a licensed professional.")
                : ProposalText::tr("%1: discomfort in the %2 was rated %3 of 10 on %4. Others are preferred to it.");
        cautions << text.arg(made.jointExercises[i], jointName(said.joint), QString::number(said.rating),
                             wording.day(said.date));
    }
    for (std::size_t i = 0; i < made.trials.size(); ++i)
        if (made.trials[i].say == TrialSay::Avoided)
            cautions << ProposalText::tr("%1: left out. The trial “%2” ended on %3 because of discomfort with it.")
                            .arg(made.trialLifts[i], made.trials[i].trial->question,
                                 wording.day(made.trials[i].trial->ending->date));
    return cautions;
}

QStringList proposalUnmet(const ProposalProblem& made, const PlanAnswer& answer, const std::vector<MovedSession>& moved,
                          const Wording& wording)
{
    QStringList sentences;
    const PinNames pins(made, answer, wording);
    for (const OversteppedLimit& one : answer.oversteppedByPins) {
        const QString sentence = ProposalText::tr("What is fixed goes over a limit by itself: %1. It is %2.")
                                     .arg(limitWord(one.limit), pins.behind(one));
        sentences << (one.muscle ? QStringLiteral("%1. %2").arg(
                          made.muscles[static_cast<std::size_t>(*one.muscle)].value.name, sentence)
                                 : sentence);
    }
    for (const UnmetWish& wish : answer.unmet)
        if (isWorthSaying(made, wish))
            sentences << unmetSentence(made, answer, wish, wording) + u' ' + inTheWay(wish, pins);
    for (const MovedSession& one : moved)
        sentences << (one.to ? ProposalText::tr("The session of %1 falls on a day off and moves to %2.")
                                   .arg(wording.day(one.from), wording.day(*one.to))
                             : ProposalText::tr(
                                   "The session of %1 falls on a day off, and no other day of its week is free "
                                   "without going over a limit: it is left out.")
                                   .arg(wording.day(one.from)));
    return sentences;
}

}  // namespace steelyard
