#include "core/edits/keying_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/statement.h"

namespace steelyard {
namespace {

Result<int> freeNumber(Database& db, const PlacedSet& placed)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT coalesce(sum(line_id = ?2 AND number = ?3), 0), "
                                      "coalesce(max(number), 0) FROM set_entry WHERE session_id = ?1"));
    st.bindAll(placed.session, placed.line, placed.set.number);
    STEELYARD_CHECK(st.step());
    return st.integer(0) == 0 ? placed.set.number : st.integer(1) + 1;
}

// Behind its line's sets with lower numbers, else behind every set with a lower one; those after it move on by one.
Result<int> makeRoom(Database& db, const PlacedSet& placed)
{
    STEELYARD_TRY(auto st, db.prepare("SELECT coalesce(max(CASE WHEN line_id = ?2 THEN position END), "
                                      "max(position), 0) FROM set_entry WHERE session_id = ?1 AND number < ?3"));
    st.bindAll(placed.session, placed.line, placed.set.number);
    STEELYARD_CHECK(st.step());
    const int position = st.integer(0) + 1;
    STEELYARD_TRY(auto shift, db.prepare("UPDATE set_entry SET position = position + 1 "
                                         "WHERE session_id = ?1 AND position >= ?2"));
    shift.bindAll(placed.session, position);
    STEELYARD_CHECK(shift.run());
    return position;
}

}  // namespace

std::unique_ptr<Edit> keySet(LiftLine line, QDate date, const SetEntry& set, QString label)
{
    return plainEdit(std::move(label), [line, date, set](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(set)));
        const LogbookRepository logbook(tx.database());
        STEELYARD_TRY(const auto session, logbook.session(tx, line.athlete, date));
        STEELYARD_TRY(const auto lineId, logbook.line(tx, line));
        PlacedSet placed{session, lineId, 1, set};
        STEELYARD_TRY(placed.set.number, freeNumber(tx.database(), placed));
        STEELYARD_TRY(placed.position, makeRoom(tx.database(), placed));
        STEELYARD_CHECK(logbook.insert(tx, line.athlete, placed));
        return {};
    });
}

std::unique_ptr<Edit> named(std::unique_ptr<Edit> edit, QString label)
{
    return plainEdit(std::move(label), [edit = std::move(edit)](Transaction& tx) { return edit->apply(tx); });
}

}  // namespace steelyard
