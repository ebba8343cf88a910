#include "core/storage/file_identity.h"

#include <QtCore/QFile>

#ifdef Q_OS_UNIX
#include <sys/stat.h>
#endif

namespace steelyard {

std::optional<FileIdentity> fileIdentity([[maybe_unused]] const QString& path)
{
#ifdef Q_OS_UNIX
    struct stat about = {};
    if (::stat(QFile::encodeName(path).constData(), &about) == 0)
        return FileIdentity{static_cast<std::uint64_t>(about.st_dev), static_cast<std::uint64_t>(about.st_ino)};
#endif
    return std::nullopt;
}

}  // namespace steelyard
