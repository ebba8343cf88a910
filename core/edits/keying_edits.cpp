#include "core/edits/keying_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/logbook_repository.h"
#include "core/storage/set_place.h"

namespace steelyard {
std::unique_ptr<Edit> keySet(LiftLine line, QDate date, const SetEntry& set, QString label)
{
    return plainEdit(std::move(label), [line, date, set](Transaction& tx) -> Result<void> {
        STEELYARD_CHECK(firstProblem(validate(set)));
        const LogbookRepository logbook(tx.database());
        STEELYARD_TRY(const auto session, logbook.session(tx, line.athlete, date));
        STEELYARD_TRY(const auto lineId, logbook.line(tx, line));
        STEELYARD_TRY(const PlacedSet placed, placeByNumber(tx, session, lineId, set));
        STEELYARD_CHECK(logbook.insert(tx, line.athlete, placed));
        return {};
    });
}

std::unique_ptr<Edit> named(std::unique_ptr<Edit> edit, QString label)
{
    return plainEdit(std::move(label), [edit = std::move(edit)](Transaction& tx) { return edit->apply(tx); });
}

}  // namespace steelyard
