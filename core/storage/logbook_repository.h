// Sessions, lift lines, sets and ratings.
//
// Every edit or removal of a set keeps the value it replaced (replacedSets), for the coach who asks what it said before.
// Reading a whole record is athlete_log_reader.h.
#pragma once

#include "core/domain/logbook.h"
#include "core/storage/statement.h"
#include "core/storage/transaction.h"

namespace steelyard {

struct ReplacedSet {
    Id<SetEntry> set;
    QDateTime at;          // UTC
    bool removed = false;  // else edited
    SetEntry was;
    friend bool operator==(const ReplacedSet&, const ReplacedSet&) = default;
};

// What one set of a session said before, oldest first.
struct SetHistory {
    Id<SetEntry> set;
    Id<LiftLine> line;
    bool gone = false;  // the set was removed and not brought back
    std::vector<ReplacedSet> was;
    friend bool operator==(const SetHistory&, const SetHistory&) = default;
};

class LogbookRepository {
public:
    explicit LogbookRepository(Database& database) : m_database(database) {}

    // Found or made.
    [[nodiscard]] Result<Id<Session>> session(Transaction&, Id<Athlete>, QDate) const;
    [[nodiscard]] Result<Id<Athlete>> ownerOf(Id<Session>) const;
    [[nodiscard]] Result<Id<LiftLine>> line(Transaction&, const LiftLine&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<std::vector<Row<LiftLine>>> lines(Id<Athlete>) const;

    [[nodiscard]] Result<PlacedSet> find(Id<SetEntry>) const;
    // `as`: the id that a removed set had, so that its history is its own again; taken by now: another one. Never the id of
    // a set that was removed from this session, else its history would be taken for that of the new one.
    [[nodiscard]] Result<Id<SetEntry>> insert(Transaction&, Id<Athlete> owner, const PlacedSet&,
                                              std::optional<Id<SetEntry>> as = std::nullopt) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<SetEntry>, const SetEntry&, const QDateTime& nowUtc) const;
    [[nodiscard]] Result<void> remove(Transaction&, Id<SetEntry>, const QDateTime& nowUtc) const;
    [[nodiscard]] Result<std::vector<ReplacedSet>> replacedSets(Id<SetEntry>) const;  // oldest first
    // Of every set of a day, removed ones too; by line, then as the sets were written down.
    [[nodiscard]] Result<std::vector<SetHistory>> replacedSets(Id<Athlete>, QDate) const;

    // An empty rating removes the row. Discomfort is taken only of a lifter who agreed to it (Invalid).
    [[nodiscard]] Result<void> putRating(Transaction&, Id<Athlete> owner, Id<Session>, Id<LiftLine>,
                                         const ExerciseRating&) const;

private:
    [[nodiscard]] Result<void> keepReplaced(Id<SetEntry>, const PlacedSet&, bool removed,
                                            const QDateTime& nowUtc) const;
    Database& m_database;
};

// The set's columns as every reader selects them, and how they are read; `first` is the column of `number`.
inline constexpr std::string_view kSetColumns =
    "e.number, e.load, e.unit, e.reps, e.off, e.failed, e.rir, e.rpe, e.marks, e.lowering_s, e.kind, e.note, "
    "e.lean_deg";
[[nodiscard]] SetEntry readSet(const Statement&, int first);
void bindSet(Statement&, int first, const SetEntry&);
inline constexpr std::string_view kRatingColumns =
    "r.tension, r.burn, r.pump, r.gave_out, r.elbow, r.shoulder, r.wrist, r.lower_back, r.hip, r.knee, r.neck, "
    "r.ankle, "
    "r.next_soreness, r.next_weakness";
[[nodiscard]] ExerciseRating readRating(const Statement&, int first);

}  // namespace steelyard
