#include "core/storage/book_swap.h"

#include "core/storage/durable_file.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#ifdef Q_OS_UNIX
#include <unistd.h>
#endif

namespace steelyard {
namespace {

// Names stand beside the book itself, not beside a link to it.
QString placeOf(const QString& book)
{
    const QFileInfo file(book);
    return file.isSymLink() ? file.symLinkTarget() : book;
}

QString readyPrefix(const QString& book)
{
    return book + QStringLiteral(".ready-");
}

QString asidePrefix(const QString& book)
{
    return book + QStringLiteral(".before-restore-");
}

QStringList readyBooks(const QString& book)
{
    QStringList found;
    const QString prefix = QFileInfo(readyPrefix(book)).fileName();
    const QDir folder = QFileInfo(book).absoluteDir();
    for (const QString& name : folder.entryList(QDir::Files, QDir::Name))
        if (name.startsWith(prefix)) found << folder.filePath(name);
    return found;
}

// A second name first, so that at no moment nothing stands in the book's place. Not every file system can do that.
Result<void> giveSecondName(const QString& book, const QString& aside)
{
#ifdef Q_OS_UNIX
    if (::link(QFile::encodeName(book).constData(), QFile::encodeName(aside).constData()) == 0) return {};
#endif
    return renameOver(book, aside);
}

Result<QString> advance(const QString& book, const QString& ready)
{
    const QString aside = asidePrefix(book) + ready.mid(readyPrefix(book).size());
    if (QFile::exists(book) && !QFile::exists(aside)) STEELYARD_CHECK(giveSecondName(book, aside));
    for (const auto* journal : {"-wal", "-journal"}) {
        const QString suffix = QString::fromLatin1(journal);
        if (QFile::exists(book + suffix)) STEELYARD_CHECK(renameOver(book + suffix, aside + suffix));
    }
    QFile::remove(book + QStringLiteral("-shm"));
    STEELYARD_CHECK(renameOver(ready, book));
    return QFile::exists(aside) ? aside : QString();
}

QString unusedStamp(const QString& book, const QDateTime& utc)
{
    const QString stamp = utc.toUTC().toString(QStringLiteral("yyyyMMdd'T'HHmmss'Z'"));
    const auto isUsed = [&](const QString& text) {
        return QFile::exists(readyPrefix(book) + text) || QFile::exists(asidePrefix(book) + text);
    };
    QString unused = stamp;
    for (int i = 2; isUsed(unused); ++i) unused = stamp + QStringLiteral("-%1").arg(i);
    return unused;
}

}  // namespace

Result<QString> putInPlace(const QString& book, const QString& prepared, const QDateTime& utc)
{
    const QString place = placeOf(book);
    STEELYARD_CHECK(finishPuttingInPlace(place));
    STEELYARD_CHECK(syncFile(prepared));
    const QString ready = readyPrefix(place) + unusedStamp(place, utc);
    STEELYARD_CHECK(renameOver(prepared, ready));
    return advance(place, ready);
}

Result<void> finishPuttingInPlace(const QString& book)
{
    const QString place = placeOf(book);
    for (const QString& ready : readyBooks(place)) STEELYARD_CHECK(advance(place, ready));
    return {};
}

bool isHalfPutInPlace(const QString& book)
{
    return !readyBooks(placeOf(book)).isEmpty();
}

}  // namespace steelyard
