#include "core/storage/athlete_repository.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct AthleteRepositoryText {
    Q_DECLARE_TR_FUNCTIONS(AthleteRepositoryText)
};

constexpr std::string_view kSelectAthlete =
    "SELECT id, uuid, name, born, sex, height_mm, shoulder_breadth_mm, upper_arm_mm, forearm_mm, experience, unit, "
    "gym_id, training_group, days_per_week, minutes_per_day, joint_history, note, archived FROM athlete ";

void bindAthlete(Statement& st, const Athlete& a)
{
    st.bindAll(a.name, a.born, a.sex, a.height, a.shoulderBreadth, a.upperArm, a.forearm, a.experience, a.unit, a.gym,
               a.group, a.daysPerWeek, a.minutesPerDay, a.jointHistory, a.note, a.archived);
}

Row<Athlete> readAthlete(const Statement& st)
{
    Athlete a;
    a.name = st.text(2);
    a.born = st.maybeDate(3);
    a.sex = st.maybeChoice<Sex>(4);
    a.height = st.maybeLength(5);
    a.shoulderBreadth = st.maybeLength(6);
    a.upperArm = st.maybeLength(7);
    a.forearm = st.maybeLength(8);
    a.experience = st.maybeChoice<Experience>(9);
    a.unit = st.choice(10, MassUnit::kg);
    a.gym = st.maybeId<Gym>(11);
    a.group = st.text(12);
    a.daysPerWeek = st.maybeInteger(13);
    a.minutesPerDay = st.maybeInteger(14);
    a.jointHistory = st.text(15);
    a.note = st.text(16);
    a.archived = st.flag(17);
    return {st.id<Athlete>(0), st.uuid(1), std::move(a)};
}

Result<void> readAims(Database& db, Row<Athlete>& row)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT muscle_id, weekly_sets_low, weekly_sets_high FROM athlete_aim "
                                      "WHERE athlete_id = ?1 ORDER BY muscle_id"));
    st.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        row.value.aims.push_back({st.id<Muscle>(0), st.integer(1), st.integer(2)});
    }
}

Result<void> writeAims(Database& db, Id<Athlete> id, const std::vector<MuscleAim>& aims)
{
    STEELYARD_TRY(auto clear, db.prepare("DELETE FROM athlete_aim WHERE athlete_id = ?1"));
    clear.bind(1, id);
    STEELYARD_CHECK(clear.run());
    STEELYARD_TRY(auto add, db.prepare("INSERT INTO athlete_aim (athlete_id, muscle_id, weekly_sets_low, "
                                       "weekly_sets_high) VALUES (?1, ?2, ?3, ?4)"));
    for (const MuscleAim& aim : aims) {
        add.bindAll(id, aim.muscle, aim.weeklySetsLow, aim.weeklySetsHigh);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

Result<void> readTags(Database& db, Row<Athlete>& row)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT tag FROM athlete_tag WHERE athlete_id = ?1 ORDER BY id"));
    st.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        row.value.tags.push_back(st.text(0));
    }
}

// Left alone where they are the same: a change of the profile needn't give every tag a new place.
Result<void> writeTags(Database& db, Id<Athlete> id, const std::vector<QString>& tags)
{
    Row<Athlete> stored{id, {}, {}};
    STEELYARD_CHECK(readTags(db, stored));
    if (stored.value.tags == tags) return {};
    STEELYARD_TRY(auto clear, db.prepare("DELETE FROM athlete_tag WHERE athlete_id = ?1"));
    clear.bind(1, id);
    STEELYARD_CHECK(clear.run());
    STEELYARD_TRY(auto add, db.prepare("INSERT INTO athlete_tag (athlete_id, tag) VALUES (?1, ?2)"));
    for (const QString& tag : tags) {
        add.bindAll(id, tag);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

Result<void> readConsents(Database& db, Row<Athlete>& row)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT given_on, wording, scope, withdrawn_on, note FROM health_consent "
                                      "WHERE athlete_id = ?1 ORDER BY id"));
    st.bind(1, row.id);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        row.value.consents.push_back(
            {st.maybeDate(0), st.integer(1), HealthScope::parse(st.text(2)), st.maybeDate(3), st.text(4)});
    }
}

