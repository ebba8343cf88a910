#include "core/edits/set_edits.h"

#include "core/edits/plain_edit.h"
#include "core/storage/repetition_repository.h"
#include "core/storage/set_place.h"

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

// Where its id was taken meanwhile it gets another one, and its history with it.
Result<void> bringBackRemoved(Transaction& transaction, const SetHistory& history, const SetEntry& value,
                              Id<Athlete> owner, QDate date)
{
    Database& db = transaction.database();
    const LogbookRepository logbook(db);
    STEELYARD_TRY(const auto session, logbook.session(transaction, owner, date));
    STEELYARD_TRY(const PlacedSet placed, placeByNumber(transaction, session, history.line, value));
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
