#include "core/storage/library_repository.h"

#include "core/storage/statement.h"

namespace steelyard {
namespace {

// Calls read(statement) for every row of a statement without parameters.
template <class Read>
Result<void> forEachRow(Database& db, std::string_view sql, Read read)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return {};
        read(st);
    }
}

Row<Variant> readVariant(const Statement& st)
{
    Variant v{.exercise = st.id<Exercise>(2)};
    v.name = st.text(3);
    v.implement = st.choice(4, Implement::Other);
    v.position = st.text(5);
    v.path = st.text(6);
    v.loading = st.choice(7, Loading::BarTotal);
    v.barMass = st.maybeLoad(8);
    v.step = st.maybeLoad(9);
    v.backLoading = st.choice(10, BackLoading::None);
    v.sides = st.choice(11, Sides::Both);
    v.travel = st.choice(12, TravelKind::Straight);
    v.band = {st.integer(13), st.integer(14)};
    v.usualGrip = st.maybeId<Grip>(15);
    v.isDefault = st.flag(16);
    v.hidden = st.flag(17);
    return {st.id<Variant>(0), st.uuid(1), std::move(v)};
}

Row<RepStandard> readStandard(const Statement& st)
{
    RepStandard s{.variant = st.id<Variant>(2)};
    s.athlete = st.maybeId<Athlete>(3);
    s.name = st.text(4);
    s.start = st.text(5);
    s.end = st.text(6);
    s.path = st.text(7);
    s.body = st.text(8);
    s.lowering = st.text(9);
    s.leastTravelPercent = st.maybeInteger(10);
    s.isDefault = st.flag(11);
    return {st.id<RepStandard>(0), st.uuid(1), std::move(s)};
}

void bindVariant(Statement& st, const Variant& v)
{
    st.bindAll(v.exercise, v.name, v.implement, v.position, v.path, v.loading, v.barMass, v.step, v.backLoading,
               v.sides, v.travel, v.band.low, v.band.high, v.usualGrip, v.isDefault, v.hidden);
}

void bindStandard(Statement& st, const RepStandard& s)
{
    st.bindAll(s.variant, s.athlete, s.name, s.start, s.end, s.path, s.body, s.lowering, s.leastTravelPercent,
               s.isDefault);
}

Result<void> writeShares(Database& db, Id<Exercise> id, const std::vector<MuscleShare>& shares)
{
    STEELYARD_TRY(auto clear, db.prepare("DELETE FROM exercise_muscle WHERE exercise_id = ?1"));
    clear.bind(1, id);
    STEELYARD_CHECK(clear.run());
    STEELYARD_TRY(auto add,
                  db.prepare("INSERT INTO exercise_muscle (exercise_id, muscle_id, share) VALUES (?1, ?2, ?3)"));
    for (const MuscleShare& share : shares) {
        add.bindAll(id, share.muscle, share.share);
        STEELYARD_CHECK(add.run());
    }
    return {};
}

}  // namespace

Result<Library> LibraryRepository::read() const
{
    Library library;
    STEELYARD_CHECK(forEachRow(m_database, "SELECT id, key, name FROM muscle ORDER BY id", [&](const Statement& st) {
        library.muscles.push_back({st.id<Muscle>(0), QUuid(), {st.text(1), st.text(2)}});
    }));
    STEELYARD_CHECK(
        forEachRow(m_database, "SELECT id, uuid, name, hidden FROM exercise ORDER BY name", [&](const Statement& st) {
            library.exercises.push_back({st.id<Exercise>(0), st.uuid(1), {st.text(2), {}, st.flag(3)}});
        }));
    std::unordered_map<std::int64_t, std::vector<MuscleShare>> shares;
    STEELYARD_CHECK(forEachRow(
        m_database, "SELECT exercise_id, muscle_id, share FROM exercise_muscle ORDER BY share DESC, muscle_id",
        [&](const Statement& st) {
            shares[st.int64(0)].push_back({st.id<Muscle>(1), st.real(2)});
        }));
    for (auto& exercise : library.exercises) exercise.value.shares = std::move(shares[exercise.id.value()]);
    STEELYARD_CHECK(forEachRow(
        m_database, "SELECT id, uuid, name, orientation, spacing, spacing_mm FROM grip ORDER BY name",
        [&](const Statement& st) {
            library.grips.push_back(
                {st.id<Grip>(0),
                 st.uuid(1),
                 {st.text(2), st.maybeChoice<HandOrientation>(3), st.maybeChoice<HandSpacing>(4), st.maybeLength(5)}});
        }));
    STEELYARD_CHECK(forEachRow(
        m_database,
        "SELECT v.id, v.uuid, v.exercise_id, v.name, v.implement, v.position, v.path, v.loading, v.bar_mass, v.step, "
        "v.back_loading, v.sides, v.travel, v.band_low, v.band_high, v.usual_grip_id, v.is_default, v.hidden "
        "FROM variant v JOIN exercise e ON e.id = v.exercise_id ORDER BY e.name, v.name",
        [&](const Statement& st) { library.variants.push_back(readVariant(st)); }));
    STEELYARD_CHECK(forEachRow(
        m_database,
        "SELECT s.id, s.uuid, s.variant_id, s.athlete_id, s.name, s.start, s.finish, s.path, s.body, s.lowering, "
        "s.least_travel_percent, s.is_default FROM rep_standard s JOIN variant v ON v.id = s.variant_id "
        "JOIN exercise e ON e.id = v.exercise_id ORDER BY e.name, v.name, s.name, s.id",
        [&](const Statement& st) { library.standards.push_back(readStandard(st)); }));
    return library;
}

