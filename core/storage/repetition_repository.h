// The repetitions of sets, one by one (domain/repetition.h).
//
//   STEELYARD_CHECK(repetitions.put(tx, owner, set, list));          // replaces what was there; an empty list removes it
//   STEELYARD_TRY(const auto all, repetitions.ofLifter(athlete));    // those sets that have any, by set
//
// They stand with the set's id: they follow it when it is moved and go with it when it is removed.
#pragma once

#include "core/domain/repetition.h"
#include "core/storage/statement.h"
#include "core/storage/transaction.h"

namespace steelyard {

class RepetitionRepository {
public:
    explicit RepetitionRepository(Database& database) : m_database(database) {}

    [[nodiscard]] Result<void> put(Transaction&, Id<Athlete> owner, Id<SetEntry>, std::span<const Repetition>) const;
    [[nodiscard]] Result<std::vector<Repetition>> of(Id<SetEntry>) const;
    [[nodiscard]] Result<std::vector<SetRepetitions>> ofLifter(Id<Athlete>) const;
    // Those that a set had when it was removed last.
    [[nodiscard]] Result<std::vector<Repetition>> ofRemoved(Id<SetEntry>, Id<LiftLine>) const;

private:
    Database& m_database;
};

// The columns as every reader selects them, from `p`; `first` is the column of `number`. verify() reports what can't be read.
inline constexpr std::string_view kRepetitionColumns =
    "p.number, p.source, p.travel_mm, p.low_mm, p.high_mm, p.lifting_s, p.lowering_s, p.marks, p.part_way";
[[nodiscard]] Repetition readRepetition(const Statement&, int first);

}  // namespace steelyard
