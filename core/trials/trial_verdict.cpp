#include "core/trials/trial_verdict.h"

#include "core/trials/verdict_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialWordText {
    Q_DECLARE_TR_FUNCTIONS(TrialWordText)
};

// Fewer sessions of an arm than this say nothing of it, however many the other has: as with whole blocks.
constexpr int kLeastSessionsAnArm = kFirstLook;
// A larger share of sessions done with another arm than drawn, and lots no longer decided. Our convention.
constexpr double kMostOtherArm = 0.25;
// All planned sessions done, this sure of an arm, and no more than as many sessions again would do: worth going on.
constexpr double kWorthGoingOn = 0.8;

struct DoneCount {
    int trained = 0;
    int otherArm = 0;
};

DoneCount doneCount(const TrialRecord& record, int lastBlock)
{
    DoneCount count;
    for (const TrialObservation& seen : record.observations) {
        if (seen.block < 1 || seen.block > lastBlock || !seen.done) continue;
        ++count.trained;
        count.otherArm += *seen.done != seen.drawn ? 1 : 0;
    }
    return count;
}

std::vector<std::size_t> armsLeft(const Trial& trial, const std::vector<VetoedArm>& out)
{
    std::vector<std::size_t> left;
    for (std::size_t arm = 0; arm < trial.arms.size(); ++arm)
        if (std::ranges::find(out, arm, &VetoedArm::arm) == out.end()) left.push_back(arm);
    return left;
}

bool allAnswersEqual(const Trial& trial, const TrialRecord& record)
{
    std::optional<double> first;
    for (const auto& answer : sessionAnswers(trial, record)) {
        if (!answer) continue;
        if (first && *answer != *first) return false;
        first = answer;
    }
    return first.has_value();
}

void say(TrialVerdict& verdict, TrialWord word, const char16_t* reason)
{
    verdict.word = word;
    verdict.reason = QString::fromUtf16(reason);
}

bool saysNothing(const Trial& trial, const TrialRecord& record, const std::vector<std::size_t>& left,
                 TrialVerdict& verdict)
{
    const auto nothing = [&](const char16_t* reason) {
        say(verdict, TrialWord::NothingYet, reason);
        return true;
    };
    if (verdict.wholeBlocks < kFirstLook) return nothing(u"too_few_blocks");
    const DoneCount count = doneCount(record, verdict.wholeBlocks);
    if (count.otherArm > kMostOtherArm * count.trained) return nothing(u"order_not_kept");
    const auto sessionsOf = [&](std::size_t arm) {
        return std::ranges::count_if(record.observations, [&](const TrialObservation& seen) {
            return seen.block > 0 && seen.block <= verdict.wholeBlocks && seen.done == arm;
        });
    };
    if (std::ranges::any_of(left, [&](std::size_t arm) { return sessionsOf(arm) == 0; }))
        return nothing(u"one_arm_only");
    if (std::ranges::none_of(trial.outcomes, [](const TrialOutcome& outcome) {
            const OutcomeKind* kind = findOutcome(outcome.key);
            return outcome.weight > 0 && kind && kind->outOfTen(0);
        }))
        return nothing(u"nothing_weighs");
    if (!verdict.done.answer || std::ranges::any_of(left, [&](std::size_t arm) {
            return verdict.done.answer->arms[arm].sessions < kLeastSessionsAnArm;
        }))
        return nothing(u"too_few_values");
    return false;
}

// The other way of counting must not point elsewhere.
bool waysAgree(const TrialVerdict& verdict, const std::vector<std::size_t>& left)
{
    if (!verdict.drawn.answer || !verdict.drawn.answer->posterior) return false;
    const ArmPosterior& drawn = *verdict.drawn.answer->posterior;
    return std::ranges::all_of(left, [&](std::size_t arm) {
        return arm == verdict.look.best || drawn.difference(verdict.look.best, arm).mean > 0;
    });
}

