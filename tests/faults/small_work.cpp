#include "tests/faults/small_work.h"

#include "core/exchange/book_dump.h"
#include "core/exchange/logbook_import.h"
#include "core/storage/book_copy.h"
#include "tests/faults/keying.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFile>

namespace steelyard::test {
namespace {

constexpr int kTypedBefore = 5;
constexpr int kTyped = 3;

const FixedClock& theDay()
{
    static const FixedClock clock(QDate(2026, 3, 2));
    return clock;
}

// A book that was closed well, made once.
const QString& bookWithSets()
{
    static TempBook book;
    static const QString path = [] {
        for (int n = 1; n <= kTypedBefore; ++n) must(typeSet(*book, book.line(), n));
        book.close();
        return book.path();
    }();
    return path;
}

void copyPrivately(const QString& from, const QString& to)
{
    if (!QFile::copy(from, to)) qFatal("%s can't be made", qUtf8Printable(to));
    QFile::setPermissions(to, QFile::ReadOwner | QFile::WriteOwner);
}

std::string checkTyped(const QString& path, int least, int most)
{
    auto book = Book::open(path, theDay());
    if (!book) return "does not open: " + (book.error().what + book.error().detail).toStdString();
    const auto there = countSets(**book);
    if (!there) return there.error().detail.toStdString();
    if (*there < least || *there > most)
        return std::to_string(*there) + " sets instead of " + std::to_string(least) + " to " + std::to_string(most);
    return differenceFromTyped(**book, *there);
}

class Typing final : public SmallWork {
public:
    void lay(const QString& folder) override
    {
        m_path = QDir(folder).filePath(QStringLiteral("club.steelyard"));
        copyPrivately(bookWithSets(), m_path);
        m_acknowledged = m_refused = 0;
    }
    void perform() override
    {
        const auto book = Book::open(m_path, theDay());
        if (!book) return;
        const auto line = onlyLine(**book);
        if (!line) return;
        while (m_acknowledged < kTyped && m_refused < kTyped) {
            const bool taken = typeSet(**book, *line, kTypedBefore + m_acknowledged + 1).value_or(false);
            ++(taken ? m_acknowledged : m_refused);
        }
    }
    std::string check() override
    {
        const int least = kTypedBefore + m_acknowledged;
        return checkTyped(m_path, least, least + (m_refused > 0 ? 1 : 0));
    }
    bool isDone() const override { return m_acknowledged == kTyped; }

private:
    QString m_path;
    int m_acknowledged = 0;
    int m_refused = 0;
};

class Importing final : public SmallWork {
public:
    void lay(const QString& folder) override
    {
        m_path = QDir(folder).filePath(QStringLiteral("club.steelyard"));
        copyPrivately(bookWithSets(), m_path);
        m_done = false;
    }
    void perform() override
    {
        const auto log = parseLogbook(batchCsv(1), {}, theDay().today(), Progress());
        const auto worker = Database::openWriter(m_path);
        if (log && worker) m_done = importLogbook(**worker, *log, {false, false, theDay().nowUtc()}, {}).has_value();
    }
    std::string check() override
    {
        auto book = Book::open(m_path, theDay());
        if (!book) return "does not open: " + book.error().detail.toStdString();
        const int there = countSets(**book).value_or(-1);
        if (there == kTypedBefore && !m_done) return differenceFromTyped(**book, there);
        if (there != kTypedBefore + kRowsAnImport) return std::to_string(there) + " sets";
        if (const auto undone = (*book)->history().undo(); !undone) return undone.error().what.toStdString();
        return differenceFromTyped(**book, kTypedBefore);
    }
    bool isDone() const override { return m_done; }

private:
    QString m_path;
    bool m_done = false;
};

class Copying final : public SmallWork {
public:
    void lay(const QString& folder) override
    {
        m_folder = folder;
        m_path = QDir(folder).filePath(QStringLiteral("club.steelyard"));
        m_copy = QDir(folder).filePath(QStringLiteral("copy.steelyard"));
        copyPrivately(bookWithSets(), m_path);
        copyPrivately(bookWithSets(), m_copy);  // an older one
        {
            const auto open = must(Book::open(m_path, theDay()));
            must(typeSet(*open, must(onlyLine(*open)), kTypedBefore + 1));
        }
        m_done = false;
    }
    void perform() override
    {
        const auto reader = Database::openReader(m_path);
        m_done = reader && copyBook(**reader, m_copy);
    }
    std::string check() override
    {
        if (QDir(m_folder).exists(QStringLiteral("copy.steelyard.part"))) return "an unfinished copy was left";
        if (std::string fault = checkTyped(m_path, kTypedBefore + 1, kTypedBefore + 1); !fault.empty()) return fault;
        return m_done ? checkTyped(m_copy, kTypedBefore + 1, kTypedBefore + 1)
                      : checkTyped(m_copy, kTypedBefore, kTypedBefore + 1);
    }
    bool isDone() const override { return m_done; }

private:
    QString m_folder;
    QString m_path;
    QString m_copy;
    bool m_done = false;
};

class BringingUpToDate final : public SmallWork {
public:
    void lay(const QString& folder) override
    {
        m_path = QDir(folder).filePath(QStringLiteral("club.steelyard"));
        copyPrivately(QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard"), m_path);
        if (m_expected.isEmpty()) {
            const QString whole = QDir(folder).filePath(QStringLiteral("whole.steelyard"));
            copyPrivately(m_path, whole);
            m_expected = must(dumpContent(must(Book::open(whole, theDay()))->database()));
        }
        m_done = false;
    }
    void perform() override { m_done = Book::open(m_path, theDay()).has_value(); }
    std::string check() override
    {
        const auto book = Book::open(m_path, theDay());
        if (!book) return "does not open: " + (book.error().what + book.error().detail).toStdString();
        const auto content = dumpContent((*book)->database());
        if (!content) return content.error().detail.toStdString();
        return *content == m_expected ? "" : "other content than a book that was brought up to date in peace";
    }
    bool isDone() const override { return m_done; }

private:
    QString m_path;
    QByteArray m_expected;
    bool m_done = false;
};

template <class Work>
std::unique_ptr<SmallWork> makeWork()
{
    return std::make_unique<Work>();
}

}  // namespace

const std::vector<NamedWork>& smallWorks()
{
    static const std::vector<NamedWork> works = {{"Typing", makeWork<Typing>},
                                                 {"Importing", makeWork<Importing>},
                                                 {"Copying", makeWork<Copying>},
                                                 {"BringingUpToDate", makeWork<BringingUpToDate>}};
    return works;
}

}  // namespace steelyard::test
