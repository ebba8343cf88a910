#include "core/edits/set_place.h"

#include "core/storage/logbook_repository.h"
#include "core/storage/statement.h"

namespace steelyard {

Result<PlacedSet> placeAtEnd(Transaction& transaction, const LiftLine& line, QDate date, SetEntry set)
{
    const LogbookRepository logbook(transaction.database());
    STEELYARD_TRY(const auto session, logbook.session(transaction, line.athlete, date));
    STEELYARD_TRY(const auto lineId, logbook.line(transaction, line));
    STEELYARD_TRY(auto last, transaction.database().prepare(
                                 "SELECT coalesce(max(position), 0), coalesce(max(number), 0) FROM set_entry "
                                 "WHERE session_id = ?1"));
    last.bind(1, session);
    STEELYARD_CHECK(last.step());
    set.number = last.integer(1) + 1;
    return PlacedSet{session, lineId, last.integer(0) + 1, std::move(set)};
}

}  // namespace steelyard
