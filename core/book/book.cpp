#include "core/book/book.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtCore/QLockFile>

namespace steelyard {
namespace {

struct BookText {
    Q_DECLARE_TR_FUNCTIONS(BookText)
};

struct Hold {
    std::unique_ptr<QLockFile> lock;  // null: somebody else has it, or the folder can't be written
    QString holder;
};

Hold takeHold(const QString& path)
{
    auto lock = std::make_unique<QLockFile>(path + QStringLiteral(".lock"));
    lock->setStaleLockTime(0);  // a lock is stale when its process is gone, never because it is old
    if (lock->tryLock(0)) return {std::move(lock), {}};
    qint64 process = 0;
    QString host;
    QString program;
    if (lock->error() == QLockFile::LockFailedError && lock->getLockInfo(&process, &host, &program))
        return {nullptr, BookText::tr("%1, process %2 on %3").arg(program, QString::number(process), host)};
    return {nullptr, {}};
}

}  // namespace

Book::Book(std::unique_ptr<Database> database, std::unique_ptr<QLockFile> lock, QString holder, const Clock& clock)
    : m_lock(std::move(lock)),
      m_database(std::move(database)),
      m_holder(std::move(holder)),
      m_clock(clock),
      m_history(*m_database, m_hub, clock)
{}

Book::~Book() = default;

Result<std::unique_ptr<Book>> Book::create(const QString& path, const Clock& clock)
{
    if (QFileInfo::exists(path))
        return fail(ErrorCode::Invalid,
                    BookText::tr("“%1” is there already and was not touched. Choose another name.").arg(path));
    Hold hold = takeHold(path);
    if (!hold.lock)
        return fail(ErrorCode::Storage,
                    BookText::tr("“%1” can't be made. Check that the folder exists and can be written.").arg(path));
    STEELYARD_TRY(auto database, Database::create(path));
    return std::unique_ptr<Book>(new Book(std::move(database), std::move(hold.lock), {}, clock));
}

Result<std::unique_ptr<Book>> Book::open(const QString& path, const Clock& clock)
{
    if (!QFileInfo(path).isFile())
        return fail(ErrorCode::NotFound, BookText::tr("There is no book at “%1”.").arg(path));
    Hold hold = takeHold(path);
    const bool write = hold.lock && QFileInfo(path).isWritable();
    STEELYARD_TRY(auto database, Database::open(path, write ? Access::ReadWrite : Access::ReadOnly));
    std::unique_ptr<Book> book(new Book(std::move(database), std::move(hold.lock), std::move(hold.holder), clock));
    STEELYARD_CHECK(book->m_history.load());
    return book;
}

Result<std::unique_ptr<Book>> Book::openForReading(const QString& path, const Clock& clock)
{
    STEELYARD_TRY(const bool older, Database::isOlder(path));
    if (older) {
        // Reading can't bring it up to date; whoever may write does that first, with a copy kept aside.
        STEELYARD_TRY(const auto updated, open(path, clock));
    }
    STEELYARD_TRY(auto database, Database::open(path, Access::ReadOnly));
    return std::unique_ptr<Book>(new Book(std::move(database), nullptr, {}, clock));
}

}  // namespace steelyard
