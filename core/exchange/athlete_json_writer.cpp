#include "core/exchange/athlete_json.h"

#include "core/exchange/block_json.h"
#include "core/exchange/json_writing.h"
#include "core/exchange/repetition_json.h"
#include "core/exchange/trial_json.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/block_repository.h"
#include "core/storage/decision_repository.h"
#include "core/storage/gym_repository.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/trial_repository.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

using LineUuids = std::map<Id<LiftLine>, QUuid>;

void putLength(QJsonObject& json, const QString& name, std::optional<Length> length)
{
    if (length) json[name] = static_cast<qint64>(toMillimetres(*length));
}

QJsonArray consentsJson(const HealthConsents& consents)
{
    QJsonArray list;
    for (const HealthConsent& consent : consents) {
        QJsonObject json{{QStringLiteral("scope"), consent.scope.toString()}};
        if (consent.givenOn) {
            json[QStringLiteral("given_on")] = dateText(*consent.givenOn);
            json[QStringLiteral("wording")] = consent.wording;
        }
        if (consent.withdrawnOn) json[QStringLiteral("withdrawn_on")] = dateText(*consent.withdrawnOn);
        putText(json, QStringLiteral("note"), consent.note);
        list.append(json);
    }
    return list;
}

Result<QJsonObject> profileJson(Database& db, const Row<Athlete>& row, const Library& library)
{
    const Athlete& a = row.value;
    QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                     {QStringLiteral("name"), a.name},
                     {QStringLiteral("unit"), toText(a.unit)}};
    if (a.born) json[QStringLiteral("born")] = dateText(*a.born);
    if (a.experience) json[QStringLiteral("experience")] = toText(*a.experience);
    if (a.sex) json[QStringLiteral("sex")] = toText(*a.sex);
    putLength(json, QStringLiteral("height_mm"), a.height);
    putLength(json, QStringLiteral("shoulder_breadth_mm"), a.shoulderBreadth);
    putLength(json, QStringLiteral("upper_arm_mm"), a.upperArm);
    putLength(json, QStringLiteral("forearm_mm"), a.forearm);
    if (a.gym) {
        STEELYARD_TRY(const auto gym, GymRepository(db).find(*a.gym));
        json[QStringLiteral("gym")] = uuidText(gym.uuid);
    }
    putText(json, QStringLiteral("group"), a.group);
    putInteger(json, QStringLiteral("days_per_week"), a.daysPerWeek);
    putInteger(json, QStringLiteral("minutes_per_day"), a.minutesPerDay);
    putText(json, QStringLiteral("joint_history"), a.jointHistory);
    putText(json, QStringLiteral("note"), a.note);
    if (a.archived) json[QStringLiteral("archived")] = true;
    if (!a.tags.empty())
        json[QStringLiteral("tags")] = QJsonArray::fromStringList(QStringList(a.tags.begin(), a.tags.end()));
    json[QStringLiteral("aims")] = aimsToJson(a.aims, library);
    json[QStringLiteral("health_consents")] = consentsJson(a.consents);
    return json;
}

Result<QJsonArray> bodyMassJson(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(const auto entries, AthleteRepository(db).bodyMass(athlete));
    QJsonArray list;
    for (const BodyMassEntry& entry : entries)
        list.append(QJsonObject{{QStringLiteral("date"), dateText(entry.date)},
                                {QStringLiteral("mass"), entry.mass.toString()}});
    return list;
}

Result<QJsonArray> measurementsJson(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(const auto measured, AthleteRepository(db).measurements(athlete));
    QJsonArray list;
    for (const Measurement& one : measured)
        list.append(QJsonObject{{QStringLiteral("date"), dateText(one.date)},
                                {QStringLiteral("place"), toText(one.place)},
                                {QStringLiteral("value"), one.value.toString()},
                                {QStringLiteral("unit"), toText(one.unit)}});
    return list;
}

Result<QJsonArray> linesJson(Database& db, Id<Athlete> athlete, const Library& library, LineUuids& uuids)
{
    STEELYARD_TRY(const auto lines, LogbookRepository(db).lines(athlete));
    QJsonArray list;
    for (const Row<LiftLine>& row : lines) {
        uuids.emplace(row.id, row.uuid);
        QJsonObject json = liftToJson(row.value.variant, row.value.grip, row.value.standard, library);
        json[QStringLiteral("uuid")] = uuidText(row.uuid);
        list.append(json);
    }
    return list;
}

Result<QJsonArray> blocksJson(Database& db, Id<Athlete> athlete, const Library& library)
{
    STEELYARD_TRY(const auto blocks, BlockRepository(db).of(athlete));
    QJsonArray list;
    for (const Row<Block>& row : blocks) list.append(toJson(row, library));
    return list;
}

Result<QJsonArray> decisionsJson(Database& db, Id<Athlete> athlete, const LineUuids& lines)
{
    STEELYARD_TRY(const auto decisions, DecisionRepository(db).of(athlete));
    QJsonArray list;
    for (const Row<Decision>& row : decisions) {
        const Decision& d = row.value;
        QJsonObject json{{QStringLiteral("uuid"), uuidText(row.uuid)},
                         {QStringLiteral("rule"), d.rule},
                         {QStringLiteral("kind"), toText(d.kind)},
                         {QStringLiteral("made_on"), dateText(d.madeOn)}};
        if (d.line)
            if (const auto line = lines.find(*d.line); line != lines.end())
                json[QStringLiteral("line")] = uuidText(line->second);
        if (d.until) json[QStringLiteral("until")] = dateText(*d.until);
        putText(json, QStringLiteral("action"), d.action);
        putText(json, QStringLiteral("reason"), d.reason);
        if (d.measure) json[QStringLiteral("measure")] = *d.measure;
        if (d.severity) json[QStringLiteral("severity")] = toText(*d.severity);
        putText(json, QStringLiteral("said"), d.said);
        list.append(json);
    }
    return list;
}

