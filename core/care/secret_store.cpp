#include "core/care/secret_store.h"

#include <QtCore/QCryptographicHash>
#include <QtCore/QFileInfo>

namespace steelyard {

QString secretKeyOfBook(const QString& path)
{
    const QFileInfo file(path);
    const QString whole = file.exists() ? file.canonicalFilePath() : file.absoluteFilePath();
    const QByteArray hash = QCryptographicHash::hash(whole.toUtf8(), QCryptographicHash::Sha256).toHex().left(32);
    return QStringLiteral("sealed-backups/") + QString::fromLatin1(hash);
}

}  // namespace steelyard
