#include "app/console/commands/commands.h"
#include "core/book/book.h"
#include "core/care/backup_shelf.h"
#include "core/exchange/book_import.h"
#include "core/exchange/logbook_guess.h"
#include "core/exchange/logbook_import.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>
#include <QtCore/QSaveFile>

namespace steelyard {
namespace {

struct ImportCommandText {
    Q_DECLARE_TR_FUNCTIONS(ImportCommandText)
};

constexpr std::size_t kMostProblemsShown = 50;

Result<QByteArray> readWholeFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::Invalid, ImportCommandText::tr("“%1” can't be read: %2.").arg(path, file.errorString()));
    if (file.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    ImportCommandText::tr("“%1” is larger than %2 MB. Split it and import the parts.")
                        .arg(path, QString::number(kMostImportBytes / 1024 / 1024)));
    return file.readAll();
}

// From the mapping file, or guessed and then said, or the logbook CSV itself.
Result<LogbookMapping> mappingOf(const Console& console, const QByteArray& log)
{
    if (console.has(QStringLiteral("guess"))) {
        const LogbookGuess guess = guessLogbook(log.left(kGuessBytes), {}, console.clock().today());
        console.say(QString::fromUtf8(writeMapping(guess.mapping)));
        if (guess.datesAmbiguous)
            return fail(ErrorCode::Invalid,
                        ImportCommandText::tr("The file's dates can be read day first and month first. Keep the "
                                              "guess above as a file, set date_order to dmy or mdy, and add --map."));
        return guess.mapping;
    }
    if (!console.has(QStringLiteral("map"))) return LogbookMapping{};
    STEELYARD_TRY(const QByteArray json, readWholeFile(console.value(QStringLiteral("map"))));
    return readMapping(json);
}

QJsonObject toJson(const ImportReport& report)
{
    QJsonArray problems;
    for (const RowProblem& problem : report.problems)
        problems.append(QJsonObject{{QStringLiteral("line"), problem.line},
                                    {QStringLiteral("column"), problem.column},
                                    {QStringLiteral("value"), problem.value},
                                    {QStringLiteral("text"), problem.text}});
    return {{QStringLiteral("rows"), report.rowsRead},
            {QStringLiteral("sets_added"), report.setsAdded},
            {QStringLiteral("sets_already_there"), report.setsAlreadyThere},
            {QStringLiteral("rows_set_aside"), report.rowsSetAside},
            {QStringLiteral("new_athletes"), QJsonArray::fromStringList(report.newAthletes)},
            {QStringLiteral("discomfort_to_confirm"), QJsonArray::fromStringList(report.discomfortToConfirm)},
            {QStringLiteral("discomfort_left_out"), QJsonArray::fromStringList(report.discomfortLeftOut)},
            {QStringLiteral("new_exercises"), QJsonArray::fromStringList(report.newExercises)},
            {QStringLiteral("new_variants"), report.newVariants},
            {QStringLiteral("new_grips"), report.newGrips},
            {QStringLiteral("new_standards"), report.newStandards},
            {QStringLiteral("new_lines"), report.newLines},
            {QStringLiteral("unknown_columns"), QJsonArray::fromStringList(report.unknownColumns)},
            {QStringLiteral("written"), report.written},
            {QStringLiteral("problems"), problems}};
}

// Said on standard error whatever the form of the answer: somebody has to ask these lifters.
void sayDiscomfort(const Console& console, const ImportReport& report)
{
    const auto names = [](const QStringList& list) { return list.join(QStringLiteral(", ")); };
    if (!report.discomfortToConfirm.isEmpty())
        console.say(ImportCommandText::tr("Discomfort came in for lifters who have no consent recorded; it is to be "
                                          "confirmed (Roster, One lifter's data): %1.")
                        .arg(names(report.discomfortToConfirm)));
    if (!report.discomfortLeftOut.isEmpty())
        console.say(ImportCommandText::tr("Discomfort was left out for lifters without a consent: %1.")
                        .arg(names(report.discomfortLeftOut)));
}

void printReport(const Console& console, const ImportReport& report)
{
    sayDiscomfort(console, report);
    if (console.json()) return console.print(QJsonDocument(toJson(report)));
    console.print(ImportCommandText::tr("%1 rows read: %2 sets new, %3 already there, %4 rows with problems.")
                      .arg(report.rowsRead)
                      .arg(report.setsAdded)
                      .arg(report.setsAlreadyThere)
                      .arg(report.rowsSetAside));
    console.print(
        ImportCommandText::tr("New: %1 athletes, %2 exercises, %3 variants, %4 grips, %5 standards, %6 lift lines.")
            .arg(report.newAthletes.size())
            .arg(report.newExercises.size())
            .arg(report.newVariants)
            .arg(report.newGrips)
            .arg(report.newStandards)
            .arg(report.newLines));
    if (!report.unknownColumns.isEmpty())
        console.say(ImportCommandText::tr("Columns that are not known here, kept as notes: %1.")
                        .arg(report.unknownColumns.join(QStringLiteral(", "))));
}

