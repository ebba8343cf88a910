#include "app/console/commands/trial_report.h"

#include "core/domain/joint_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonArray>

namespace steelyard {
namespace {

struct TrialReportText {
    Q_DECLARE_TR_FUNCTIONS(TrialReportText)
};

QString isoDay(QDate day)
{
    return day.toString(Qt::ISODate);
}

QJsonArray textArray(const std::vector<QString>& texts)
{
    return QJsonArray::fromStringList(QStringList(texts.begin(), texts.end()));
}

template <class T>
QJsonValue orNull(const std::optional<T>& value)
{
    return value ? QJsonValue(*value) : QJsonValue();
}

QJsonValue armOrNull(std::optional<std::size_t> arm)
{
    return arm ? QJsonValue(armLetter(*arm)) : QJsonValue();
}

QJsonArray outArray(const std::vector<VetoedArm>& out)
{
    QJsonArray list;
    for (const VetoedArm& one : out)
        list.append(QJsonObject{{QStringLiteral("arm"), armLetter(one.arm)},
                                {QStringLiteral("since"), isoDay(one.since)},
                                {QStringLiteral("rating"), one.rating},
                                {QStringLiteral("joint"), one.joint ? QJsonValue(toText(*one.joint)) : QJsonValue()},
                                {QStringLiteral("sessions_running"), one.sessionsRunning}});
    return list;
}

QJsonObject outcomeObject(const OutcomeEffects& effects)
{
    QJsonArray arms;
    for (std::size_t arm = 0; arm < effects.arms.size(); ++arm) {
        const ArmLevel& level = effects.arms[arm];
        arms.append(QJsonObject{{QStringLiteral("arm"), armLetter(arm)},
                                {QStringLiteral("sessions"), level.sessions},
                                {QStringLiteral("mean"), orNull(level.mean)},
                                {QStringLiteral("level"), orNull(level.level)},
                                {QStringLiteral("low90"), orNull(level.low90)},
                                {QStringLiteral("high90"), orNull(level.high90)}});
    }
    QJsonArray differences;
    for (const EstimatedDifference& one : effects.differences)
        differences.append(QJsonObject{{QStringLiteral("arm"), armLetter(one.arm)},
                                       {QStringLiteral("over"), armLetter(one.over)},
                                       {QStringLiteral("mean"), one.mean},
                                       {QStringLiteral("low90"), one.low90},
                                       {QStringLiteral("high90"), one.high90},
                                       {QStringLiteral("chance_better"), one.chanceBetter}});
    QJsonArray best;
    for (const double chance : effects.chanceBest) best.append(chance);
    return {{QStringLiteral("key"), effects.key},
            {QStringLiteral("arms"), arms},
            {QStringLiteral("differences"), differences},
            {QStringLiteral("chance_best"), best}};
}

QJsonObject armStandingObject(std::size_t arm, const ArmStanding& standing, const QString& name)
{
    return {{QStringLiteral("arm"), armLetter(arm)},      {QStringLiteral("name"), name},
            {QStringLiteral("done"), standing.done},      {QStringLiteral("missed"), standing.missed},
            {QStringLiteral("to_come"), standing.toCome}, {QStringLiteral("got_used"), standing.gotUsed}};
}

QJsonValue endingOrNull(const Trial& trial)
{
    if (!trial.ending) return {};
    return QJsonObject{{QStringLiteral("date"), isoDay(trial.ending->date)},
                       {QStringLiteral("kind"), toText(trial.ending->kind)},
                       {QStringLiteral("reason"), trial.ending->reason},
                       {QStringLiteral("choice"), armOrNull(trial.ending->choice)}};
}

QString outSentence(const VetoedArm& out, const QString& name)
{
    const QString joint = out.joint ? jointName(*out.joint) : TrialReportText::tr("a joint");
    return TrialReportText::tr("%1 (%2) is out: discomfort in %3 was rated %4 of 10, %5.")
        .arg(armLetter(out.arm), name, joint, QString::number(out.rating), isoDay(out.since));
}

QStringList bulleted(const QString& title, const std::vector<QString>& sentences)
{
    QStringList lines;
    if (!sentences.empty()) lines << title;
    for (const QString& sentence : sentences) lines << QStringLiteral("  ") + sentence;
    return lines;
}

QString endingText(const Trial& trial, const std::vector<QString>& names)
{
    if (!trial.ending) return {};
    QString text = TrialReportText::tr("Ended on %1 (%2).").arg(isoDay(trial.ending->date), toText(trial.ending->kind));
    if (!trial.ending->reason.isEmpty()) text += u' ' + trial.ending->reason;
    if (const auto choice = trial.ending->choice)
        text += u' ' + TrialReportText::tr("Chosen: %1 (%2).").arg(armLetter(*choice), names[*choice]);
    return text;
}

}  // namespace

QJsonObject trialStatusJson(const Trial& trial, const TrialAnalysis& analysis)
{
    const TrialStanding& standing = analysis.standing;
    QJsonArray arms;
    for (std::size_t arm = 0; arm < standing.arms.size(); ++arm)
        arms.append(armStandingObject(arm, standing.arms[arm], analysis.armNames[arm]));
    QJsonArray missing;
    for (const MissingRating& one : standing.missing)
        missing.append(QJsonObject{{QStringLiteral("date"), isoDay(one.date)}, {QStringLiteral("outcome"), one.key}});
    QJsonValue next;
    if (standing.next)
        next = QJsonObject{{QStringLiteral("date"), isoDay(standing.next->date)},
                           {QStringLiteral("arm"), armLetter(standing.next->arm)},
                           {QStringLiteral("counts"), standing.next->block > 0}};
    return {{QStringLiteral("question"), trial.question},
            {QStringLiteral("designed_on"), isoDay(trial.designedOn)},
            {QStringLiteral("factor"), toText(trial.factor)},
            {QStringLiteral("finished"), standing.finished},
            {QStringLiteral("arms"), arms},
            {QStringLiteral("next"), next},
            {QStringLiteral("whole_blocks"), standing.wholeBlocks},
            {QStringLiteral("blocks"), trial.blocks},
            {QStringLiteral("sessions_to_come"), standing.sessionsToCome},
            {QStringLiteral("missing_ratings"), missing},
            {QStringLiteral("deviations"), textArray(deviationSentences(analysis.record))},
            {QStringLiteral("out"), outArray(standing.out)},
            {QStringLiteral("looks"), static_cast<int>(trial.looks.size())},
            {QStringLiteral("ending"), endingOrNull(trial)}};
}

QString trialStatusText(const Trial& trial, const TrialAnalysis& analysis)
{
    const TrialStanding& standing = analysis.standing;
    QStringList lines{trial.question};
    for (std::size_t arm = 0; arm < standing.arms.size(); ++arm)
        lines << TrialReportText::tr("  %1 (%2): %3 done, %4 missed, %5 to come")
                     .arg(armLetter(arm), analysis.armNames[arm], QString::number(standing.arms[arm].done),
                          QString::number(standing.arms[arm].missed), QString::number(standing.arms[arm].toCome));
    if (standing.next)
        lines << TrialReportText::tr("  Next: %1, arm %2%3")
                     .arg(isoDay(standing.next->date), armLetter(standing.next->arm),
                          standing.next->block > 0 ? QString() : TrialReportText::tr(", which doesn't count"));
    for (const MissingRating& one : standing.missing)
        lines << TrialReportText::tr("  Not rated on %1: %2").arg(isoDay(one.date), outcomeTitle(one.key));
    for (const QString& sentence : deviationSentences(analysis.record)) lines << QStringLiteral("  ") + sentence;
    for (const VetoedArm& out : standing.out)
        lines << QStringLiteral("  ") + outSentence(out, analysis.armNames[out.arm]);
    if (trial.ending) lines << QStringLiteral("  ") + endingText(trial, analysis.armNames);
    return lines.join(u'\n');
}

QJsonObject trialVerdictJson(const Trial& trial, const TrialAnalysis& analysis)
{
    const TrialVerdict& verdict = analysis.verdict;
    QJsonArray outcomes;
    for (const OutcomeEffects& effects : verdict.done.outcomes) outcomes.append(outcomeObject(effects));
    return {{QStringLiteral("question"), trial.question},
            {QStringLiteral("verdict"), toText(verdict.word)},
            {QStringLiteral("reason"), verdict.reason},
            {QStringLiteral("arm"), armOrNull(verdict.arm)},
            {QStringLiteral("arm_names"), textArray(analysis.armNames)},
            {QStringLiteral("for_coach"), verdict.forCoach},
            {QStringLiteral("for_lifter"), verdict.forLifter},
            {QStringLiteral("rests_on"), textArray(verdict.restsOn)},
            {QStringLiteral("weights"), verdict.weights},
            {QStringLiteral("looks"), verdict.looks},
            {QStringLiteral("deviations"), textArray(verdict.deviations)},
            {QStringLiteral("more_sessions"), orNull(verdict.moreSessions)},
            {QStringLiteral("whole_blocks"), verdict.wholeBlocks},
            {QStringLiteral("threshold"), verdict.threshold},
            {QStringLiteral("out"), outArray(verdict.out)},
            {QStringLiteral("answer"),
             verdict.done.answer ? QJsonValue(outcomeObject(*verdict.done.answer)) : QJsonValue()},
            {QStringLiteral("outcomes"), outcomes},
            {QStringLiteral("ending"), endingOrNull(trial)}};
}

QString trialVerdictText(const Trial& trial, const TrialAnalysis& analysis)
{
    const TrialVerdict& verdict = analysis.verdict;
    QStringList lines{QStringLiteral("%1 %2").arg(trial.question, trialWordText(verdict.word)), verdict.forCoach};
    for (const VetoedArm& out : verdict.out) lines << outSentence(out, analysis.armNames[out.arm]);
    lines << bulleted(TrialReportText::tr("It rests on"), verdict.restsOn);
    lines << bulleted(TrialReportText::tr("Done otherwise than drawn"), verdict.deviations);
    lines << verdict.weights << verdict.looks << TrialReportText::tr("For the lifter: %1").arg(verdict.forLifter)
          << endingText(trial, analysis.armNames);
    lines.removeAll(QString());
    return lines.join(u'\n');
}

}  // namespace steelyard
