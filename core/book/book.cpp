#include "core/book/book.h"

#include "core/book/book_hold.h"
#include "core/storage/book_swap.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QFileInfo>
#include <QtCore/QLockFile>

namespace steelyard {
namespace {

struct BookText {
    Q_DECLARE_TR_FUNCTIONS(BookText)
};

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
    BookHold hold = holdBook(path);
    if (!hold.lock)
        return fail(ErrorCode::Storage,
                    BookText::tr("“%1” can't be made. Check that the folder exists and can be written.").arg(path));
    STEELYARD_TRY(auto database, Database::create(path));
    return std::unique_ptr<Book>(new Book(std::move(database), std::move(hold.lock), {}, clock));
}

Result<std::unique_ptr<Book>> Book::open(const QString& path, const Clock& clock)
{
    if (!QFileInfo(path).isFile() && !isHalfPutInPlace(path))
        return fail(ErrorCode::NotFound, BookText::tr("There is no book at “%1”.").arg(path));
    BookHold hold = holdBook(path);
    if (hold) STEELYARD_CHECK(finishPuttingInPlace(path));  // a restore that was cut off
    const bool write = hold.lock && QFileInfo(path).isWritable();
    STEELYARD_TRY(auto database, Database::open(path, write ? Access::ReadWrite : Access::ReadOnly));
    std::unique_ptr<Book> book(new Book(std::move(database), std::move(hold.lock), std::move(hold.holder), clock));
    STEELYARD_CHECK(book->m_history.load());
    return book;
}

Result<std::unique_ptr<Book>> Book::openForReading(const QString& path, const Clock& clock)
{
    const bool half = isHalfPutInPlace(path);
    const auto older = half ? Result<bool>(true) : Database::isOlder(path);
    if (!older) return fail(older.error());
    if (*older) {
        // Reading can't bring it up to date; whoever may write does that first, with a copy kept aside.
        STEELYARD_TRY(const auto updated, open(path, clock));
    }
    STEELYARD_TRY(auto database, Database::open(path, Access::ReadOnly));
    return std::unique_ptr<Book>(new Book(std::move(database), nullptr, {}, clock));
}

}  // namespace steelyard
