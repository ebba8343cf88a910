#include "core/exchange/trial_json.h"

#include "core/exchange/json_writing.h"

#include <QtCore/QJsonArray>

namespace steelyard {
namespace {

void putArm(QJsonObject& json, const QString& name, std::optional<std::size_t> arm)
{
    if (arm) json[name] = armLetter(*arm);
}

QJsonArray armsJson(const Trial& trial, const Library& library)
{
    QJsonArray list;
    for (const TrialArm& arm : trial.arms) {
        QJsonObject json = liftToJson(arm.variant, arm.grip, arm.standard, library);
        json[QStringLiteral("band_low")] = arm.band.low;
        json[QStringLiteral("band_high")] = arm.band.high;
        if (arm.loweringSeconds) json[QStringLiteral("lowering_s")] = arm.loweringSeconds->toString();
        if (arm.runIn > 0) json[QStringLiteral("run_in")] = arm.runIn;
        list.append(json);
    }
    return list;
}

QJsonArray trialDaysJson(const Trial& trial)
{
    QJsonArray list;
    for (const TrialDay& day : trial.days) {
        QJsonObject json{{QStringLiteral("date"), dateText(day.date)},
                         {QStringLiteral("block"), day.block},
                         {QStringLiteral("arm"), armLetter(day.arm)}};
        putArm(json, QStringLiteral("arm_done"), day.armDone);
        if (day.missed) json[QStringLiteral("missed")] = true;
        putText(json, QStringLiteral("note"), day.note);
        list.append(json);
    }
    return list;
}

QJsonObject trialJson(const Row<Trial>& row, const Library& library)
{
    const Trial& trial = row.value;
    QJsonObject json{
        {QStringLiteral("uuid"), uuidText(row.uuid)},
        {QStringLiteral("question"), trial.question},
        {QStringLiteral("designed_on"), dateText(trial.designedOn)},
        {QStringLiteral("factor"), toText(trial.factor)},
        {QStringLiteral("arms"), armsJson(trial, library)},
        {QStringLiteral("limit"), QJsonObject{{QStringLiteral("rating"), trial.limit.rating},
                                              {QStringLiteral("sessions_running"), trial.limit.sessionsRunning}}},
        {QStringLiteral("sets"), trial.sets},
        {QStringLiteral("days_between"), trial.daysBetween},
        {QStringLiteral("blocks"), trial.blocks},
        {QStringLiteral("seed"), QString::number(trial.seed)},
        {QStringLiteral("days"), trialDaysJson(trial)}};
    putText(json, QStringLiteral("why_more_than_one"), trial.whyMoreThanOne);
    if (trial.plannedRir) json[QStringLiteral("planned_rir")] = trial.plannedRir->toString();
    QJsonArray outcomes;
    for (const TrialOutcome& outcome : trial.outcomes)
        outcomes.append(QJsonObject{{QStringLiteral("key"), outcome.key}, {QStringLiteral("weight"), outcome.weight}});
    json[QStringLiteral("outcomes")] = outcomes;
    QJsonArray looks;
    for (const TrialLook& look : trial.looks)
        looks.append(QJsonObject{{QStringLiteral("date"), dateText(look.date)},
                                 {QStringLiteral("sessions_done"), look.sessionsDone}});
    if (!looks.isEmpty()) json[QStringLiteral("looks")] = looks;
    if (trial.ending) {
        QJsonObject ending{{QStringLiteral("date"), dateText(trial.ending->date)},
                           {QStringLiteral("kind"), toText(trial.ending->kind)}};
        putText(ending, QStringLiteral("reason"), trial.ending->reason);
        putArm(ending, QStringLiteral("choice"), trial.ending->choice);
        json[QStringLiteral("ending")] = ending;
    }
    return json;
}

}  // namespace

QJsonArray toJson(const std::vector<Row<Trial>>& trials, const Library& library)
{
    QJsonArray list;
    for (const Row<Trial>& row : trials) list.append(trialJson(row, library));
    return list;
}

}  // namespace steelyard