// Left alone where they are the same, as tags are.
Result<void> writeConsents(Database& db, Id<Athlete> id, const HealthConsents& consents)
{
    Row<Athlete> stored{id, {}, {}};
    STEELYARD_CHECK(readConsents(db, stored));
    if (stored.value.consents == consents) return {};
    STEELYARD_TRY(auto clear, db.prepare("DELETE FROM health_consent WHERE athlete_id = ?1"));
    clear.bind(1, id);
    STEELYARD_CHECK(clear.run());
    STEELYARD_TRY(auto add, db.prepare("INSERT INTO health_consent (athlete_id, given_on, wording, scope, "
                                       "withdrawn_on, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6)"));
    for (const HealthConsent& consent : consents) {
        add.bindAll(id, consent.givenOn, consent.wording, consent.scope.toString(), consent.withdrawnOn, consent.note);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

Result<void> readLists(Database& db, Row<Athlete>& row)
{
    STEELYARD_CHECK(readAims(db, row));
    STEELYARD_CHECK(readConsents(db, row));
    return readTags(db, row);
}

Result<void> writeLists(Database& db, Id<Athlete> id, const Athlete& athlete)
{
    STEELYARD_CHECK(writeAims(db, id, athlete.aims));
    STEELYARD_CHECK(writeConsents(db, id, athlete.consents));
    return writeTags(db, id, athlete.tags);
}

Result<void> checkAthlete(const AthleteRepository& athletes, const Athlete& athlete, std::optional<Id<Athlete>> self)
{
    if (athlete.name.isEmpty()) return fail(ErrorCode::Invalid, AthleteRepositoryText::tr("An athlete needs a name."));
    for (const Problem& problem : validateTags(athlete.tags)) return fail(ErrorCode::Invalid, problem.text);
    if (!athlete.jointHistory.isEmpty() && !mayKeep(athlete.consents, HealthField::JointHistory))
        return fail(ErrorCode::Invalid, jointHistoryNeedsConsent());
    const auto other = athletes.findByName(athlete.name);
    if (other && (!self || other->id != *self))
        return fail(ErrorCode::Invalid,
                    AthleteRepositoryText::tr("There is already an athlete named “%1”. Give one of them another name.")
                        .arg(athlete.name));
    return {};
}

}  // namespace

Result<std::vector<Row<Athlete>>> AthleteRepository::all() const
{
    STEELYARD_TRY(auto st, m_database.prepare(std::string(kSelectAthlete) + "ORDER BY name"));
    std::vector<Row<Athlete>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        rows.push_back(readAthlete(st));
    }
    for (Row<Athlete>& row : rows) STEELYARD_CHECK(readLists(m_database, row));
    return rows;
}

Result<Row<Athlete>> AthleteRepository::find(Id<Athlete> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare(std::string(kSelectAthlete) + "WHERE id = ?1"));
    st.bind(1, id);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, AthleteRepositoryText::tr("This athlete is no longer in the book."));
    Row<Athlete> row = readAthlete(st);
    STEELYARD_CHECK(readLists(m_database, row));
    return row;
}

Result<Row<Athlete>> AthleteRepository::findByName(const QString& name) const
{
    STEELYARD_TRY(auto st, m_database.prepare(std::string(kSelectAthlete) + "WHERE name = ?1"));
    st.bind(1, name);
    STEELYARD_TRY(const bool found, st.step());
    if (!found)
        return fail(
            ErrorCode::NotFound,
            AthleteRepositoryText::tr("There is no athlete named “%1” in this book. Check the spelling.").arg(name));
    Row<Athlete> row = readAthlete(st);
    STEELYARD_CHECK(readLists(m_database, row));
    return row;
}

Result<Id<Athlete>> AthleteRepository::insert(Transaction& transaction, const Athlete& athlete, QUuid uuid) const
{
    STEELYARD_CHECK(checkAthlete(*this, athlete, std::nullopt));
    STEELYARD_TRY(auto st,
                  m_database.prepare(
                      "INSERT INTO athlete (name, born, sex, height_mm, shoulder_breadth_mm, "
                      "upper_arm_mm, forearm_mm, experience, unit, gym_id, training_group, "
                      "days_per_week, minutes_per_day, joint_history, note, archived, uuid) VALUES "
                      "(?1, ?2, ?3, ?4, ?5, ?6, ?7, COALESCE(?8, ''), ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17)"));
    bindAthlete(st, athlete);
    st.bind(17, uuid);
    STEELYARD_TRY(const auto rowId, st.insert());
    const Id<Athlete> id(rowId);
    STEELYARD_CHECK(writeLists(m_database, id, athlete));
    transaction.changes().roster = true;
    return id;
}

