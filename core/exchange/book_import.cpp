#include "core/exchange/book_import.h"

#include "core/exchange/book_json.h"
#include "core/exchange/export_files.h"
#include "core/exchange/logbook_import.h"
#include "core/exchange/logbook_reader.h"
#include "core/exchange/repetition_json.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QJsonDocument>

namespace steelyard {
namespace {

struct BookImportText {
    Q_DECLARE_TR_FUNCTIONS(BookImportText)
};

Result<QJsonObject> readBookDocument(const QString& path)
{
    QFile file(path);
    if (!file.exists())
        return fail(ErrorCode::NotFound,
                    BookImportText::tr("There is no “%1”. Name the folder of an export.").arg(path));
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::NotFound, BookImportText::tr("“%1” can't be read.").arg(path), file.errorString());
    QJsonParseError parse;
    const QJsonDocument document = QJsonDocument::fromJson(file.readAll(), &parse);
    if (document.isObject()) return document.object();
    return fail(ErrorCode::Invalid,
                BookImportText::tr("“%1” is no JSON object (%2, byte %3). Take the export's own file.")
                    .arg(path, parse.errorString(), QString::number(parse.offset)));
}

Result<void> fillFromOwnLogbook(Transaction& transaction, const QString& csv, QDate today, const Progress& progress)
{
    QFile file(csv);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::NotFound, BookImportText::tr("“%1” can't be read.").arg(csv), file.errorString());
    STEELYARD_TRY(const auto reader, LogbookReader::open(file.readAll(), LogbookMapping{}, today));
    ImportReport report;
    STEELYARD_CHECK(fillLogbook(transaction, *reader, report, progress));
    if (report.problems.empty()) return {};
    return fail(ErrorCode::Invalid,
                BookImportText::tr("%1. Nothing was imported.").arg(toText(report.problems.front())));
}

}  // namespace

Result<void> importExport(Book& book, const QString& dir, const Progress& progress)
{
    const auto own = [today = book.clock().today()](Transaction& transaction, const QString& csv,
                                                    const Progress& part) {
        return fillFromOwnLogbook(transaction, csv, today, part);
    };
    return importExport(book, dir, own, progress);
}

Result<void> importExport(Book& book, const QString& dir, const LogbookFiller& fillLogbook, const Progress& progress)
{
    const QString csv = QDir(dir).filePath(kLogbookFile);
    STEELYARD_TRY(const QJsonObject json, readBookDocument(QDir(dir).filePath(kBookJsonFile)));
    if (!QFile::exists(csv))
        return fail(ErrorCode::NotFound,
                    BookImportText::tr("There is no “%1”. Name the folder of an export.").arg(csv));
    STEELYARD_TRY(auto transaction, Transaction::begin(book.database()));
    STEELYARD_TRY(const BookJsonRest rest, bookFromJson(transaction, json, book.clock().today()));
    STEELYARD_CHECK(fillLogbook(transaction, csv, progress));
    STEELYARD_CHECK(replacedSetsFromJson(transaction, rest));
    STEELYARD_CHECK(repetitionsFromJson(transaction, rest));
    if (progress.cancelled()) return fail(ErrorCode::Cancelled, BookImportText::tr("The import was stopped."));
    STEELYARD_CHECK(book.history().clear(transaction));  // it speaks of rows that are gone
    const Changes changes = transaction.changes();
    STEELYARD_CHECK(transaction.commit());
    book.history().adopt(changes);
    return {};
}

}  // namespace steelyard
