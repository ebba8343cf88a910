// Every row of one athlete: counted, and removed. Which rows these are is read from the schema itself (whatever points at the
// athlete, at something of theirs, and so on), so that a table of a later version is not forgotten.
//
//   STEELYARD_TRY(const auto counts, countRowsOf(db, athlete));            // [{"set_entry", 412}, ...]
//   STEELYARD_CHECK(removeRowsOf(transaction, athlete));
//
// A rep standard that was agreed with them and that others lift by, or a template names, stays for those: under another name and
// UUID, with nobody. Of the file's free pages and its journal see cleanFile(). Failures: NotFound, Storage.
#pragma once

#include "core/domain/athlete.h"
#include "core/storage/transaction.h"

namespace steelyard {

struct RowCount {
    std::string table;
    std::int64_t rows = 0;
    friend bool operator==(const RowCount&, const RowCount&) = default;
};

// A text of the book that names somebody and belongs to another: a gym, a template, another lifter's note.
struct NameMention {
    std::string table;
    QString text;
    friend bool operator==(const NameMention&, const NameMention&) = default;
};

// By table, in the order of their names; without those that have none. The history of edits is not among them.
[[nodiscard]] Result<std::vector<RowCount>> countRowsOf(Database&, Id<Athlete>);
[[nodiscard]] Result<void> removeRowsOf(Transaction&, Id<Athlete>);
// Where the name stands as a whole word in rows that would stay; at most `most`.
[[nodiscard]] Result<std::vector<NameMention>> mentionsElsewhere(Database&, Id<Athlete>, const QString& name,
                                                                 std::size_t most = 50);

// Overwrites what removed rows left in the file: the file is written anew without its free pages, and its journal emptied.
// Needs as much free disk as the book has. Outside any transaction. False: somebody still reads an older state of the
// book, so the journal can't be emptied yet; it is when the last of them closes the book.
[[nodiscard]] Result<bool> cleanFile(Database&);

}  // namespace steelyard
