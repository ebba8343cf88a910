#include "core/care/checksum.h"

#include "core/storage/durable_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QCryptographicHash>
#include <QtCore/QFileInfo>
#include <QtCore/QSaveFile>

namespace steelyard {
namespace {

struct ChecksumText {
    Q_DECLARE_TR_FUNCTIONS(ChecksumText)
};

constexpr qint64 kChecksumPiece = 1 << 20;
constexpr qint64 kMostChecksumBytes = 4096;
constexpr qsizetype kDigits = 64;

}  // namespace

Result<QByteArray> checksumOf(const QString& path, const Progress& progress)
{
    QFile file(path);
    if (!file.open(QIODevice::ReadOnly))
        return fail(ErrorCode::Storage, ChecksumText::tr("“%1” can't be read: %2.").arg(path, file.errorString()));
    QCryptographicHash hash(QCryptographicHash::Blake2b_256);
    while (!file.atEnd()) {
        if (progress.cancelled()) return fail(ErrorCode::Cancelled, ChecksumText::tr("Stopped."));
        const QByteArray piece = file.read(kChecksumPiece);
        if (piece.isEmpty())
            return fail(ErrorCode::Storage, ChecksumText::tr("“%1” can't be read: %2.").arg(path, file.errorString()));
        hash.addData(piece);
        progress.report(static_cast<double>(file.pos()) / static_cast<double>(file.size()));
    }
    return hash.result().toHex();
}

QString checksumPath(const QString& file)
{
    return file + QStringLiteral(".blake2b");
}

Result<void> keepChecksum(const QString& content, const QString& file)
{
    STEELYARD_TRY(const QByteArray digits, checksumOf(content, {}));
    const QByteArray line = digits + "  " + QFile::encodeName(QFileInfo(file).fileName()) + '\n';
    QSaveFile beside(checksumPath(file));
    beside.setDirectWriteFallback(false);
    const bool open = beside.open(QIODevice::WriteOnly);
    beside.setPermissions(QFileDevice::ReadOwner | QFileDevice::WriteOwner);  // sticks know no owners
    if (!open || beside.write(line) != line.size() || !beside.flush() || !beside.commit())
        return fail(ErrorCode::Storage,
                    ChecksumText::tr("“%1” can't be written: %2.").arg(beside.fileName(), beside.errorString()));
    return syncFile(checksumPath(file));
}

QByteArray keptChecksum(const QString& file)
{
    QFile beside(checksumPath(file));
    if (!beside.open(QIODevice::ReadOnly)) return {};
    return beside.read(kMostChecksumBytes).left(kDigits).toLower();
}

Result<void> checkChecksum(const QString& file, const Progress& progress)
{
    const QByteArray kept = keptChecksum(file);
    if (kept.isEmpty()) return fail(ErrorCode::NotFound, ChecksumText::tr("No checksum stands beside “%1”.").arg(file));
    STEELYARD_TRY(const QByteArray found, checksumOf(file, progress));
    if (kept == found) return {};
    return fail(ErrorCode::Invalid,
                ChecksumText::tr("“%1” isn't what it was when it was made: its checksum differs. It is not used; "
                                 "take another one.")
                    .arg(file));
}

}  // namespace steelyard