Result<void> writeSetAside(const Console& console, const LogbookReader& reader, const ImportReport& report)
{
    const QString path = console.value(QStringLiteral("set-aside"));
    const QByteArray csv = problemRowsCsv(reader, report);
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(csv) != csv.size() || !file.commit())
        return fail(ErrorCode::Storage,
                    ImportCommandText::tr("“%1” can't be written: %2.").arg(path, file.errorString()));
    return {};
}

// An import can be undone, so what hinders a backup doesn't hinder it; it is said.
void keepBefore(const Console& console, Book& book)
{
    const BackupShelf shelf(BackupShelf::usualFolder(book.path()), console.clock());
    if (const auto kept = shelf.keep(book.database(), BackupReason::Import); !kept)
        console.say(ImportCommandText::tr("No backup was made before the import: %1").arg(kept.error().what));
}

// The folder that `export` wrote: everything goes into a book that has no athletes yet.
Result<void> importFolder(Book& book, const QString& folder, const Console& console)
{
    keepBefore(console, book);
    STEELYARD_CHECK(importExport(book, folder, console.progress()));
    STEELYARD_TRY(const auto sets, book.database().integer("SELECT count(*) FROM set_entry"));
    console.print(ImportCommandText::tr("The whole export came in: %1 sets.").arg(sets));
    return {};
}

Result<void> runImport(const Console& console)
{
    STEELYARD_TRY(const QString path, console.required(QStringLiteral("book")));
    if (console.files().size() != 1)
        return fail(ErrorCode::Unsupported, ImportCommandText::tr("Name one logbook file to import."));
    const ImportOptions options{.previewOnly = console.has(QStringLiteral("preview")),
                                .setAside = console.has(QStringLiteral("set-aside")),
                                .madeAt = console.clock().nowUtc(),
                                .discomfort = console.has(QStringLiteral("leave-out-discomfort"))
                                                  ? ImportedDiscomfort::LeaveOut
                                                  : ImportedDiscomfort::ToConfirm};
    STEELYARD_TRY(auto book, Book::open(path, console.clock()));
    if (book->isReadOnly())
        return fail(ErrorCode::Storage,
                    ImportCommandText::tr("The book is open in another program (%1). Close it there first.")
                        .arg(book->holder()));
    if (QFileInfo(console.files().front()).isDir()) return importFolder(*book, console.files().front(), console);
    STEELYARD_TRY(QByteArray bytes, readWholeFile(console.files().front()));
    const Progress progress = console.progress();
    const QDate today = console.clock().today();
    STEELYARD_TRY(const LogbookMapping mapping, mappingOf(console, bytes));
    // Set aside first: rows that are left out of the book must be safe somewhere before the others go in.
    if (options.setAside && !options.previewOnly) {
        STEELYARD_TRY(const auto first, LogbookReader::open(bytes, mapping, today));
        STEELYARD_TRY(const ImportOutcome trial,
                      importLogbook(book->database(), *first, {.previewOnly = true, .setAside = true}, progress));
        STEELYARD_CHECK(writeSetAside(console, *first, trial.report));
    }
    STEELYARD_TRY(const auto reader, LogbookReader::open(std::move(bytes), mapping, today));
    if (!options.previewOnly) keepBefore(console, *book);
    STEELYARD_TRY(const ImportOutcome outcome, importLogbook(book->database(), *reader, options, progress));
    const ImportReport& report = outcome.report;
    printReport(console, report);
    for (const RowProblem& row : report.passedOver) console.say(toText(row));
    for (std::size_t i = 0; i < std::min(report.problems.size(), kMostProblemsShown); ++i)
        console.say(toText(report.problems[i]));
    if (report.problems.size() > kMostProblemsShown)
        console.say(ImportCommandText::tr("… and %1 more.").arg(report.problems.size() - kMostProblemsShown));
    if (report.problems.empty() || options.setAside) return {};
    return fail(
        ErrorCode::Invalid,
        ImportCommandText::tr("Nothing was imported. Mend the rows above, or add --set-aside FILE to leave them out."));
}

}  // namespace

ConsoleCommand importCommand()
{
    return {QStringLiteral("import"),
            ImportCommandText::tr("read a logbook file into a book"),
            {bookOption(),
             {QStringLiteral("map"), ImportCommandText::tr("How its columns become ours."), QStringLiteral("file")},
             {QStringLiteral("guess"), ImportCommandText::tr("Guess how its columns become ours, and say it.")},
             {QStringLiteral("preview"), ImportCommandText::tr("Only say what would happen.")},
             {QStringLiteral("set-aside"),
              ImportCommandText::tr("Write rows with problems here and import the others."), QStringLiteral("file")},
             {QStringLiteral("leave-out-discomfort"),
              ImportCommandText::tr("Leave discomfort out for lifters without a consent.")}},
            &runImport};
}

}  // namespace steelyard
