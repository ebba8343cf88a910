#include "core/planning/propose_block.h"

#include "core/planning/proposal/proposal_words.h"
#include "core/planning/trial_in_block.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct ProposeBlockText {
    Q_DECLARE_TR_FUNCTIONS(ProposeBlockText)
};

constexpr int kMostDaysOfAWeek = 7;
constexpr int kMostMinutesOfADay = 600;

Result<void> checkProposalWishes(const ProposalWishes& wishes)
{
    const auto refuse = [](const QString& text) { return fail(ErrorCode::Invalid, text); };
    if (!wishes.today.isValid() || !wishes.from.isValid())
        return refuse(ProposeBlockText::tr("A block needs a first day."));
    if (wishes.weeks < 1 || wishes.weeks > kMostProposalWeeks)
        return refuse(ProposeBlockText::tr("A block has 1 to %1 weeks.").arg(kMostProposalWeeks));
    if (wishes.daysPerWeek && (*wishes.daysPerWeek < 1 || *wishes.daysPerWeek > kMostDaysOfAWeek))
        return refuse(ProposeBlockText::tr("A week has 1 to 7 training days."));
    if (wishes.minutesPerDay && (*wishes.minutesPerDay < 1 || *wishes.minutesPerDay > kMostMinutesOfADay))
        return refuse(ProposeBlockText::tr("A training day has 1 to %1 minutes.").arg(kMostMinutesOfADay));
    for (const PinnedSlot& pin : wishes.pinned)
        if (pin.weekday < 1 || pin.weekday > kMostDaysOfAWeek)
            return refuse(ProposeBlockText::tr("A weekday is a number from 1, Monday, to 7, Sunday."));
    return {};
}

// The sessions that running trials have ahead, in the block that is proposed. Those that it has no day for are said.
void layRunningTrials(const ProposalProblem& made, const Library& library, const ProposalWishes& wishes,
                      BlockProposal& proposal)
{
    std::vector<int> weekdays;
    weekdays.reserve(made.problem.days.size());
    for (const PlanDay& day : made.problem.days) weekdays.push_back(day.weekday);
    for (const TrialAdvice& advice : made.trials) {
        if (advice.say != TrialSay::UnderTrial) continue;
        const std::vector<Row<Block>> blocks{{Id<Block>(0), QUuid(), proposal.block}};
        const LaidTrial laid = layTrial({blocks, library, weekdays, wishes.from}, *advice.trial);
        if (!laid.blocks.empty()) proposal.block = laid.blocks.front().value;
        for (const QDate date : laid.noTraining)
            proposal.unmet << ProposeBlockText::tr("Trial “%1”: the session of %2 falls on no training day.")
                                  .arg(advice.trial->question, wishes.wording.day(date));
    }
}

}  // namespace

Result<BlockProposal> proposeBlock(const AthleteLog& log, const Library& library, const Gym* gym,
                                   const ProposalWishes& wishes, const Progress& progress)
{
    STEELYARD_CHECK(checkProposalWishes(wishes));
    const ProposalProblem made = proposalProblem(log, library, gym, wishes);
    if (made.choices.empty())
        return fail(ErrorCode::Invalid,
                    ProposeBlockText::tr("The library shows no exercise for this lifter. Show some, or agree on sets a "
                                         "week for a muscle."));
    STEELYARD_TRY(PlanAnswer answer, solvePlan(made.problem, wishes.search, progress));
    ProposalWeeks weeks = proposalWeeks(made, answer, wishes);
    Block block{log.athlete.id,
                ProposeBlockText::tr("Block from %1").arg(wishes.wording.day(wishes.from)),
                {},
                wishes.from,
                std::move(weeks.weeks)};
    block.minutesPerDay = wishes.minutesPerDay;
    block.easing = wishes.easing;
    block.aims = wishes.aims;
    block.daysOff = wishes.daysOff;
    BlockProposal proposal{std::move(block),
                           {},
                           proposalCautions(made, wishes.wording),
                           proposalUnmet(made, answer, weeks.moved, wishes.wording),
                           std::move(answer)};
    for (const PlanSlot& slot : inSessionOrder(made.problem, proposal.answer.placed))
        proposal.week.push_back({made.problem.days[static_cast<std::size_t>(slot.day)].weekday,
                                 made.choices[static_cast<std::size_t>(slot.candidate)].lift, slot.sets,
                                 proposalWhy(made, proposal.answer, slot, wishes.wording)});
    layRunningTrials(made, library, wishes, proposal);
    return proposal;
}

}  // namespace steelyard
