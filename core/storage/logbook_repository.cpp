#include "core/storage/logbook_repository.h"

#include "core/storage/repetition_repository.h"
#include "core/storage/set_json.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

struct LogbookRepositoryText {
    Q_DECLARE_TR_FUNCTIONS(LogbookRepositoryText)
};

// `first` is the column of `replaced_at`.
Result<ReplacedSet> readReplaced(const Statement& st, Id<SetEntry> set, int first)
{
    const auto was = setFromJson(QJsonDocument::fromJson(st.text(first + 2).toUtf8()).object());
    if (!was)
        return fail(ErrorCode::Storage, LogbookRepositoryText::tr("An older value of this set can't be read."),
                    st.text(first + 2));
    return ReplacedSet{set, QDateTime::fromString(st.text(first), Qt::ISODate), st.bytes(first + 1) == "removed", *was};
}

Result<void> checkConsent(Database& db, Id<Athlete> owner, const ExerciseRating& rating)
{
    if (!rating.hasDiscomfort()) return {};
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT scope FROM health_consent WHERE athlete_id = ?1 AND withdrawn_on IS NULL"));
    st.bind(1, owner);
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) break;
        if (HealthScope::parse(st.text(0)).discomfort) return {};
    }
    return fail(ErrorCode::Invalid,
                LogbookRepositoryText::tr("Discomfort is kept only of a lifter who agreed to it. Record the consent "
                                          "first (Roster, One lifter's data), or leave these ratings out."));
}

}  // namespace

SetEntry readSet(const Statement& st, int first)
{
    SetEntry set;
    set.number = st.integer(first);
    const MassUnit unit = st.bytes(first + 2) == "lb" ? MassUnit::lb : MassUnit::kg;
    set.load = Load::parse(st.bytes(first + 1), unit).value_or(Load{});
    set.reps = st.integer(first + 3);
    set.off = st.maybeInteger(first + 4);
    set.failed = st.flag(first + 5);
    if (const auto rir = st.maybeDecimal(first + 6))
        set.effort = Effort{Effort::Scale::Rir, *rir};
    else if (const auto rpe = st.maybeDecimal(first + 7))
        set.effort = Effort{Effort::Scale::Rpe, *rpe};
    if (!st.isNull(first + 8)) set.marks = MarkCounts::parse(st.bytes(first + 8)).value_or(MarkCounts{});
    set.loweringSeconds = st.maybeDecimal(first + 9);
    set.kind = st.choice(first + 10, SetKind::Work);
    if (!st.isNull(first + 11)) set.note = st.text(first + 11);
    set.leanDegrees = st.maybeDecimal(first + 12);
    return set;
}

void bindSet(Statement& st, int first, const SetEntry& set)
{
    st.bind(first, set.number);
    st.bind(first + 1, set.load.amount());
    st.bind(first + 2, set.load.unit());
    st.bind(first + 3, set.reps);
    st.bind(first + 4, set.off);
    st.bind(first + 5, set.failed);
    const bool rir = set.effort && set.effort->scale == Effort::Scale::Rir;
    const bool rpe = set.effort && set.effort->scale == Effort::Scale::Rpe;
    st.bind(first + 6, rir ? std::optional(set.effort->value) : std::nullopt);
    st.bind(first + 7, rpe ? std::optional(set.effort->value) : std::nullopt);
    if (set.marks.none())
        st.bind(first + 8, std::nullopt);
    else
        st.bind(first + 8, std::string_view(set.marks.toString()));
    st.bind(first + 9, set.loweringSeconds);
    st.bind(first + 10, set.kind);
    if (set.note.isEmpty())
        st.bind(first + 11, std::nullopt);
    else
        st.bind(first + 11, set.note);
    st.bind(first + 12, set.leanDegrees);
}

ExerciseRating readRating(const Statement& st, int first)
{
    ExerciseRating rating;
    rating.tension = st.maybeInteger(first);
    rating.burn = st.maybeInteger(first + 1);
    rating.pump = st.maybeInteger(first + 2);
    rating.gaveOut = st.text(first + 3);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        rating.discomfort[joint] = st.maybeInteger(first + 4 + static_cast<int>(joint));
    rating.nextSoreness = st.maybeInteger(first + 12);
    rating.nextWeakness = st.maybeInteger(first + 13);
    return rating;
}

Result<Id<Session>> LogbookRepository::session(Transaction& transaction, Id<Athlete> athlete, QDate date) const
{
    {
        STEELYARD_TRY(auto find, m_database.prepare("SELECT id FROM session WHERE athlete_id = ?1 AND date = ?2"));
        find.bindAll(athlete, date);
        STEELYARD_TRY(const bool found, find.step());
        if (found) return find.id<Session>(0);
    }
    STEELYARD_TRY(auto add, m_database.prepare("INSERT INTO session (athlete_id, date) VALUES (?1, ?2)"));
    add.bindAll(athlete, date);
    STEELYARD_TRY(const auto id, add.insert());
    transaction.changes().athletes.insert(athlete);
    return Id<Session>(id);
}

