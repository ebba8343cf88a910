#include "core/exchange/trial_json.h"

#include "core/exchange/json_names.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct TrialJsonText {
    Q_DECLARE_TR_FUNCTIONS(TrialJsonText)
};

std::size_t readArm(JsonPlace& place, const QString& name)
{
    const auto arm = armOfLetter(place.text(name));
    if (!arm) place.fault(name, TrialJsonText::tr("an arm is a letter from A to D"));
    return arm.value_or(0);
}

std::optional<std::size_t> readOptionalArm(JsonPlace& place, const QString& name)
{
    return place.has(name) ? std::optional(readArm(place, name)) : std::nullopt;
}

Result<std::vector<TrialArm>> armsFromJson(const QJsonArray& list, const JsonNames& names, const QString& where)
{
    std::vector<TrialArm> arms;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + TrialJsonText::tr(", arm"));
        const LiftNames lift = liftFromJson(place, names);
        if (!lift.whole()) return fail(place.finish().error());
        TrialArm arm{.variant = *lift.variant, .grip = *lift.grip, .standard = *lift.standard};
        arm.band = {place.integer(QStringLiteral("band_low")), place.integer(QStringLiteral("band_high"))};
        arm.loweringSeconds = place.optionalDecimal(QStringLiteral("lowering_s"));
        arm.runIn = place.optionalInteger(QStringLiteral("run_in")).value_or(0);
        STEELYARD_CHECK(place.finish());
        arms.push_back(arm);
    }
    return arms;
}

Result<std::vector<TrialOutcome>> outcomesFromJson(const QJsonArray& list, const QString& where)
{
    std::vector<TrialOutcome> outcomes;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + TrialJsonText::tr(", outcome"));
        TrialOutcome outcome{place.text(QStringLiteral("key")), place.real(QStringLiteral("weight"))};
        STEELYARD_CHECK(place.finish());
        outcomes.push_back(std::move(outcome));
    }
    return outcomes;
}

Result<std::vector<TrialDay>> trialDaysFromJson(const QJsonArray& list, const QString& where)
{
    std::vector<TrialDay> days;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + TrialJsonText::tr(", session"));
        TrialDay day{.date = readDate(place, QStringLiteral("date"))};
        day.block = place.integer(QStringLiteral("block"));
        day.arm = readArm(place, QStringLiteral("arm"));
        day.armDone = readOptionalArm(place, QStringLiteral("arm_done"));
        day.missed = place.flag(QStringLiteral("missed"));
        day.note = place.optionalText(QStringLiteral("note"));
        STEELYARD_CHECK(place.finish());
        days.push_back(std::move(day));
    }
    return days;
}

Result<std::vector<TrialLook>> looksFromJson(const QJsonArray& list, const QString& where)
{
    std::vector<TrialLook> looks;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + TrialJsonText::tr(", look"));
        const TrialLook look{readDate(place, QStringLiteral("date")), place.integer(QStringLiteral("sessions_done"))};
        STEELYARD_CHECK(place.finish());
        looks.push_back(look);
    }
    return looks;
}

Result<DiscomfortLimit> limitFromJson(const QJsonObject& json, const QString& where)
{
    JsonPlace place(json, where + TrialJsonText::tr(", limit"));
    const DiscomfortLimit limit{place.integer(QStringLiteral("rating")),
                                place.integer(QStringLiteral("sessions_running"))};
    STEELYARD_CHECK(place.finish());
    return limit;
}

Result<TrialEnding> endingFromJson(const QJsonObject& json, const QString& where)
{
    JsonPlace place(json, where + TrialJsonText::tr(", ending"));
    TrialEnding ending{.date = readDate(place, QStringLiteral("date"))};
    ending.kind = place.choice(QStringLiteral("kind"), TrialEnd::Stopped);
    ending.reason = place.optionalText(QStringLiteral("reason"));
    ending.choice = readOptionalArm(place, QStringLiteral("choice"));
    STEELYARD_CHECK(place.finish());
    return ending;
}

// What stands in a trial itself, without its lists.
Trial designFromJson(JsonPlace& place, Id<Athlete> athlete)
{
    Trial trial{.athlete = athlete};
    trial.question = place.text(QStringLiteral("question"));
    trial.designedOn = readDate(place, QStringLiteral("designed_on"));
    trial.factor = place.choice(QStringLiteral("factor"), TrialFactor::Grip);
    trial.whyMoreThanOne = place.optionalText(QStringLiteral("why_more_than_one"));
    trial.sets = place.integer(QStringLiteral("sets"));
    trial.plannedRir = place.optionalDecimal(QStringLiteral("planned_rir"));
    trial.daysBetween = place.integer(QStringLiteral("days_between"));
    trial.blocks = place.integer(QStringLiteral("blocks"));
    bool isNumber = false;
    trial.seed = place.text(QStringLiteral("seed")).toULongLong(&isNumber);
    if (!isNumber) place.fault(QStringLiteral("seed"), TrialJsonText::tr("a whole number is needed, as a text"));
    return trial;
}

}  // namespace

Result<NamedByUuid<Trial>> trialFromJson(const QJsonObject& json, Id<Athlete> athlete, const JsonNames& names,
                                         const QString& parent)
{
    const QString where = parent + TrialJsonText::tr(", trial");
    JsonPlace place(json, where);
    const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
    Trial trial = designFromJson(place, athlete);
    const QJsonArray arms = place.array(QStringLiteral("arms"));
    const QJsonArray outcomes = place.array(QStringLiteral("outcomes"));
    const QJsonArray days = place.array(QStringLiteral("days"));
    const QJsonArray looks = place.array(QStringLiteral("looks"));
    const QJsonObject limit = place.object(QStringLiteral("limit"));
    const bool ended = place.has(QStringLiteral("ending"));
    const QJsonObject ending = place.object(QStringLiteral("ending"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_TRY(trial.arms, armsFromJson(arms, names, where));
    STEELYARD_TRY(trial.outcomes, outcomesFromJson(outcomes, where));
    STEELYARD_TRY(trial.days, trialDaysFromJson(days, where));
    STEELYARD_TRY(trial.looks, looksFromJson(looks, where));
    STEELYARD_TRY(trial.limit, limitFromJson(limit, where));
    if (ended) {
        STEELYARD_TRY(trial.ending, endingFromJson(ending, where));
    }
    STEELYARD_CHECK(refuseProblems(validate(trial), where));
    return NamedByUuid<Trial>{uuid, std::move(trial)};
}

}  // namespace steelyard
