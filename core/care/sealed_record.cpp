#include "core/care/sealed_record.h"

#include "core/book/book.h"
#include "core/exchange/book_import.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTemporaryDir>

namespace steelyard {
namespace {

struct SealedRecordText {
    Q_DECLARE_TR_FUNCTIONS(SealedRecordText)
};

}  // namespace

Result<ExportReport> sealRecord(Database& db, const SealRecordWish& wish, const Clock& clock, const Progress& progress)
{
    const QTemporaryDir room;
    if (!room.isValid())
        return fail(ErrorCode::Storage,
                    SealedRecordText::tr("There is no room for temporary files: %1.").arg(room.errorString()));
    const QString folder = room.filePath(QStringLiteral("record"));
    const QString path = room.filePath(QStringLiteral("record.steelyard"));
    STEELYARD_TRY(ExportReport report, exportBook(db, folder, wish.athlete, progress.part(0, 0.3)));
    {
        STEELYARD_TRY(const auto book, Book::create(path, clock));
        STEELYARD_CHECK(importExport(*book, folder, progress.part(0.3, 0.6)));
    }
    STEELYARD_CHECK(sealFile(path, wish.to, wish.passphrase, wish.cost, progress.part(0.6, 1)));
    report.files = {wish.to};
    return report;
}

}  // namespace steelyard
