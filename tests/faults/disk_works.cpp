#include "tests/faults/disk_works.h"

#include "core/care/salvage.h"
#include "core/exchange/book_export.h"
#include "core/exchange/logbook_import.h"
#include "core/storage/book_copy.h"
#include "tests/faults/keying.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>

namespace steelyard::test {

QStringList diskWorks()
{
    return {QStringLiteral("import"), QStringLiteral("copy"), QStringLiteral("export"), QStringLiteral("update"),
            QStringLiteral("salvage")};
}

Result<void> doDiskWork(const QString& work, const QString& book, const Clock& clock)
{
    const auto beside = [&](const char* name) { return QFileInfo(book).dir().filePath(QString::fromLatin1(name)); };
    if (work == u"import") {
        QByteArray rows = batchCsv(1);
        for (int n = 2; n <= 50; ++n) rows += batchCsv(n).mid(batchCsv(n).indexOf('\n') + 1);
        STEELYARD_TRY(const auto log, parseLogbook(rows, {}, clock.today(), Progress()));
        STEELYARD_TRY(const auto worker, Database::openWriter(book));
        STEELYARD_CHECK(importLogbook(*worker, log, {false, false, clock.nowUtc()}, {}));
    } else if (work == u"copy") {
        STEELYARD_TRY(const auto reader, Database::openReader(book));
        STEELYARD_CHECK(copyBook(*reader, beside("copy.steelyard")));
    } else if (work == u"export") {
        STEELYARD_TRY(const auto reader, Database::openReader(book));
        STEELYARD_CHECK(exportBook(*reader, beside("export"), std::nullopt, {}));
    } else if (work == u"update") {
        STEELYARD_CHECK(Book::open(book, clock));
    } else {
        STEELYARD_CHECK(salvageBook(book, beside("saved.steelyard"), {}));
    }
    return {};
}

}  // namespace steelyard::test
