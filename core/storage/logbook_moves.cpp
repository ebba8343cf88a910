#include "core/storage/logbook_moves.h"

#include "core/storage/statement.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct LogbookMovesText {
    Q_DECLARE_TR_FUNCTIONS(LogbookMovesText)
};

// How many rows a statement that returns one for each changed.
Result<int> countRows(Statement& st)
{
    int rows = 0;
    while (true) {
        STEELYARD_TRY(const bool more, st.step());
        if (!more) return rows;
        ++rows;
    }
}

// Refuses with Conflict when the query, asked with these values, finds a row.
template <class... Values>
Result<void> refuseIfAny(Database& db, std::string_view sql, const QString& why, const Values&... values)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bindAll(values...);
    STEELYARD_TRY(const bool found, st.step());
    if (found) return fail(ErrorCode::Conflict, why);
    return {};
}

template <class... Values>
Result<void> runWith(Database& db, std::string_view sql, const Values&... values)
{
    STEELYARD_TRY(auto st, db.prepare(sql));
    st.bindAll(values...);
    return st.run();
}

QString setsClash()
{
    return LogbookMovesText::tr("Two sets would have the same number on one day of one line. Nothing was moved.");
}

QString ratingsClash()
{
    return LogbookMovesText::tr("Two ratings would stand for one line on one day. Nothing was moved.");
}

Result<std::optional<Id<Session>>> sessionOn(Database& db, Id<Athlete> athlete, QDate date)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT id FROM session WHERE athlete_id = ?1 AND date = ?2"));
    st.bindAll(athlete, date);
    STEELYARD_TRY(const bool found, st.step());
    return found ? std::optional(st.id<Session>(0)) : std::nullopt;
}

Result<void> joinSessions(Database& db, Id<Session> from, Id<Session> into)
{
    STEELYARD_CHECK(refuseIfAny(db,
                                "SELECT 1 FROM set_entry a JOIN set_entry b ON b.line_id = a.line_id "
                                "AND b.number = a.number WHERE a.session_id = ?1 AND b.session_id = ?2",
                                setsClash(), from, into));
    STEELYARD_CHECK(refuseIfAny(db,
                                "SELECT 1 FROM exercise_rating a JOIN exercise_rating b ON b.line_id = a.line_id "
                                "WHERE a.session_id = ?1 AND b.session_id = ?2",
                                ratingsClash(), from, into));
    STEELYARD_CHECK(runWith(db,
                            "UPDATE set_entry SET session_id = ?2, position = position + (SELECT "
                            "coalesce(max(position), 0) FROM set_entry WHERE session_id = ?2) WHERE session_id = ?1",
                            from, into));
    STEELYARD_CHECK(runWith(db, "UPDATE exercise_rating SET session_id = ?2 WHERE session_id = ?1", from, into));
    STEELYARD_CHECK(runWith(db, "UPDATE set_replaced SET session_id = ?2 WHERE session_id = ?1", from, into));
    return runWith(db, "DELETE FROM session WHERE id = ?1", from);
}

}  // namespace

Result<int> moveExposure(Transaction& transaction, Id<Athlete> owner, Id<Session> session, Id<LiftLine> from,
                         Id<LiftLine> to)
{
    Database& db = transaction.database();
    STEELYARD_CHECK(refuseIfAny(db,
                                "SELECT 1 FROM set_entry a JOIN set_entry b ON b.session_id = a.session_id "
                                "AND b.number = a.number WHERE a.session_id = ?1 AND a.line_id = ?2 AND b.line_id = ?3",
                                setsClash(), session, from, to));
    STEELYARD_CHECK(refuseIfAny(db,
                                "SELECT 1 FROM exercise_rating a JOIN exercise_rating b ON b.session_id = a.session_id "
                                "WHERE a.session_id = ?1 AND a.line_id = ?2 AND b.line_id = ?3",
                                ratingsClash(), session, from, to));
    STEELYARD_TRY(auto sets, db.prepare("UPDATE set_entry SET line_id = ?3 WHERE session_id = ?1 AND line_id = ?2 "
                                        "RETURNING id"));
    sets.bindAll(session, from, to);
    STEELYARD_TRY(const int moved, countRows(sets));
    STEELYARD_CHECK(runWith(db, "UPDATE exercise_rating SET line_id = ?3 WHERE session_id = ?1 AND line_id = ?2",
                            session, from, to));
    STEELYARD_CHECK(
        runWith(db, "UPDATE set_replaced SET line_id = ?3 WHERE session_id = ?1 AND line_id = ?2", session, from, to));
    transaction.changes().athletes.insert(owner);
    return moved;
}

Result<void> moveSession(Transaction& transaction, Id<Athlete> owner, QDate from, QDate to)
{
    Database& db = transaction.database();
    STEELYARD_TRY(const auto moved, sessionOn(db, owner, from));
    if (!moved)
        return fail(ErrorCode::Conflict, LogbookMovesText::tr("A session that was to be moved is gone by now."));
    STEELYARD_TRY(const auto there, sessionOn(db, owner, to));
    transaction.changes().athletes.insert(owner);
    if (there) return joinSessions(db, *moved, *there);
    return runWith(db, "UPDATE session SET date = ?2 WHERE id = ?1", *moved, to);
}

Result<int> moveDecisions(Transaction& transaction, Id<Athlete> owner, Id<LiftLine> from, Id<LiftLine> to)
{
    STEELYARD_TRY(auto st, transaction.database().prepare("UPDATE decision SET line_id = ?2 WHERE line_id = ?1 "
                                                          "RETURNING id"));
    st.bindAll(from, to);
    transaction.changes().athletes.insert(owner);
    return countRows(st);
}

}  // namespace steelyard