Result<Id<LiftLine>> LogbookRepository::line(Transaction& transaction, const LiftLine& line, QUuid uuid) const
{
    {
        STEELYARD_TRY(auto find,
                      m_database.prepare("SELECT id FROM lift_line WHERE athlete_id = ?1 AND variant_id = ?2 "
                                         "AND grip_id = ?3 AND standard_id = ?4"));
        find.bindAll(line.athlete, line.variant, line.grip, line.standard);
        STEELYARD_TRY(const bool found, find.step());
        if (found) return find.id<LiftLine>(0);
    }
    STEELYARD_TRY(auto add, m_database.prepare("INSERT INTO lift_line (athlete_id, variant_id, grip_id, standard_id, "
                                               "uuid) VALUES (?1, ?2, ?3, ?4, ?5)"));
    add.bindAll(line.athlete, line.variant, line.grip, line.standard, uuid);
    STEELYARD_TRY(const auto id, add.insert());
    transaction.changes().athletes.insert(line.athlete);
    return Id<LiftLine>(id);
}

Result<std::vector<Row<LiftLine>>> LogbookRepository::lines(Id<Athlete> athlete) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT id, uuid, variant_id, grip_id, standard_id FROM lift_line "
                                              "WHERE athlete_id = ?1 ORDER BY id"));
    st.bind(1, athlete);
    std::vector<Row<LiftLine>> rows;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return rows;
        rows.push_back(
            {st.id<LiftLine>(0), st.uuid(1), {athlete, st.id<Variant>(2), st.id<Grip>(3), st.id<RepStandard>(4)}});
    }
}

Result<PlacedSet> LogbookRepository::find(Id<SetEntry> id) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT e.session_id, e.line_id, e.position, " + std::string(kSetColumns)
                                              + " FROM set_entry e WHERE e.id = ?1"));
    st.bind(1, id);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, LogbookRepositoryText::tr("This set is no longer in the book."));
    return PlacedSet{st.id<Session>(0), st.id<LiftLine>(1), st.integer(2), readSet(st, 3)};
}

Result<Id<SetEntry>> LogbookRepository::insert(Transaction& transaction, Id<Athlete> owner, const PlacedSet& placed,
                                               std::optional<Id<SetEntry>> as) const
{
    if (as && find(*as)) as.reset();
    STEELYARD_TRY(auto st,
                  m_database.prepare("INSERT INTO set_entry (session_id, line_id, position, number, load, unit, "
                                     "reps, off, failed, rir, rpe, marks, lowering_s, kind, note, lean_deg, id) "
                                     "VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, "
                                     "coalesce(?17, (SELECT max((SELECT max(id) FROM set_entry), (SELECT max(set_id) "
                                     "FROM set_replaced WHERE session_id = ?1)) + 1)))"));
    st.bindAll(placed.session, placed.line, placed.position);
    bindSet(st, 4, placed.set);
    st.bind(17, as);
    STEELYARD_TRY(const auto id, st.insert());
    transaction.changes().athletes.insert(owner);
    return Id<SetEntry>(id);
}

Result<Id<Athlete>> LogbookRepository::ownerOf(Id<Session> session) const
{
    STEELYARD_TRY(auto st, m_database.prepare("SELECT athlete_id FROM session WHERE id = ?1"));
    st.bind(1, session);
    STEELYARD_TRY(const bool found, st.step());
    if (!found) return fail(ErrorCode::NotFound, LogbookRepositoryText::tr("This session is no longer in the book."));
    return st.id<Athlete>(0);
}

Result<void> LogbookRepository::keepReplaced(Id<SetEntry> id, const PlacedSet& was, bool removed,
                                             const QDateTime& nowUtc) const
{
    STEELYARD_TRY(auto st, m_database.prepare("INSERT INTO set_replaced (session_id, line_id, set_id, replaced_at, "
                                              "change, was) VALUES (?1, ?2, ?3, ?4, ?5, ?6)"));
    QJsonObject kept = toJson(was.set);
    if (removed) {
        // They go with the set; a set that is brought back shall have them again.
        STEELYARD_TRY(const auto repetitions, RepetitionRepository(m_database).of(id));
        if (!repetitions.empty()) kept[QStringLiteral("repetitions")] = toJson(repetitions);
    }
    const QByteArray json = QJsonDocument(kept).toJson(QJsonDocument::Compact);
    st.bindAll(was.session, was.line, id, nowUtc.toString(Qt::ISODate),
               std::string_view(removed ? "removed" : "edited"), QString::fromUtf8(json));
    return st.run();
}

