// keep_book FOLDER: writes version_N.steelyard, a book with every kind of row, and its content as text, version_N.jsonl. Run
// it once before a migration is added, and never again for that version.
#include "core/exchange/book_dump.h"
#include "core/storage/migrations.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QDir>

int main(int argc, char** argv)
{
    using namespace steelyard;
    const QCoreApplication app(argc, argv);
    if (argc != 2) qFatal("keep_book FOLDER");
    const QDir folder(QString::fromLocal8Bit(argv[1]));
    const QString name = QStringLiteral("version_%1.").arg(builtInMigrations().back().version);
    const FixedClock clock(QDate(2026, 3, 2));
    const auto book = test::must(Book::create(folder.filePath(name + QStringLiteral("steelyard")), clock));
    test::fillFullBook(*book);
    QFile text(folder.filePath(name + QStringLiteral("jsonl")));
    if (!text.open(QIODevice::WriteOnly | QIODevice::NewOnly)) qFatal("%s", qPrintable(text.errorString()));
    text.write(test::must(dumpContent(book->database())));
    test::must(book->database().execute("VACUUM"));
    return 0;
}
