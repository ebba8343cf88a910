#include "ui/pages/import/book_importer.h"

#include "core/book/book.h"
#include "core/exchange/logbook_import.h"
#include "ui/shell/backup_keeper.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QCryptographicHash>
#include <QtCore/QFile>
#include <QtCore/QSaveFile>

#include <algorithm>
#include <memory>

namespace steelyard {
namespace {

struct BookImporterText {
    Q_DECLARE_TR_FUNCTIONS(BookImporterText)
};

Result<QByteArray> readLogbookFile(const QString& path)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::Invalid, BookImporterText::tr("“%1” can't be read: %2.").arg(path, file.errorString()));
    if (file.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    BookImporterText::tr("“%1” is larger than %2 MB. Split it and import the parts.")
                        .arg(path, QString::number(kMostImportBytes / 1024 / 1024)));
    return file.readAll();
}

// The first rows as they stand in the file.
Result<void> readFirstRows(const QByteArray& bytes, const LogbookMapping& mapping, ImportPreview& preview)
{
    CsvReader reader(TextPieces(bytes, mapping.encoding), mapping.separator);
    int header = mapping.hasHeader ? mapping.skip : mapping.skip - 1;
    while (preview.rows.size() < static_cast<std::size_t>(LogbookImporter::kPreviewRows)) {
        STEELYARD_TRY(auto record, reader.next());
        if (!record) return {};
        if (header-- > 0) continue;
        if (header == -1) {
            preview.header = record->fields;
            continue;
        }
        if (!mapping.hasHeader && preview.header.isEmpty())
            for (qsizetype i = 1; i <= record->fields.size(); ++i) preview.header.append(QString::number(i));
        preview.lines.push_back(record->line);
        preview.rows.push_back(std::move(record->fields));
    }
    return {};
}

// What was typed here comes from this coach, who can say whether the lifters agreed.
ImportOptions optionsOf(const ImportChoices& choices, QDate today)
{
    return {.setAside = choices.setBadRowsAside,
            .discomfort = choices.discomfortAgreed ? ImportedDiscomfort::Agreed : ImportedDiscomfort::LeaveOut,
            .agreedOn = today};
}

Result<void> writeAside(const QString& path, const QByteArray& csv)
{
    QSaveFile file(path);
    if (!file.open(QIODevice::WriteOnly) || file.write(csv) != csv.size() || !file.commit())
        return fail(
            ErrorCode::Storage,
            BookImporterText::tr("“%1” can't be written: %2. Nothing was imported.").arg(path, file.errorString()));
    return {};
}

// Rows that are left out of the book must be safe somewhere before the others go in.
Result<void> setAside(Database& database, const QString& path, const QByteArray& bytes, const ImportChoices& choices,
                      QDate today, const Progress& progress)
{
    STEELYARD_TRY(const auto reader, LogbookReader::open(bytes, choices.mapping, today));
    ImportOptions options = optionsOf(choices, today);
    options.previewOnly = true;
    STEELYARD_TRY(const ImportOutcome trial, importLogbook(database, *reader, options, progress));
    if (trial.report.problemRecords.empty()) return {};
    return writeAside(LogbookImporter::setAsidePath(path), problemRowsCsv(*reader, trial.report));
}

// Freed by the worker when its answer is on its way, see ImportLeftovers.
struct ImportWork {
    std::unique_ptr<Database> database;
    ImportLeftovers leftovers;
    std::optional<BackupShelf> shelf;
    std::optional<Result<Backup>> kept;
};

Result<ImportOutcome> importFile(ImportWork& work, const QString& book, const QString& path,
                                 const ImportChoices& choices, QDate today, const QDateTime& now,
                                 const Progress& progress)
{
    STEELYARD_TRY(QByteArray bytes, readLogbookFile(path));
    STEELYARD_TRY(work.database, Database::openWriter(book));
    Database& database = *work.database;
    // What hinders a backup doesn't hinder an import, which can be undone; it is said at the foot of the window.
    if (work.shelf) work.kept = work.shelf->keep(database, BackupReason::Import);
    const double half = choices.setBadRowsAside ? 0.5 : 0.0;
    if (choices.setBadRowsAside)
        STEELYARD_CHECK(setAside(database, path, bytes, choices, today, progress.part(0, half)));
    STEELYARD_TRY(const auto reader, LogbookReader::open(std::move(bytes), choices.mapping, today));
    ImportOptions options = optionsOf(choices, today);
    options.madeAt = now;
    options.leftovers = &work.leftovers;
    STEELYARD_TRY(auto outcome, importLogbook(database, *reader, options, progress.part(half, 1.0)));
    if (!outcome.report.written)
        return fail(ErrorCode::Invalid,
                    BookImporterText::tr("Nothing was imported: %1").arg(toText(outcome.report.problems.front())));
    return outcome;
}

ImportTrouble troubleOf(const RowProblem& problem, const ImportPreview& preview)
{
    const auto row = std::ranges::find(preview.lines, problem.line);
    const bool shown = row != preview.lines.end();
    return {problem.line, shown ? static_cast<int>(row - preview.lines.begin()) : -1, problem.source,
            problem.value.isEmpty() ? QString() : BookImporterText::tr("“%1”").arg(problem.value), problem.text};
}