Result<void> AthleteRepository::replace(Transaction& transaction, Id<Athlete> id, const Athlete& athlete) const
{
    STEELYARD_CHECK(find(id));
    STEELYARD_CHECK(checkAthlete(*this, athlete, id));
    STEELYARD_TRY(auto st,
                  m_database.prepare(
                      "UPDATE athlete SET name = ?1, born = ?2, sex = ?3, height_mm = ?4, "
                      "shoulder_breadth_mm = ?5, upper_arm_mm = ?6, forearm_mm = ?7, experience = COALESCE(?8, ''), "
                      "unit = ?9, gym_id = ?10, training_group = ?11, days_per_week = ?12, "
                      "minutes_per_day = ?13, joint_history = ?14, note = ?15, archived = ?16 "
                      "WHERE id = ?17"));
    bindAthlete(st, athlete);
    st.bind(17, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_CHECK(writeLists(m_database, id, athlete));
    transaction.changes().roster = true;
    transaction.changes().athletes.insert(id);
    return {};
}

Result<std::vector<BodyMassEntry>> AthleteRepository::bodyMass(Id<Athlete> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT date, mass FROM body_mass WHERE athlete_id = ?1 ORDER BY date"));
    st.bind(1, id);
    std::vector<BodyMassEntry> entries;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return entries;
        entries.push_back({st.date(0), st.maybeLoad(1).value_or(Load{})});
    }
}

Result<void> AthleteRepository::putBodyMass(Transaction& transaction, Id<Athlete> id, const BodyMassEntry& entry) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO body_mass (athlete_id, date, mass) VALUES (?1, ?2, ?3) "
                                              "ON CONFLICT (athlete_id, date) DO UPDATE SET mass = excluded.mass"));
    st.bindAll(id, entry.date, entry.mass);
    STEELYARD_CHECK(st.run());
    transaction.changes().athletes.insert(id);
    return {};
}

Result<void> AthleteRepository::removeBodyMass(Transaction& transaction, Id<Athlete> id, QDate date) const
{
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM body_mass WHERE athlete_id = ?1 AND date = ?2 "
                                              "RETURNING id"));
    st.bindAll(id, date);
    STEELYARD_TRY(const bool found, st.step());
    if (!found)
        return fail(ErrorCode::NotFound, AthleteRepositoryText::tr("There is no body mass of this day any more."));
    transaction.changes().athletes.insert(id);
    return {};
}

Result<std::vector<Measurement>> AthleteRepository::measurements(Id<Athlete> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT date, place, value, unit FROM measurement WHERE athlete_id = ?1 "
                                              "ORDER BY date, place"));
    st.bind(1, id);
    std::vector<Measurement> list;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return list;
        const auto place = st.maybeChoice<BodyPlace>(1);
        if (!place) continue;  // of a newer program: verify() reports it
        list.push_back({st.date(0), *place, st.maybeDecimal(2).value_or(Decimal()), st.choice(3, TapeUnit::cm)});
    }
}

Result<void> AthleteRepository::putMeasurement(Transaction& transaction, Id<Athlete> id,
                                               const Measurement& measured) const
{
    STEELYARD_TRY(auto st, m_database.prepare(
                               "INSERT INTO measurement (athlete_id, date, place, value, unit) VALUES (?1, ?2, ?3, ?4, "
                               "?5) ON CONFLICT (athlete_id, date, place) DO UPDATE SET value = excluded.value, "
                               "unit = excluded.unit"));
    st.bindAll(id, measured.date, measured.place, measured.value, measured.unit);
    STEELYARD_CHECK(st.run());
    transaction.changes().athletes.insert(id);
    return {};
}

Result<void> AthleteRepository::removeMeasurement(Transaction& transaction, Id<Athlete> id, QDate date,
                                                  BodyPlace place) const
{
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM measurement WHERE athlete_id = ?1 AND date = ?2 "
                                              "AND place = ?3 RETURNING id"));
    st.bindAll(id, date, place);
    STEELYARD_TRY(const bool found, st.step());
    if (!found)
        return fail(ErrorCode::NotFound,
                    AthleteRepositoryText::tr("There is no measurement of this place and day any more."));
    transaction.changes().athletes.insert(id);
    return {};
}

}  // namespace steelyard
