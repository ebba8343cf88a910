#include "core/care/closed_process.h"

#include <QtCore/QFile>

#include <sys/resource.h>
#include <sys/stat.h>

namespace steelyard {

void closeToOthers()
{
    umask(077);  // a book holds other people's health
    const rlimit none{0, 0};
    setrlimit(RLIMIT_CORE, &none);
}

void closeFileToOthers(const QString& path)
{
    if (QFile::exists(path)) QFile::setPermissions(path, QFile::ReadOwner | QFile::WriteOwner);
}

}  // namespace steelyard
