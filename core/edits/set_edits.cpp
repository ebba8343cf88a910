#include "core/edits/set_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/repetition_repository.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct SetEditText {
    Q_DECLARE_TR_FUNCTIONS(SetEditText)
};

Result<void> bringBackValue(Transaction& transaction, Id<SetEntry> id, SetEntry value, const QDateTime& now)
{
    const LogbookRepository logbook(transaction.database());
    STEELYARD_TRY(const PlacedSet placed, logbook.find(id));
    value.number = placed.set.number;
    return logbook.replace(transaction, id, value, now);
}

Result<void> makeRoom(Database& db, Id<Session> session, int position)
{
    STEELYARD_TRY(auto taken, db.prepare("SELECT 1 FROM set_entry WHERE session_id = ?1 AND position = ?2"));
    taken.bindAll(session, position);
    STEELYARD_TRY(const bool isTaken, taken.step());
    taken.reset();
    if (!isTaken) return {};
    STEELYARD_TRY(auto room, db.prepare("UPDATE set_entry SET position = position + 1 WHERE session_id = ?1 "
                                        "AND position >= ?2"));
    room.bindAll(session, position);
    return room.run();
}

// Among the other sets of its line it stands where its number says: in the gap that it left, else the later ones make room.
Result<PlacedSet> placeAgain(Database& db, Id<Session> session, Id<LiftLine> line, SetEntry value)
{
    STEELYARD_TRY(auto taken, db.prepare("SELECT coalesce(max(number = ?3), 0), coalesce(max(number), 0) "
                                         "FROM set_entry WHERE session_id = ?1 AND line_id = ?2"));
    taken.bindAll(session, line, value.number);
    STEELYARD_CHECK(taken.step());
    if (taken.flag(0)) value.number = taken.integer(1) + 1;
    STEELYARD_TRY(auto place, db.prepare("SELECT coalesce(max(CASE WHEN number < ?3 THEN position END) + 1, "
                                         "max(1, min(position) - 1), (SELECT max(position) + 1 FROM set_entry "
                                         "WHERE session_id = ?1), 1) FROM set_entry "
                                         "WHERE session_id = ?1 AND line_id = ?2"));
    place.bindAll(session, line, value.number);
    STEELYARD_CHECK(place.step());
    const int position = place.integer(0);
    place.reset();
    STEELYARD_CHECK(makeRoom(db, session, position));
    return PlacedSet{session, line, position, std::move(value)};
}

// Where its id was taken meanwhile it gets another one, and its history with it.
Result<void> bringBackRemoved(Transaction& transaction, const SetHistory& history, const SetEntry& value,
                              Id<Athlete> owner, QDate date)
{
    Database& db = transaction.database();
    const LogbookRepository logbook(db);
    STEELYARD_TRY(const auto session, logbook.session(transaction, owner, date));
    STEELYARD_TRY(const PlacedSet placed, placeAgain(db, session, history.line, value));
    STEELYARD_TRY(const auto repetitions, RepetitionRepository(db).ofRemoved(history.set, history.line));
    STEELYARD_TRY(const auto id, logbook.insert(transaction, owner, placed, history.set));
    STEELYARD_CHECK(RepetitionRepository(db).put(transaction, owner, id, repetitions));
    if (id == history.set) return {};
    STEELYARD_TRY(auto follow, db.prepare("UPDATE set_replaced SET set_id = ?1 WHERE set_id = ?2 AND session_id = ?3 "
                                          "AND line_id = ?4"));
    follow.bindAll(id, history.set, session, history.line);
    return follow.run();
}

}  // namespace

std::unique_ptr<Edit> bringBack(const SetHistory& history, std::size_t value, Id<Athlete> owner, QDate date,
                                const Clock& clock)
{
    const SetEntry was = history.was.at(value).was;
    if (!history.gone)
        return plainEdit(SetEditText::tr("bring back what a set said"),
                         [id = history.set, was, now = clock.nowUtc()](Transaction& tx) {
                             return bringBackValue(tx, id, was, now);
                         });
    return plainEdit(SetEditText::tr("bring back a removed set"),
                     [=](Transaction& tx) { return bringBackRemoved(tx, history, was, owner, date); });
}

}  // namespace steelyard
