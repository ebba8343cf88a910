#include "core/exchange/book_export.h"

#include "core/exchange/book_json.h"
#include "core/exchange/export_files.h"
#include "core/exchange/logbook_export.h"
#include "core/exchange/record_page.h"
#include "core/storage/athlete_repository.h"
#include "core/storage/library_repository.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFileInfo>
#include <QtCore/QJsonDocument>
#include <QtCore/QSaveFile>

#include <memory>

namespace steelyard {
namespace {

struct BookExportText {
    Q_DECLARE_TR_FUNCTIONS(BookExportText)
};

Result<void> makeExportFolder(const QString& dir)
{
    const QFileInfo folder(dir);
    if (dir.isEmpty() || (folder.exists() && !folder.isDir()))
        return fail(ErrorCode::Invalid, BookExportText::tr("“%1” is no folder. Name one to export into.").arg(dir));
    if (folder.isDir()) return {};
    if (!QFileInfo(folder.absolutePath()).isDir())
        return fail(ErrorCode::Invalid,
                    BookExportText::tr("There is no folder “%1” to make “%2” in. Make it first, or name another one.")
                        .arg(folder.absolutePath(), folder.fileName()));
    if (!QDir().mkdir(dir))
        return fail(ErrorCode::Storage,
                    BookExportText::tr("The folder “%1” can't be made. Check that you may write there.").arg(dir));
    return {};
}

// A file of the export: written aside, put in place by commit().
class ExportFile {
public:
    ExportFile(const QString& dir, QLatin1StringView name)
        : m_file(std::make_unique<QSaveFile>(QDir(dir).filePath(name)))
    {}

    [[nodiscard]] Result<void> open()
    {
        if (m_file->open(QIODevice::WriteOnly)) return {};
        return failure(
            BookExportText::tr("“%1” can't be written. Check that you may write there and that no program has it "
                               "open."));
    }
    [[nodiscard]] Result<void> write(const QByteArray& bytes)
    {
        if (m_file->write(bytes) == bytes.size()) return {};
        return failure(BookExportText::tr("“%1” could not be written whole. Is the disk full?"));
    }
    [[nodiscard]] Result<void> flush()
    {
        if (m_file->flush()) return {};
        return failure(BookExportText::tr("“%1” could not be written whole. Is the disk full?"));
    }
    [[nodiscard]] Result<void> commit()
    {
        if (m_file->commit()) return {};
        return failure(BookExportText::tr("“%1” could not be put in place. Is the disk full?"));
    }
    [[nodiscard]] QIODevice& device() { return *m_file; }
    [[nodiscard]] QString path() const { return m_file->fileName(); }

private:
    [[nodiscard]] tl::unexpected<Error> failure(const QString& text) const
    {
        return fail(ErrorCode::Storage, text.arg(m_file->fileName()), m_file->errorString());
    }
    std::unique_ptr<QSaveFile> m_file;
};

Result<std::vector<Row<Athlete>>> exportedAthletes(Database& db, std::optional<Id<Athlete>> only)
{
    if (!only) return AthleteRepository(db).all();
    STEELYARD_TRY(auto row, AthleteRepository(db).find(*only));
    return std::vector<Row<Athlete>>{std::move(row)};
}

Result<void> writeLogbook(Database& db, ExportFile& file, const std::vector<Row<Athlete>>& athletes,
                          ExportReport& report, const Progress& progress)
{
    LogbookExport log(db, file.device());
    STEELYARD_CHECK(log.writeHeader());
    for (const Row<Athlete>& athlete : athletes) {
        STEELYARD_CHECK(log.write(athlete, progress));
        ++report.athletes;
        progress.report(static_cast<double>(report.athletes) / static_cast<double>(athletes.size() + 1));
    }
    STEELYARD_CHECK(log.finish());
    report.sets = log.sets();
    return {};
}

Result<ExportReport> exportInSnapshot(Database& db, const QString& dir, std::optional<Id<Athlete>> only,
                                      const Progress& progress)
{
    STEELYARD_TRY(const auto athletes, exportedAthletes(db, only));
    STEELYARD_TRY(const QJsonObject json, bookToJson(db, only));
    STEELYARD_CHECK(makeExportFolder(dir));
    ExportFile logbook(dir, kLogbookFile);
    ExportFile book(dir, kBookJsonFile);
    ExportFile readme(dir, kReadmeFile);
    ExportFile page(dir, kRecordPageFile);
    std::vector<ExportFile*> files{&logbook, &book, &readme};
    if (only) files.push_back(&page);
    for (ExportFile* file : files) STEELYARD_CHECK(file->open());
    ExportReport report;
    STEELYARD_CHECK(writeLogbook(db, logbook, athletes, report, progress));
    STEELYARD_CHECK(book.write(QJsonDocument(json).toJson(QJsonDocument::Indented)));
    STEELYARD_CHECK(readme.write(exportReadme(only ? athletes.front().value.name : QString())));
    if (only) {
        STEELYARD_TRY(const Library library, LibraryRepository(db).read());
        STEELYARD_TRY(const QByteArray bytes, recordPage(db, library, *only));
        STEELYARD_CHECK(page.write(bytes));
    }
    for (ExportFile* file : files) STEELYARD_CHECK(file->flush());
    if (progress.cancelled()) return fail(ErrorCode::Cancelled, BookExportText::tr("The export was stopped."));
    for (ExportFile* file : files) {
        STEELYARD_CHECK(file->commit());
        report.files.append(file->path());
    }
    progress.report(1.0);
    return report;
}

}  // namespace

Result<ExportReport> exportBook(Database& db, const QString& dir, std::optional<Id<Athlete>> only,
                                const Progress& progress)
{
    STEELYARD_CHECK(db.execute("SAVEPOINT whole_export"));
    auto report = exportInSnapshot(db, dir, only, progress);
    STEELYARD_CHECK(db.execute("RELEASE whole_export"));
    return report;
}

}  // namespace steelyard
