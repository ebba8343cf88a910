#include "core/storage/durable_file.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <cerrno>
#include <cstdio>

#ifdef Q_OS_UNIX
#include <fcntl.h>
#include <unistd.h>
#endif

namespace steelyard {
namespace {

struct DurableText {
    Q_DECLARE_TR_FUNCTIONS(DurableText)
};

[[maybe_unused]] Result<void> failedWith(const QString& path, int number)
{
    return fail(ErrorCode::Storage,
                DurableText::tr("“%1” did not reach the disk: %2.").arg(path, qt_error_string(number)));
}

Result<void> syncPath([[maybe_unused]] const QString& path, [[maybe_unused]] bool folder)
{
#ifdef Q_OS_UNIX
    const int handle = ::open(QFile::encodeName(path).constData(), O_RDONLY | O_CLOEXEC | (folder ? O_DIRECTORY : 0));
    if (handle < 0) return failedWith(path, errno);
    const int outcome = ::fsync(handle);
    const int number = errno;
    ::close(handle);
    if (outcome != 0 && !(folder && (number == EINVAL || number == ENOTSUP))) return failedWith(path, number);
#endif
    return {};
}

}  // namespace

Result<void> syncFile(const QString& path)
{
    return syncPath(path, false);
}

Result<void> syncFolderOf(const QString& path)
{
    return syncPath(QFileInfo(path).absolutePath(), true);
}

Result<void> renameOver(const QString& from, const QString& to)
{
    // QFile::rename() never takes the place of a file; the system's own does, in one step.
    if (std::rename(QFile::encodeName(from).constData(), QFile::encodeName(to).constData()) != 0)
        return fail(ErrorCode::Storage, DurableText::tr("“%1” can't be made: %2.").arg(to, qt_error_string(errno)));
    return syncFolderOf(to);
}

}  // namespace steelyard
