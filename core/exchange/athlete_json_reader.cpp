#include "core/exchange/athlete_json.h"

#include "core/exchange/block_json.h"
#include "core/exchange/json_names.h"
#include "core/exchange/trial_json.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/decision_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct AthleteJsonText {
    Q_DECLARE_TR_FUNCTIONS(AthleteJsonText)
};

using LineIds = std::map<QUuid, Id<LiftLine>>;

QString athletePlace(const QJsonObject& json)
{
    return AthleteJsonText::tr("book.json, athlete “%1”").arg(json[QStringLiteral("name")].toString());
}

// The lists of an athlete, which each have a reader of their own.
constexpr std::array kAthleteLists{"body_mass",    "measurements",  "standards",  "lines",
                                   "blocks",       "trials",        "decisions",  "empty_sessions",
                                   "lone_ratings", "replaced_sets", "repetitions"};

// An export of before consent was asked for may hold such entries all the same: they came about, and are to be confirmed.
Result<HealthConsents> consentsFromJson(JsonPlace& athlete, const QString& where)
{
    const QString list = QStringLiteral("health_consents");
    if (!athlete.has(list)) return HealthConsents{HealthConsent::toConfirm()};
    HealthConsents consents;
    for (const auto& item : athlete.array(list)) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", consent"));
        HealthConsent consent;
        consent.scope = HealthScope::parse(place.text(QStringLiteral("scope")));
        consent.givenOn = readOptionalDate(place, QStringLiteral("given_on"));
        consent.wording = place.optionalInteger(QStringLiteral("wording")).value_or(0);
        consent.withdrawnOn = readOptionalDate(place, QStringLiteral("withdrawn_on"));
        consent.note = place.optionalText(QStringLiteral("note"));
        STEELYARD_CHECK(place.finish());
        consents.push_back(std::move(consent));
    }
    return consents;
}

Result<Athlete> profileFromJson(JsonPlace& place, const JsonNames& names, const QString& where)
{
    Athlete a;
    a.name = place.text(QStringLiteral("name"));
    a.born = readOptionalDate(place, QStringLiteral("born"));
    a.sex = place.optionalChoice<Sex>(QStringLiteral("sex"));
    a.height = readOptionalLength(place, QStringLiteral("height_mm"));
    a.shoulderBreadth = readOptionalLength(place, QStringLiteral("shoulder_breadth_mm"));
    a.upperArm = readOptionalLength(place, QStringLiteral("upper_arm_mm"));
    a.forearm = readOptionalLength(place, QStringLiteral("forearm_mm"));
    a.experience = place.optionalChoice<Experience>(QStringLiteral("experience"));
    a.unit = place.choice(QStringLiteral("unit"), MassUnit::kg);
    if (place.has(QStringLiteral("gym"))) a.gym = readName(place, QStringLiteral("gym"), names.gyms);
    a.group = place.optionalText(QStringLiteral("group"));
    a.daysPerWeek = place.optionalInteger(QStringLiteral("days_per_week"));
    a.minutesPerDay = place.optionalInteger(QStringLiteral("minutes_per_day"));
    a.jointHistory = place.optionalText(QStringLiteral("joint_history"));
    a.note = place.optionalText(QStringLiteral("note"));
    a.archived = place.flag(QStringLiteral("archived"));
    for (const auto& tag : place.array(QStringLiteral("tags"))) {
        if (!tag.isString()) place.fault(QStringLiteral("tags"), AthleteJsonText::tr("a tag is a text"));
        a.tags.push_back(tag.toString());
    }
    STEELYARD_TRY(a.aims, aimsFromJson(place.array(QStringLiteral("aims")), names, where));
    STEELYARD_TRY(a.consents, consentsFromJson(place, where));
    return a;
}

Result<LineIds> linesFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                              const JsonNames& names, const QString& where)
{
    LineIds lines;
    std::set<Id<LiftLine>> seen;
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", lift line"));
        const QUuid uuid = readNewUuid(place, lines);
        const LiftNames lift = liftFromJson(place, names);
        STEELYARD_CHECK(place.finish());
        if (!lift.whole()) continue;  // finish() has said so
        STEELYARD_TRY(const auto id,
                      LogbookRepository(transaction.database())
                          .line(transaction, {athlete, *lift.variant, *lift.grip, *lift.standard}, uuid));
        if (!seen.insert(id).second)
            return fail(ErrorCode::Invalid,
                        AthleteJsonText::tr("%1: the lift line %2 stands twice.").arg(where, uuidText(uuid)));
        lines.emplace(uuid, id);
    }
    return lines;
}

