#include "core/base/lock_taking.h"

#include <QtCore/QFile>
#include <QtCore/QFileInfo>
#include <QtCore/QLockFile>

namespace steelyard {

bool takeLock(QLockFile& lock, int patienceMs)
{
    if (lock.tryLock(0)) return true;
    if (lock.error() != QLockFile::LockFailedError) return false;
    constexpr int kNamedWithinMs = 200;
    const auto isNameless = [&] { return QFileInfo(lock.fileName()).size() == 0; };
    if (isNameless() && QFileInfo::exists(lock.fileName())) {
        if (lock.tryLock(kNamedWithinMs)) return true;
        if (isNameless()) QFile::remove(lock.fileName());
    }
    return lock.tryLock(patienceMs);
}

}  // namespace steelyard
