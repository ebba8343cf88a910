// A book in a temporary folder with one athlete, one exercise and one lift line: the least that something can happen to.
#pragma once

#include "core/book/book.h"

#include <QtCore/QTemporaryDir>

namespace steelyard::test {

// The value of a result; a failure ends the program with its text, so that a broken arrangement can't look like a pass.
template <class T>
T must(Result<T> result)
{
    if (!result) qFatal("%s (%s)", qUtf8Printable(result.error().what), qUtf8Printable(result.error().detail));
    if constexpr (!std::is_void_v<T>) return std::move(*result);
}

class TempBook {
public:
    explicit TempBook(QDate today = QDate(2026, 3, 2));

    [[nodiscard]] Book& operator*() { return *m_book; }
    [[nodiscard]] Book* operator->() { return m_book.get(); }
    [[nodiscard]] const Clock& clock() const { return m_clock; }
    [[nodiscard]] QString path() const { return m_dir.filePath(QStringLiteral("club.steelyard")); }
    [[nodiscard]] QString file(const QString& name) const { return m_dir.filePath(name); }
    [[nodiscard]] const LiftLine& line() const { return *m_line; }
    [[nodiscard]] Id<Athlete> athlete() const { return m_line->athlete; }
    void close() { m_book.reset(); }
    // As when the program starts once more.
    void reopen()
    {
        close();
        m_book = must(Book::open(path(), m_clock));
    }

private:
    QTemporaryDir m_dir;
    FixedClock m_clock;
    std::unique_ptr<Book> m_book;
    std::optional<LiftLine> m_line;
};

// Every row of every table but the history of edits as text, in a fixed order: two equal dumps are two equal books, row ids and all.
[[nodiscard]] QByteArray rawDump(Database&);
[[nodiscard]] QByteArray fileBytes(const QString& path);
[[nodiscard]] SetEntry workSet(const char* load, int reps, std::optional<int> off = std::nullopt);

}  // namespace steelyard::test