Result<void> blocksFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                            const JsonNames& names, const QString& where)
{
    for (const auto& item : list) {
        STEELYARD_TRY(const auto block, blockFromJson(item.toObject(), athlete, names, where));
        STEELYARD_CHECK(BlockRepository(transaction.database()).insert(transaction, block.value, block.uuid));
    }
    return {};
}

Result<void> trialsFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                            const JsonNames& names, const QString& where)
{
    for (const auto& item : list) {
        STEELYARD_TRY(const auto trial, trialFromJson(item.toObject(), athlete, names, where));
        STEELYARD_CHECK(TrialRepository(transaction.database()).insert(transaction, trial.value, trial.uuid));
    }
    return {};
}

Result<void> decisionsFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                               const LineIds& lines, const QString& where)
{
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", decision"));
        const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
        Decision d{.athlete = athlete};
        if (place.has(QStringLiteral("line"))) d.line = readName(place, QStringLiteral("line"), lines);
        d.rule = place.text(QStringLiteral("rule"));
        d.kind = place.choice(QStringLiteral("kind"), DecisionKind::Act);
        d.madeOn = readDate(place, QStringLiteral("made_on"));
        d.until = readOptionalDate(place, QStringLiteral("until"));
        d.action = place.optionalText(QStringLiteral("action"));
        d.reason = place.optionalText(QStringLiteral("reason"));
        if (place.has(QStringLiteral("severity"))) d.severity = place.choice(QStringLiteral("severity"), Severity::Low);
        if (place.has(QStringLiteral("measure"))) d.measure = place.real(QStringLiteral("measure"));
        d.said = place.optionalText(QStringLiteral("said"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(DecisionRepository(transaction.database()).insert(transaction, d, uuid));
    }
    return {};
}

Result<void> bodyMassFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                              const QString& where)
{
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", body mass"));
        const BodyMassEntry entry{readDate(place, QStringLiteral("date")), place.load(QStringLiteral("mass"))};
        STEELYARD_CHECK(place.finish());
        STEELYARD_CHECK(AthleteRepository(transaction.database()).putBodyMass(transaction, athlete, entry));
    }
    return {};
}

Result<void> measurementsFromJson(Transaction& transaction, const QJsonArray& list, Id<Athlete> athlete,
                                  const QString& where)
{
    for (const auto& item : list) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", measurement"));
        Measurement one;
        one.date = readDate(place, QStringLiteral("date"));
        one.place = place.choice(QStringLiteral("place"), BodyPlace::Waist);
        const auto value = place.optionalDecimal(QStringLiteral("value"));
        one.unit = place.choice(QStringLiteral("unit"), TapeUnit::cm);
        STEELYARD_CHECK(place.finish());
        one.value = value.value_or(Decimal());  // refused below: nothing is that short
        STEELYARD_CHECK(refuseProblems(validate(one, one.date), place.place()));
        STEELYARD_CHECK(AthleteRepository(transaction.database()).putMeasurement(transaction, athlete, one));
    }
    return {};
}

// Sessions that have no sets, and ratings of exercises that have none.
Result<void> bareSessionsFromJson(Transaction& transaction, JsonPlace& athletePlaceOf, Id<Athlete> athlete,
                                  const LineIds& lines, const QString& where)
{
    const LogbookRepository logbook(transaction.database());
    for (const auto& item : athletePlaceOf.array(QStringLiteral("empty_sessions"))) {
        const QDate date = QDate::fromString(item.toString(), QStringLiteral("yyyy-MM-dd"));
        if (!date.isValid()) {
            athletePlaceOf.fault(QStringLiteral("empty_sessions"), AthleteJsonText::tr("a list of dates is needed"));
            return athletePlaceOf.finish();
        }
        STEELYARD_CHECK(logbook.session(transaction, athlete, date));
    }
    for (const auto& item : athletePlaceOf.array(QStringLiteral("lone_ratings"))) {
        JsonPlace place(item.toObject(), where + AthleteJsonText::tr(", rating"));
        const QDate date = readDate(place, QStringLiteral("date"));
        const auto line = readName(place, QStringLiteral("line"), lines);
        const QJsonObject json = place.object(QStringLiteral("rating"));
        STEELYARD_CHECK(place.finish());
        STEELYARD_TRY(const ExerciseRating rating, ratingFromJson(json, where));
        STEELYARD_TRY(const auto session, logbook.session(transaction, athlete, date));
        if (line) STEELYARD_CHECK(logbook.putRating(transaction, athlete, session, *line, rating));
    }
    return {};
}

}  // namespace

