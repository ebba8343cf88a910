#include "ui/pages/lifter/trial_deeds.h"

#include "core/edits/trial_edits.h"
#include "core/planning/trial_days.h"
#include "core/planning/usual_weekdays.h"
#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct TrialDeedText {
    Q_DECLARE_TR_FUNCTIONS(TrialDeedText)
};

TrialGround groundOf(const TrialAt& at)
{
    return {at.record.log.blocks, at.record.library, usualWeekdays(at.record.log, at.today), at.today};
}

TrialDeed changedDays(const TrialAt& at, const Result<Trial>& after)
{
    if (!after) return tl::unexpected(after.error());
    return changeTrialDays(at.shown.row, *after, blockChanges(relayTrial(groundOf(at), at.shown.trial(), *after)));
}

// Absent: nothing was typed.
Result<std::optional<std::size_t>> readArm(const Trial& trial, QStringView letter)
{
    const QStringView typed = letter.trimmed();
    if (typed.isEmpty()) return std::nullopt;
    const auto arm = armOfLetter(typed);
    if (arm && *arm < trial.arms.size()) return arm;
    return fail(
        ErrorCode::Invalid,
        TrialDeedText::tr("An arm is a letter from A to %1, or nothing.").arg(armLetter(trial.arms.size() - 1)));
}

QDate readDay(const QString& text)
{
    const QString typed = text.trimmed();
    for (const QDate day : {QDate::fromString(typed, Qt::ISODate), QDate::fromString(typed, format::datePattern()),
                            QLocale().toDate(typed, QLocale::ShortFormat)})
        if (day.isValid()) return day;
    return {};
}

}  // namespace

TrialDeed setArmDone(const TrialAt& at, std::size_t day, QStringView letter)
{
    STEELYARD_TRY(const auto arm, readArm(at.shown.trial(), letter));
    return changedDays(at, markTrialSessionDone(at.shown.trial(), day, arm));
}

TrialDeed turnMissed(const TrialAt& at, std::size_t day)
{
    return changedDays(at, markTrialSessionMissed(at.shown.trial(), day, !at.shown.trial().days.at(day).missed));
}

TrialDeed setTrialNote(const TrialAt& at, std::size_t day, const QString& note)
{
    return changedDays(at, noteTrialSession(at.shown.trial(), day, note.trimmed()));
}

TrialDeed moveTrialDay(const TrialAt& at, std::size_t day, const QString& date)
{
    const QDate to = readDay(date);
    if (!to.isValid())
        return fail(ErrorCode::Invalid,
                    TrialDeedText::tr("“%1” is no day: type it as %2.").arg(date.trimmed(), format::date(at.today)));
    const TrainingCalendar calendar{at.record.log.blocks, usualWeekdays(at.record.log, at.today)};
    return changedDays(at, moveTrialSession(at.shown.trial(), day, to, calendar));
}

TrialDeed concludeTrial(const TrialAt& at, QStringView letter)
{
    const Trial& trial = at.shown.trial();
    STEELYARD_TRY(const auto choice, readArm(trial, letter));
    const TrialEnding ending{.date = at.today, .kind = TrialEnd::Concluded, .choice = choice};
    std::vector<BlockChange> blocks;
    if (choice) blocks = blockChanges(carryChoice(groundOf(at), trial, *choice));
    return endTrial(at.shown.row, ending, std::move(blocks));
}

TrialDeed breakOffTrial(const TrialAt& at, TrialEnd kind, const QString& reason)
{
    if (reason.trimmed().isEmpty())
        return fail(ErrorCode::Invalid, TrialDeedText::tr("Say why, so that it can be understood later."));
    const Trial& trial = at.shown.trial();
    const auto isOut = [&](std::size_t arm) {
        return std::ranges::find(at.shown.analysis.standing.out, arm, &VetoedArm::arm)
               != at.shown.analysis.standing.out.end();
    };
    std::size_t rest = 0;
    while (rest < trial.arms.size() && isOut(rest)) ++rest;
    // With every arm out there is nothing to go on with: the plan stays for the coach to change.
    std::vector<BlockChange> blocks;
    if (rest < trial.arms.size()) blocks = blockChanges(carryChoice(groundOf(at), trial, rest));
    return endTrial(at.shown.row, {.date = at.today, .kind = kind, .reason = reason.trimmed()}, std::move(blocks));
}

std::unique_ptr<Edit> lookOfToday(const TrialAt& at)
{
    const Trial& trial = at.shown.trial();
    if (std::ranges::find(trial.looks, at.today, &TrialLook::date) != trial.looks.end()) return nullptr;
    int done = 0;
    for (const ArmStanding& arm : at.shown.analysis.standing.arms) done += arm.done;
    return lookAtTrial(at.shown.row, {.date = at.today, .sessionsDone = done});
}

}  // namespace steelyard