Result<void> LogbookRepository::replace(Transaction& transaction, Id<SetEntry> id, const SetEntry& set,
                                        const QDateTime& nowUtc) const
{
    STEELYARD_TRY(const PlacedSet was, find(id));
    if (was.set == set) return {};
    STEELYARD_CHECK(keepReplaced(id, was, false, nowUtc));
    STEELYARD_TRY(auto st,
                  m_database.prepare("UPDATE set_entry SET number = ?1, load = ?2, unit = ?3, reps = ?4, "
                                     "off = ?5, failed = ?6, rir = ?7, rpe = ?8, marks = ?9, lowering_s = ?10, "
                                     "kind = ?11, note = ?12, lean_deg = ?13 WHERE id = ?14"));
    bindSet(st, 1, set);
    st.bind(14, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_TRY(const auto owner, ownerOf(was.session));
    transaction.changes().athletes.insert(owner);
    return {};
}

Result<void> LogbookRepository::remove(Transaction& transaction, Id<SetEntry> id, const QDateTime& nowUtc) const
{
    STEELYARD_TRY(const PlacedSet was, find(id));
    STEELYARD_CHECK(keepReplaced(id, was, true, nowUtc));
    STEELYARD_TRY(auto st, m_database.prepare("DELETE FROM set_entry WHERE id = ?1"));
    st.bind(1, id);
    STEELYARD_CHECK(st.run());
    STEELYARD_TRY(const auto owner, ownerOf(was.session));
    transaction.changes().athletes.insert(owner);
    return {};
}

Result<std::vector<ReplacedSet>> LogbookRepository::replacedSets(Id<SetEntry> id) const
{
    // An id may have belonged to a set of another place, which was removed.
    STEELYARD_TRY(
        auto st, m_database.prepare("SELECT p.replaced_at, p.change, p.was FROM set_replaced p "
                                    "LEFT JOIN set_entry e ON e.id = p.set_id WHERE p.set_id = ?1 AND (e.id IS NULL OR "
                                    "(e.session_id = p.session_id AND e.line_id = p.line_id)) ORDER BY p.id"));
    st.bind(1, id);
    std::vector<ReplacedSet> replaced;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return replaced;
        STEELYARD_TRY(auto one, readReplaced(st, id, 0));
        replaced.push_back(std::move(one));
    }
}

Result<std::vector<SetHistory>> LogbookRepository::replacedSets(Id<Athlete> athlete, QDate date) const
{
    STEELYARD_TRY(auto st,
                  m_database.prepare("SELECT p.set_id, p.line_id, e.id IS NULL, p.replaced_at, p.change, p.was "
                                     "FROM set_replaced p JOIN session s ON s.id = p.session_id "
                                     "LEFT JOIN set_entry e ON e.id = p.set_id AND e.session_id = p.session_id "
                                     "AND e.line_id = p.line_id WHERE s.athlete_id = ?1 AND s.date = ?2 "
                                     "ORDER BY p.line_id, p.set_id, p.id"));
    st.bindAll(athlete, date);
    std::vector<SetHistory> histories;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return histories;
        const auto set = st.id<SetEntry>(0);
        const auto line = st.id<LiftLine>(1);
        if (histories.empty() || histories.back().set != set || histories.back().line != line)
            histories.push_back({set, line, st.flag(2), {}});
        STEELYARD_TRY(auto one, readReplaced(st, set, 3));
        histories.back().was.push_back(std::move(one));
    }
}

Result<void> LogbookRepository::putRating(Transaction& transaction, Id<Athlete> owner, Id<Session> session,
                                          Id<LiftLine> line, const ExerciseRating& rating) const
{
    transaction.changes().athletes.insert(owner);
    if (rating.none()) {
        STEELYARD_TRY(auto clear,
                      m_database.prepare("DELETE FROM exercise_rating WHERE session_id = ?1 AND line_id = ?2"));
        clear.bindAll(session, line);
        return clear.run();
    }
    STEELYARD_CHECK(checkConsent(m_database, owner, rating));
    STEELYARD_TRY(
        auto st, m_database.prepare("INSERT OR REPLACE INTO exercise_rating (session_id, line_id, tension, burn, pump, "
                                    "gave_out, elbow, shoulder, wrist, lower_back, hip, knee, neck, ankle, "
                                    "next_soreness, next_weakness) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, "
                                    "?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16)"));
    st.bindAll(session, line, rating.tension, rating.burn, rating.pump);
    if (rating.gaveOut.isEmpty())
        st.bind(6, std::nullopt);
    else
        st.bind(6, rating.gaveOut);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        st.bind(7 + static_cast<int>(joint), rating.discomfort[joint]);
    st.bind(15, rating.nextSoreness);
    st.bind(16, rating.nextWeakness);
    return st.run();
}

}  // namespace steelyard