Result<ExerciseRating> ratingFromJson(const QJsonObject& json, const QString& where)
{
    JsonPlace place(json, where + AthleteJsonText::tr(", rating"));
    ExerciseRating rating;
    rating.tension = place.optionalInteger(QStringLiteral("tension"));
    rating.burn = place.optionalInteger(QStringLiteral("burn"));
    rating.pump = place.optionalInteger(QStringLiteral("pump"));
    rating.gaveOut = place.optionalText(QStringLiteral("gave_out"));
    for (const auto& [joint, jointKey] : EnumText<Joint>::table)
        rating.discomfort[static_cast<std::size_t>(joint)] =
            place.optionalInteger(QStringLiteral("discomfort_") + toText(joint));
    rating.nextSoreness = place.optionalInteger(QStringLiteral("next_soreness"));
    rating.nextWeakness = place.optionalInteger(QStringLiteral("next_weakness"));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(rating), where));
    return rating;
}

Result<Id<Athlete>> athleteFromJson(Transaction& transaction, const QJsonObject& json, QDate today, JsonNames& names)
{
    const QString where = athletePlace(json);
    JsonPlace place(json, where);
    const QUuid uuid = readUuid(place, QStringLiteral("uuid"));
    STEELYARD_TRY(const Athlete athlete, profileFromJson(place, names, where));
    const QJsonArray standards = place.array(QStringLiteral("standards"));
    const QJsonArray bodyMass = place.array(QStringLiteral("body_mass"));
    const QJsonArray measured = place.array(QStringLiteral("measurements"));
    for (const char* list : kAthleteLists) static_cast<void>(place.array(QString::fromLatin1(list)));
    STEELYARD_CHECK(place.finish());
    STEELYARD_CHECK(refuseProblems(validate(athlete, today), where));
    STEELYARD_TRY(const auto id, AthleteRepository(transaction.database()).insert(transaction, athlete, uuid));
    for (const auto& item : standards)
        STEELYARD_CHECK(standardFromJson(transaction, item.toObject(), id, names, where));
    STEELYARD_CHECK(bodyMassFromJson(transaction, bodyMass, id, where));
    STEELYARD_CHECK(measurementsFromJson(transaction, measured, id, where));
    return id;
}

Result<BookJsonRest::OfAthlete> recordFromJson(Transaction& transaction, const QJsonObject& json, Id<Athlete> athlete,
                                               const JsonNames& names)
{
    const QString where = athletePlace(json);
    JsonPlace place(json, where);  // its keys were checked by athleteFromJson
    STEELYARD_TRY(LineIds lines,
                  linesFromJson(transaction, place.array(QStringLiteral("lines")), athlete, names, where));
    STEELYARD_CHECK(blocksFromJson(transaction, place.array(QStringLiteral("blocks")), athlete, names, where));
    STEELYARD_CHECK(trialsFromJson(transaction, place.array(QStringLiteral("trials")), athlete, names, where));
    STEELYARD_CHECK(decisionsFromJson(transaction, place.array(QStringLiteral("decisions")), athlete, lines, where));
    STEELYARD_CHECK(bareSessionsFromJson(transaction, place, athlete, lines, where));
    BookJsonRest::OfAthlete rest{athlete, json[QStringLiteral("name")].toString(), std::move(lines), {}, {}};
    for (const auto& item : place.array(QStringLiteral("replaced_sets"))) rest.replacedSets.push_back(item.toObject());
    for (const auto& item : place.array(QStringLiteral("repetitions"))) rest.repetitions.push_back(item.toObject());
    return rest;
}

}  // namespace steelyard
