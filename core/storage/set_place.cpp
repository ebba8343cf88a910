#include "core/storage/set_place.h"

#include "core/storage/logbook_repository.h"
#include "core/storage/statement.h"

namespace steelyard {
namespace {

struct LastPlace {
    int position = 0;
    int number = 0;
};

Result<LastPlace> lastPlace(Database& db, Id<Session> session)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT coalesce(max(position), 0), coalesce(max(number), 0) FROM set_entry "
                                      "WHERE session_id = ?1"));
    st.bind(1, session);
    STEELYARD_CHECK(st.step());
    return LastPlace{st.integer(0), st.integer(1)};
}

Result<bool> hasNumber(Database& db, const PlacedSet& placed)
{
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT 1 FROM set_entry WHERE session_id = ?1 AND line_id = ?2 AND number = ?3"));
    st.bindAll(placed.session, placed.line, placed.set.number);
    return st.step();
}

Result<int> positionOfNumber(Database& db, const PlacedSet& placed)
{
    STEELYARD_TRY(auto st,
                  db.prepare("SELECT coalesce(max(CASE WHEN line_id = ?2 THEN position END), max(position), 0) "
                             "+ 1 FROM set_entry WHERE session_id = ?1 AND number < ?3"));
    st.bindAll(placed.session, placed.line, placed.set.number);
    STEELYARD_CHECK(st.step());
    return st.integer(0);
}

// The gap that a removed set left is taken as it is, so that bringing it back changes nothing else.
Result<void> makeRoom(Database& db, const PlacedSet& placed)
{
    STEELYARD_TRY(auto st, db.prepare("UPDATE set_entry SET position = position + 1 WHERE session_id = ?1 "
                                      "AND position >= ?2 AND EXISTS (SELECT 1 FROM set_entry "
                                      "WHERE session_id = ?1 AND position = ?2)"));
    st.bindAll(placed.session, placed.position);
    return st.run();
}

}  // namespace

Result<PlacedSet> placeAtEnd(Transaction& transaction, const LiftLine& line, QDate date, SetEntry set)
{
    const LogbookRepository logbook(transaction.database());
    STEELYARD_TRY(const auto session, logbook.session(transaction, line.athlete, date));
    STEELYARD_TRY(const auto lineId, logbook.line(transaction, line));
    STEELYARD_TRY(const LastPlace last, lastPlace(transaction.database(), session));
    set.number = last.number + 1;
    return PlacedSet{session, lineId, last.position + 1, std::move(set)};
}

Result<PlacedSet> placeByNumber(Transaction& transaction, Id<Session> session, Id<LiftLine> line, SetEntry set)
{
    Database& db = transaction.database();
    PlacedSet placed{session, line, 1, std::move(set)};
    STEELYARD_TRY(const bool isTaken, hasNumber(db, placed));
    if (isTaken) {
        STEELYARD_TRY(const LastPlace last, lastPlace(db, session));
        placed.set.number = last.number + 1;
    }
    STEELYARD_TRY(placed.position, positionOfNumber(db, placed));
    STEELYARD_CHECK(makeRoom(db, placed));
    return placed;
}

}  // namespace steelyard
