#include "ui/format/trial_words.h"

#include "core/trials/trial_outcomes.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringList>

#include <map>

namespace steelyard::format {
namespace {

struct TrialText {
    Q_DECLARE_TR_FUNCTIONS(TrialText)
};

QString armStandingWords(const ArmStanding& arm, const QString& title)
{
    QStringList parts{TrialText::tr("%1 done").arg(arm.done)};
    if (arm.missed > 0) parts += TrialText::tr("%1 missed").arg(arm.missed);
    if (arm.toCome > 0) parts += TrialText::tr("%1 to come").arg(arm.toCome);
    return TrialText::tr("%1: %2.").arg(title, parts.join(QStringLiteral(", ")));
}

// Of those that most likely is the best.
std::optional<double> chanceOf(const TrialVerdict& verdict, std::size_t arm)
{
    if (!verdict.done.answer || arm >= verdict.done.answer->chanceBest.size()) return std::nullopt;
    return verdict.done.answer->chanceBest[arm];
}

}  // namespace

// Nothing that was estimated is certain.
QString chanceText(double chance)
{
    constexpr double kNearlySure = 0.99;
    if (chance > kNearlySure) return TrialText::tr("over %1").arg(format::percent(kNearlySure));
    if (chance < 1 - kNearlySure) return TrialText::tr("under %1").arg(format::percent(1 - kNearlySure));
    return format::percent(chance);
}

QString armTitle(const std::vector<QString>& names, std::size_t arm)
{
    QString letter = armLetter(arm);
    if (arm >= names.size() || names[arm].isEmpty() || names[arm] == letter) return letter;
    return QStringLiteral("%1 (%2)").arg(letter, names[arm]);
}

QString trialState(const Trial& trial, const std::vector<QString>& names)
{
    if (!trial.ending) return TrialText::tr("running");
    const QString day = format::date(trial.ending->date);
    QString words;
    switch (trial.ending->kind) {
    case TrialEnd::Concluded:
        words = TrialText::tr("concluded %1").arg(day);
        break;
    case TrialEnd::Discomfort:
        words = TrialText::tr("ended for discomfort %1").arg(day);
        break;
    case TrialEnd::Stopped:
        words = TrialText::tr("stopped %1").arg(day);
        break;
    }
    if (trial.ending->choice) words += TrialText::tr(", going on with %1").arg(armTitle(names, *trial.ending->choice));
    if (!trial.ending->reason.isEmpty()) words += QStringLiteral(": ") + trial.ending->reason;
    return words;
}

QString trialShape(const Trial& trial)
{
    if (!trial.ending) return QStringLiteral("▷");
    switch (trial.ending->kind) {
    case TrialEnd::Concluded:
        return QStringLiteral("■");
    case TrialEnd::Discomfort:
        return QStringLiteral("▲");
    case TrialEnd::Stopped:
        return QStringLiteral("□");
    }
    return {};
}

QString standingWords(const Trial& trial, const TrialStanding& standing, const std::vector<QString>& names)
{
    QStringList parts;
    for (std::size_t arm = 0; arm < standing.arms.size(); ++arm)
        parts += armStandingWords(standing.arms[arm], armTitle(names, arm));
    parts += TrialText::tr("%1 of %n block(s) whole.", nullptr, trial.blocks).arg(standing.wholeBlocks);
    if (standing.next)
        parts += TrialText::tr("Next: %1 on %2%3.")
                     .arg(armTitle(names, standing.next->arm), format::shortDay(standing.next->date),
                          standing.next->block == 0 ? TrialText::tr(", to get used to it") : QString());
    else if (!trial.ending)
        parts += TrialText::tr("All sessions are past: conclude it.");
    return parts.join(u' ');
}

QString missingWords(const TrialStanding& standing)
{
    if (standing.missing.empty()) return {};
    std::map<QDate, QStringList> byDay;
    for (const MissingRating& missing : standing.missing) byDay[missing.date] += outcomeTitle(missing.key).toLower();
    QStringList days;
    for (const auto& [date, what] : byDay)
        days += QStringLiteral("%1: %2").arg(format::dayMonth(date), what.join(QStringLiteral(", ")));
    return TrialText::tr("%n rating(s) can still be asked for. %1.", nullptr, static_cast<int>(standing.missing.size()))
        .arg(days.join(QStringLiteral("; ")));
}

QString painCaution()
{
    return TrialText::tr(
        "This is what was rated, and no diagnosis. Stop what hurts; if it lasts, swells, or spreads, "
        "see a licensed professional.");
}

QString vetoWords(const VetoedArm& veto, const Trial& trial, const std::vector<QString>& names)
{
    const QString title = armTitle(names, veto.arm);
    const QString where = veto.joint ? format::jointWord(*veto.joint) : TrialText::tr("a joint");
    if (veto.sessionsRunning)
        return TrialText::tr(
                   "%1 is out for discomfort since %2: %3 was rated %4 of 10 in %n session(s) running, and "
                   "the trial’s limit is %5.",
                   nullptr, trial.limit.sessionsRunning)
            .arg(title, format::date(veto.since), where)
            .arg(veto.rating)
            .arg(trial.limit.rating);
    return TrialText::tr(
               "%1 is out for discomfort since %2: it is %3 likely to hurt more than the other by over a point "
               "of 10 (%4, up to %5).")
        .arg(title, format::date(veto.since), format::percent(veto.chanceWorse), where)
        .arg(veto.rating);
}

QString trialWordShape(TrialWord word)
{
    switch (word) {
    case TrialWord::Prefer:
        return QStringLiteral("◆");
    case TrialWord::NoClearDifference:
        return QStringLiteral("═");
    case TrialWord::NeedsMore:
        return QStringLiteral("◇");
    case TrialWord::Discomfort:
        return QStringLiteral("▲");
    case TrialWord::NothingYet:
        return QStringLiteral("○");
    }
    return {};
}

QString trialVerdictLine(const TrialVerdict& verdict, const std::vector<QString>& names)
{
    QString words = trialWordShape(verdict.word) + u' ' + trialWordText(verdict.word);
    if (verdict.arm) words += u' ' + armTitle(names, *verdict.arm);
    QStringList numbers;
    const std::size_t best = verdict.arm.value_or(verdict.look.best);
    const bool isJudged = verdict.word != TrialWord::NothingYet && verdict.word != TrialWord::Discomfort;
    if (const auto chance = chanceOf(verdict, best); chance && isJudged)
        numbers += verdict.arm ? TrialText::tr("%1 likely the best").arg(chanceText(*chance))
                               : TrialText::tr("%1 is %2 likely the best").arg(armLetter(best), chanceText(*chance));
    if (verdict.moreSessions) numbers += TrialText::tr("about %n more session(s)", nullptr, *verdict.moreSessions);
    if (numbers.empty()) numbers += TrialText::tr("%n whole block(s)", nullptr, verdict.wholeBlocks);
    return words + QStringLiteral(" · ") + numbers.join(QStringLiteral(", "));
}

}  // namespace steelyard::format