void takeReport(const ImportReport& report, ImportPreview& preview)
{
    preview.badRows = report.rowsSetAside;
    preview.newAthletes = report.newAthletes;
    preview.newExercises = report.newExercises;
    preview.discomfortLeftOut = report.discomfortLeftOut;
    preview.newSets = report.setsAdded;
    preview.alreadyThere = report.setsAlreadyThere;
    preview.unknownColumns = report.unknownColumns;
    for (const RowProblem& problem : report.problems) preview.troubles.push_back(troubleOf(problem, preview));
    for (const RowProblem& row : report.passedOver) preview.passedOver.push_back(troubleOf(row, preview));
}

QStringList namesOf(const std::vector<Row<Athlete>>& athletes)
{
    QStringList names;
    for (const auto& athlete : athletes) names.append(athlete.value.name);
    return names;
}

// Goes through the whole file with the book, and takes it back.
Result<void> tryOut(const QString& book, LogbookReader& reader, ImportOptions options, ImportPreview& preview,
                    const Progress& progress)
{
    STEELYARD_TRY(auto database, Database::openWriter(book));
    STEELYARD_TRY(const Library library, LibraryRepository(*database).read());
    STEELYARD_TRY(const auto athletes, AthleteRepository(*database).all());
    options.previewOnly = true;
    options.setAside = true;
    options.mostProblems = LogbookImporter::kMostTroubles;
    const auto trial = importLogbook(*database, reader, options, progress);
    if (!trial && trial.error().code == ErrorCode::Invalid) {
        preview.refusal = trial.error().what;  // the file can't be read to its end
        return {};
    }
    if (!trial) return fail(trial.error());
    takeReport(trial->report, preview);
    preview.exercises = namesInFile(library, reader.exercises());
    preview.athletes = athletesInFile(namesOf(athletes), reader.athletes());
    return {};
}

}  // namespace

BookImporter::BookImporter(Book& book, JobRunner& jobs, BackupKeeper* backups)
    : m_book(book), m_jobs(jobs), m_backups(backups), m_path(book.path()), m_today(book.clock().today())
{}

LogbookGuess BookImporter::guess(const QByteArray& head) const
{
    const ImportNames known = names();
    KnownNames said{known.athletes, {}};
    for (const ExerciseName& name : known.exercises)
        if (name.variant.isEmpty()) said.exercises.append(name.exercise);
    return guessLogbook(head, said, m_book.clock().today());
}

ImportNames BookImporter::names() const
{
    ImportNames names;
    if (const auto athletes = m_book.athletes().all()) names.athletes = namesOf(*athletes);
    const auto library = m_book.library().read();
    if (!library) return names;
    for (const auto& exercise : library->exercises) {
        names.exercises.push_back({exercise.value.name, {}});
        for (const auto& variant : library->variants)
            if (variant.value.exercise == exercise.id)
                names.exercises.push_back({exercise.value.name, variant.value.name});
    }
    return names;
}

ImportPreview BookImporter::firstRows(const QByteArray& head, const ImportChoices& choices) const
{
    ImportPreview preview;
    // A head that can't be read to its end still shows what could be; the whole preview then says what is wrong.
    static_cast<void>(readFirstRows(head, choices.mapping, preview));
    return preview;
}

Result<ImportPreview> BookImporter::preview(const QString& path, const ImportChoices& choices,
                                            const Progress& progress) const
{
    STEELYARD_TRY(QByteArray bytes, readLogbookFile(path));
    ImportPreview preview = firstRows(bytes, choices);
    preview.fingerprint =
        QString::fromLatin1(QCryptographicHash::hash(bytes, QCryptographicHash::Sha256).toHex().left(40));
    const auto reader = LogbookReader::open(std::move(bytes), choices.mapping, m_today);
    if (!reader) {
        preview.refusal = reader.error().what;
        return preview;
    }
    STEELYARD_CHECK(tryOut(m_path, **reader, optionsOf(choices, m_today), preview, progress));
    return preview;
}

JobHandle BookImporter::start(QObject* owner, const QString& path, const ImportChoices& choices,
                              std::function<void(Result<int>)> done)
{
    const auto shared = std::make_shared<ImportWork>();
    if (m_backups) shared->shelf = m_backups->shelf();
    const auto work = [shared, book = m_book.path(), place = m_book.database().checkPlace(), path, choices,
                       today = m_book.clock().today(),
                       now = m_book.clock().nowUtc()](const Progress& progress) -> Result<ImportOutcome> {
        STEELYARD_CHECK(place);  // never into another file that came there
        return importFile(*shared, book, path, choices, today, now, progress);
    };
    return m_jobs.run(owner, BookImporterText::tr("Importing"), work,
                      [this, shared, done = std::move(done)](const Result<ImportOutcome>& outcome) {
                          if (m_backups && shared->kept) m_backups->took(*shared->kept);
                          if (!outcome) return done(fail(outcome.error()));
                          m_book.history().adopt(outcome->changes);
                          done(outcome->report.setsAdded);
                      });
}

}  // namespace steelyard