Result<QJsonArray> emptySessionsJson(Database& db, Id<Athlete> athlete)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT date FROM session s WHERE athlete_id = ?1 AND NOT EXISTS "
                                      "(SELECT 1 FROM set_entry e WHERE e.session_id = s.id) ORDER BY date"));
    st.bind(1, athlete);
    QJsonArray list;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return list;
        list.append(st.text(0));
    }
}

// Ratings whose sets were all removed: the CSV has no row for them.
Result<QJsonArray> loneRatingsJson(Database& db, Id<Athlete> athlete, const LineUuids& lines)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT s.date, r.line_id, " + std::string(kRatingColumns)
                                      + " FROM exercise_rating r JOIN session s ON s.id = r.session_id "
                                        "WHERE s.athlete_id = ?1 AND NOT EXISTS (SELECT 1 FROM set_entry e "
                                        "WHERE e.session_id = r.session_id AND e.line_id = r.line_id) "
                                        "ORDER BY s.date, r.line_id"));
    st.bind(1, athlete);
    QJsonArray list;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return list;
        const auto line = lines.find(st.id<LiftLine>(1));
        if (line == lines.end()) continue;
        list.append(QJsonObject{{QStringLiteral("date"), st.text(0)},
                                {QStringLiteral("line"), uuidText(line->second)},
                                {QStringLiteral("rating"), ratingToJson(readRating(st, 2))}});
    }
}

// What edits replaced, gathered by set: `now` is the number of the set that stands there today, absent when it is gone.
Result<QJsonArray> replacedSetsJson(Database& db, Id<Athlete> athlete, const LineUuids& lines)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT s.date, p.line_id, p.set_id, e.number, p.replaced_at, p.change, p.was "
                                      "FROM set_replaced p JOIN session s ON s.id = p.session_id "
                                      "LEFT JOIN set_entry e ON e.id = p.set_id AND e.session_id = p.session_id "
                                      "AND e.line_id = p.line_id WHERE s.athlete_id = ?1 "
                                      "ORDER BY s.date, p.line_id, p.set_id, p.id"));
    st.bind(1, athlete);
    QJsonArray list;
    QJsonObject current;
    QJsonArray values;
    std::tuple<QString, std::int64_t, std::int64_t> last;
    const auto close = [&] {
        if (values.isEmpty()) return;
        current[QStringLiteral("was")] = values;
        list.append(current);
        values = {};
    };
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        const auto line = lines.find(st.id<LiftLine>(1));
        if (line == lines.end()) continue;
        const std::tuple place{st.text(0), st.int64(1), st.int64(2)};
        if (place != last) {
            close();
            last = place;
            current = {{QStringLiteral("date"), st.text(0)}, {QStringLiteral("line"), uuidText(line->second)}};
            putInteger(current, QStringLiteral("now"), st.maybeInteger(3));
        }
        values.append(QJsonObject{{QStringLiteral("at"), st.text(4)},
                                  {QStringLiteral("change"), st.text(5)},
                                  {QStringLiteral("set"), QJsonDocument::fromJson(st.text(6).toUtf8()).object()}});
    }
    close();
    return list;
}

}  // namespace

QJsonObject ratingToJson(const ExerciseRating& rating)
{
    QJsonObject json;
    putInteger(json, QStringLiteral("tension"), rating.tension);
    putInteger(json, QStringLiteral("burn"), rating.burn);
    putInteger(json, QStringLiteral("pump"), rating.pump);
    putText(json, QStringLiteral("gave_out"), rating.gaveOut);
    for (const auto& [joint, jointKey] : EnumText<Joint>::table)
        putInteger(json, QStringLiteral("discomfort_") + toText(joint),
                   rating.discomfort[static_cast<std::size_t>(joint)]);
    putInteger(json, QStringLiteral("next_soreness"), rating.nextSoreness);
    putInteger(json, QStringLiteral("next_weakness"), rating.nextWeakness);
    return json;
}

Result<QJsonObject> athleteToJson(Database& db, const Row<Athlete>& row, const Library& library)
{
    STEELYARD_TRY(QJsonObject json, profileJson(db, row, library));
    QJsonArray standards;
    for (const auto& standard : library.standards)
        if (standard.value.athlete == row.id) standards.append(toJson(standard, library));
    json[QStringLiteral("standards")] = standards;
    LineUuids lines;
    STEELYARD_TRY(json[QStringLiteral("body_mass")], bodyMassJson(db, row.id));
    STEELYARD_TRY(json[QStringLiteral("measurements")], measurementsJson(db, row.id));
    STEELYARD_TRY(json[QStringLiteral("lines")], linesJson(db, row.id, library, lines));
    STEELYARD_TRY(json[QStringLiteral("blocks")], blocksJson(db, row.id, library));
    STEELYARD_TRY(const auto trials, TrialRepository(db).of(row.id));
    if (!trials.empty()) json[QStringLiteral("trials")] = toJson(trials, library);
    STEELYARD_TRY(json[QStringLiteral("decisions")], decisionsJson(db, row.id, lines));
    STEELYARD_TRY(json[QStringLiteral("empty_sessions")], emptySessionsJson(db, row.id));
    STEELYARD_TRY(json[QStringLiteral("lone_ratings")], loneRatingsJson(db, row.id, lines));
    STEELYARD_TRY(json[QStringLiteral("replaced_sets")], replacedSetsJson(db, row.id, lines));
    STEELYARD_TRY(json[QStringLiteral("repetitions")], repetitionsToJson(db, row.id, lines));
    return json;
}

}  // namespace steelyard