void decideWord(const Trial& trial, const std::vector<std::size_t>& left, TrialVerdict& verdict)
{
    const LookFinding& look = verdict.look;
    const int blocksLeft = std::max(0, trial.blocks - verdict.wholeBlocks);
    const auto more = [&](int blocks) { verdict.moreSessions = blocks * static_cast<int>(left.size()); };
    switch (look.says) {
    case LookSays::Prefer:
        if (!waysAgree(verdict, left)) return say(verdict, TrialWord::NoClearDifference, u"ways_disagree");
        verdict.arm = look.best;
        return say(verdict, TrialWord::Prefer, u"prefer");
    case LookSays::Equal:
        return say(verdict, TrialWord::NoClearDifference, u"equal");
    case LookSays::Futile:
        return say(verdict, TrialWord::NoClearDifference, u"futile");
    case LookSays::GoOn:
        if (trial.ending) return say(verdict, TrialWord::NoClearDifference, u"undecided");
        more(std::min(look.blocksAhead.value_or(blocksLeft), blocksLeft));
        return say(verdict, TrialWord::NeedsMore, u"go_on");
    case LookSays::Undecided:
        if (!trial.ending && look.chanceBest >= kWorthGoingOn && look.blocksAhead
            && *look.blocksAhead <= trial.blocks) {
            more(*look.blocksAhead);
            return say(verdict, TrialWord::NeedsMore, u"undecided");
        }
        return say(verdict, TrialWord::NoClearDifference, u"undecided");
    case LookSays::TooEarly:
        break;
    }
    say(verdict, TrialWord::NothingYet, u"too_few_blocks");
}

void decide(const Trial& trial, const TrialRecord& record, TrialVerdict& verdict)
{
    const auto left = armsLeft(trial, verdict.out);
    if (left.size() < 2 || (trial.ending && trial.ending->kind == TrialEnd::Discomfort))
        return say(verdict, TrialWord::Discomfort, u"discomfort");
    if (saysNothing(trial, record, left, verdict)) return;
    if (allAnswersEqual(trial, record)) return say(verdict, TrialWord::NoClearDifference, u"all_equal");
    const TrialRule rule = trialRule(trial.arms.size(), std::max(trial.blocks, verdict.wholeBlocks));
    verdict.look = decideAt(*verdict.done.answer->posterior, left, verdict.wholeBlocks, rule);
    decideWord(trial, left, verdict);
}

}  // namespace

int wholeBlocks(const Trial& trial, const TrialRecord& record)
{
    const auto isOver = [&](std::size_t day) {
        if (day >= record.observations.size()) return false;
        const TrialObservation& seen = record.observations[day];
        return seen.done || seen.missed || day + 1 < record.observations.size()
               || seen.date.addDays(kMostDaysLate) < record.asOf;
    };
    int whole = 0;
    for (int block = 1; block <= trial.blocks; ++block) {
        bool any = false;
        for (std::size_t day = 0; day < trial.days.size(); ++day) {
            if (trial.days[day].block != block) continue;
            any = true;
            if (!isOver(day)) return whole;
        }
        if (!any) return whole;
        whole = block;
    }
    return whole;
}

TrialVerdict trialVerdict(const Trial& trial, const TrialRecord& record, const std::vector<QString>& armNames,
                          const Wording& wording)
{
    TrialVerdict verdict;
    verdict.wholeBlocks = wholeBlocks(trial, record);
    verdict.threshold = trialRule(trial.arms.size(), std::max(trial.blocks, verdict.wholeBlocks)).prefer;
    verdict.done = trialEffects(trial, record, ArmTaken::Done, verdict.wholeBlocks);
    verdict.drawn = trialEffects(trial, record, ArmTaken::Drawn, verdict.wholeBlocks);
    verdict.out = vetoedArms(trial, record);
    verdict.deviations = deviationSentences(record);
    decide(trial, record, verdict);
    sayVerdict(trial, record, armNames, wording, verdict);
    return verdict;
}

QString trialWordText(TrialWord word)
{
    switch (word) {
    case TrialWord::Prefer:
        return TrialWordText::tr("prefer");
    case TrialWord::NoClearDifference:
        return TrialWordText::tr("no clear difference");
    case TrialWord::NeedsMore:
        return TrialWordText::tr("needs more sessions");
    case TrialWord::Discomfort:
        return TrialWordText::tr("stopped for discomfort");
    case TrialWord::NothingYet:
        break;
    }
    return TrialWordText::tr("says nothing yet");
}

}  // namespace steelyard