Result<Id<Muscle>> LibraryRepository::insert(Transaction& transaction, const Muscle& muscle) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO muscle (key, name) VALUES (?1, ?2)"));
    st.bindAll(muscle.key, muscle.name);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().library = true;
    return Id<Muscle>(id);
}

Result<Id<Exercise>> LibraryRepository::insert(Transaction& transaction, const Exercise& exercise, QUuid uuid) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO exercise (uuid, name, hidden) VALUES (?1, ?2, ?3)"));
    st.bindAll(uuid, exercise.name, exercise.hidden);
    STEELYARD_TRY(const auto id, st.insert());
    STEELYARD_CHECK(writeShares(m_database, Id<Exercise>(id), exercise.shares));
    transaction.changes().library = true;
    return Id<Exercise>(id);
}

Result<void> LibraryRepository::replace(Transaction& transaction, Id<Exercise> id, const Exercise& exercise) const
{
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE exercise SET name = ?1, hidden = ?2 WHERE id = ?3"));
    st.bindAll(exercise.name, exercise.hidden, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_CHECK(writeShares(m_database, id, exercise.shares));
    transaction.changes().library = true;
    return {};
}

Result<Id<Variant>> LibraryRepository::insert(Transaction& transaction, const Variant& variant, QUuid uuid) const
{
    STEELYARD_TRY(auto st,
                  m_database.prepare("INSERT INTO variant (exercise_id, name, implement, position, path, loading, "
                                     "bar_mass, step, back_loading, sides, travel, band_low, band_high, usual_grip_id, "
                                     "is_default, hidden, uuid) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, "
                                     "?12, ?13, ?14, ?15, ?16, ?17)"));
    bindVariant(st, variant);
    st.bind(17, uuid);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().library = true;
    return Id<Variant>(id);
}

Result<void> LibraryRepository::replace(Transaction& transaction, Id<Variant> id, const Variant& variant) const
{
    STEELYARD_TRY(auto st, m_database.prepare(
                               "UPDATE variant SET exercise_id = ?1, name = ?2, implement = ?3, position = ?4, "
                               "path = ?5, loading = ?6, bar_mass = ?7, step = ?8, back_loading = ?9, sides = ?10, "
                               "travel = ?11, band_low = ?12, band_high = ?13, usual_grip_id = ?14, "
                               "is_default = ?15, hidden = ?16 WHERE id = ?17"));
    bindVariant(st, variant);
    st.bind(17, id);
    transaction.changes().library = true;
    return st.run();
}

Result<Id<Grip>> LibraryRepository::insert(Transaction& transaction, const Grip& grip, QUuid uuid) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO grip (uuid, name, orientation, spacing, spacing_mm) "
                                              "VALUES (?1, ?2, ?3, ?4, ?5)"));
    st.bindAll(uuid, grip.name, grip.orientation, grip.spacing, grip.spacingBetweenHands);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().library = true;
    return Id<Grip>(id);
}

Result<void> LibraryRepository::replace(Transaction& transaction, Id<Grip> id, const Grip& grip) const
{
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE grip SET name = ?1, orientation = ?2, spacing = ?3, "
                                              "spacing_mm = ?4 WHERE id = ?5"));
    st.bindAll(grip.name, grip.orientation, grip.spacing, grip.spacingBetweenHands, id);
    transaction.changes().library = true;
    return st.run();
}

Result<Id<RepStandard>> LibraryRepository::insert(Transaction& transaction, const RepStandard& standard,
                                                  QUuid uuid) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO rep_standard (variant_id, athlete_id, name, start, finish, "
                                              "path, body, lowering, least_travel_percent, is_default, uuid) VALUES "
                                              "(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11)"));
    bindStandard(st, standard);
    st.bind(11, uuid);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().library = true;
    return Id<RepStandard>(id);
}

Result<void> LibraryRepository::replace(Transaction& transaction, Id<RepStandard> id, const RepStandard& standard) const
{
    STEELYARD_TRY(auto st, m_database.prepare("UPDATE rep_standard SET variant_id = ?1, athlete_id = ?2, name = ?3, "
                                              "start = ?4, finish = ?5, path = ?6, body = ?7, lowering = ?8, "
                                              "least_travel_percent = ?9, is_default = ?10 WHERE id = ?11"));
    bindStandard(st, standard);
    st.bind(11, id);
    transaction.changes().library = true;
    return st.run();
}

}  // namespace steelyard
