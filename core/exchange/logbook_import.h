// Puts the rows of a logbook file into a book: all or nothing, in one transaction that can be undone as one edit.
//
//   STEELYARD_TRY(const auto reader, LogbookReader::open(bytes, mapping, today));
//   STEELYARD_TRY(auto outcome, importLogbook(database, *reader, {}, progress));
//   history.adopt(outcome.changes);      // the history of the opened book looks at the new step
//
// Names find what is there (exercises, variants, grips and standards without regard to case and diacritics; athletes
// exactly) and are made when nothing is. A set that the book has already, equal in everything, is passed over, so importing
// a file twice changes nothing. A set that the book has with other content is a problem of its row.
//
// With problems nothing is written and the report says what they are, unless they are to be set aside. Cancelled: nothing is
// written either. May run in a worker thread on a connection of its own.
#pragma once

#include "core/exchange/logbook_reader.h"
#include "core/storage/transaction.h"

#include <QtCore/QDateTime>

#include <limits>
#include <memory>

namespace steelyard {

// What an import has to free when it is through or was stopped: after a million rows that takes a while, which nobody needs to
// wait for. The database must outlive it.
using ImportLeftovers = std::vector<std::shared_ptr<void>>;

// Discomfort of a lifter who has no consent recorded. Of one who withdrew it, it is left out whatever is chosen.
enum class ImportedDiscomfort {
    ToConfirm,  // it was written down before, so it comes in, with a consent that is to be confirmed
    Agreed,     // the coach says that they agreed: recorded with the day in `agreedOn`
    LeaveOut,
};

struct ImportOptions {
    bool previewOnly = false;  // goes through everything, then takes it back
    bool setAside = false;     // rows with problems are left out, the others come in
    QDateTime madeAt = {};     // when, for the history of edits
    ImportedDiscomfort discomfort = ImportedDiscomfort::ToConfirm;
    QDate agreedOn = {};                                                 // with ImportedDiscomfort::Agreed
    std::size_t mostProblems = std::numeric_limits<std::size_t>::max();  // kept in the report; more are counted only
    ImportLeftovers* leftovers = nullptr;                                // absent: freed before the import returns
};

struct ImportReport {
    int rowsRead = 0;
    int setsAdded = 0;
    int setsAlreadyThere = 0;
    int rowsSetAside = 0;
    QStringList newAthletes;
    QStringList newExercises;
    QStringList discomfortToConfirm;  // lifters whose consent came about by this import
    QStringList discomfortLeftOut;    // lifters whose ratings came in without discomfort
    int newVariants = 0;
    int newGrips = 0;
    int newStandards = 0;
    int newLines = 0;
    QStringList unknownColumns;
    std::vector<RowProblem> problems;
    std::vector<CsvRecord> problemRecords;  // the rows they belong to
    std::vector<RowProblem> passedOver;     // rows that are no sets and not wrong: totals
    bool written = false;                   // false: preview, or refused because of problems
};

struct ImportOutcome {
    ImportReport report;
    QString label;  // for the undo menu
    Changes changes;
};

// The reader stands at its beginning; its rows are written as they are read.
[[nodiscard]] Result<ImportOutcome> importLogbook(Database&, LogbookReader&, const ImportOptions&, const Progress&);
// Rows that are in memory already.
[[nodiscard]] Result<ImportOutcome> importLogbook(Database&, const ParsedLogbook&, const ImportOptions&,
                                                  const Progress&);
// The same inside a transaction of the caller's: problems are added to the report, and the caller decides.
[[nodiscard]] Result<void> fillLogbook(Transaction&, LogbookReader&, ImportReport&, const Progress&);
// The rows with problems as a CSV of the same form, with what was wrong in a last column named "problem".
[[nodiscard]] QByteArray problemRowsCsv(const ParsedLogbook&, const ImportReport&);
[[nodiscard]] QByteArray problemRowsCsv(const LogbookReader&, const ImportReport&);

}  // namespace steelyard
