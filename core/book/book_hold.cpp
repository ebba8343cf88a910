#include "core/book/book_hold.h"

#include "core/base/lock_taking.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QLockFile>

namespace steelyard {
namespace {

struct BookHoldText {
    Q_DECLARE_TR_FUNCTIONS(BookHoldText)
};

}  // namespace

BookHold::BookHold() = default;
BookHold::BookHold(BookHold&&) noexcept = default;
BookHold& BookHold::operator=(BookHold&&) noexcept = default;
BookHold::~BookHold() = default;

BookHold holdBook(const QString& path)
{
    BookHold hold;
    auto lock = std::make_unique<QLockFile>(path + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);  // a lock is stale when its process is gone, never because it is old
    qint64 process = 0;
    QString host;
    QString program;
    if (takeLock(*lock, 0))
        hold.lock = std::move(lock);
    else if (lock->error() == QLockFile::LockFailedError && lock->getLockInfo(&process, &host, &program))
        hold.holder = BookHoldText::tr("%1, process %2 on %3").arg(program, QString::number(process), host);
    return hold;
}

}  // namespace steelyard
