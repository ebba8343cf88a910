#include "core/care/salvage.h"

#include "core/book/verify.h"
#include "core/exchange/book_dump.h"
#include "core/storage/left_journal.h"
#include "core/storage/statement.h"
#include "tests/support/temp_book.h"

#include <QtCore/QDir>
#include <QtCore/QFile>
#include <QtCore/QFileInfo>

#include <sqlite3.h>

namespace steelyard {
namespace {

using test::fileBytes;
using test::must;
using test::TempBook;

constexpr int kSets = 3000;
constexpr int kSetsADay = 30;
constexpr qsizetype kPage = 4096;

// A closed book of one lifter with many sets, each of which says its number, and what becomes of its bytes.
class DamagedBook : public testing::Test {
protected:
    void SetUp() override
    {
        fill();
        m_content = must(dumpContent(m_book->database()));
        m_book.close();
        m_bytes = fileBytes(m_book.path());
        m_damaged = m_book.file(QStringLiteral("damaged.steelyard"));
        m_saved = m_book.file(QStringLiteral("saved.steelyard"));
    }
    void fill()
    {
        auto tx = must(Transaction::begin(m_book->database()));
        Database& db = tx.database();
        must(db.execute(
            "INSERT INTO lift_line (id, uuid, athlete_id, variant_id, grip_id, standard_id) SELECT 1, 'line', "
            "(SELECT min(id) FROM athlete), r.variant_id, (SELECT min(id) FROM grip), r.id FROM rep_standard r "
            "LIMIT 1"));
        for (int day = 1; day <= kSets / kSetsADay; ++day)
            must(db.execute(("INSERT INTO session (id, athlete_id, date) SELECT " + QByteArray::number(day)
                             + ", min(id), date('2020-01-01', '+" + QByteArray::number(day) + " days') FROM athlete")
                                .constData()));
        auto st =
            must(db.prepare("INSERT INTO set_entry (id, session_id, line_id, position, number, load, unit, reps, note) "
                            "VALUES (?1, ?2, 1, 1, ?3, '40', 'kg', 8, 'this is set <' || ?1 || '>')"));
        for (int n = 1; n <= kSets; ++n) {
            st.bindAll(n, (n - 1) / kSetsADay + 1, (n - 1) % kSetsADay + 1);
            must(st.run());
        }
        must(tx.commit());
    }
    // The page on which this text stands as the whole of a value or as a part of one.
    qsizetype pageWith(const QByteArray& text) const
    {
        const qsizetype at = m_bytes.indexOf(text);
        EXPECT_GE(at, 0) << text.constData();
        return at / kPage;
    }
    void blank(qsizetype page) { m_bytes.replace(page * kPage, kPage, QByteArray(kPage, '\0')); }
    Result<SalvageReport> salvage()
    {
        QFile file(m_damaged);
        EXPECT_TRUE(file.open(QIODevice::WriteOnly));
        file.write(m_bytes);
        file.close();
        auto report = salvageBook(m_damaged, m_saved, {});
        EXPECT_EQ(fileBytes(m_damaged), m_bytes) << "the damaged file is only read";
        EXPECT_TRUE(QDir(QFileInfo(m_saved).path())
                        .entryList({QStringLiteral(".salvage*")}, QDir::AllEntries | QDir::Hidden)
                        .isEmpty());
        return report;
    }
    std::vector<int> savedSets()
    {
        const auto book = must(Book::open(m_saved, m_book.clock()));
        EXPECT_EQ(must(verifyBook(book->database(), {})).findings, QStringList());
        auto st = must(book->database().prepare("SELECT id, note FROM set_entry ORDER BY id"));
        std::vector<int> found;
        while (must(st.step())) {
            EXPECT_EQ(st.text(1), QStringLiteral("this is set <%1>").arg(st.integer(0)));
            found.push_back(st.integer(0));
        }
        return found;
    }
    TempBook m_book;
    QByteArray m_content;
    QByteArray m_bytes;
    QString m_damaged;
    QString m_saved;
};

TEST_F(DamagedBook, ThatIsNotDamagedComesOutAsItIs)
{
    const auto report = must(salvage());
    EXPECT_FALSE(report.anythingLost());
    EXPECT_EQ(report.saved(QStringLiteral("set_entry")), kSets);
    EXPECT_EQ(must(dumpContent(must(Book::open(m_saved, m_book.clock()))->database())), m_content);
    EXPECT_FALSE(QFile::permissions(m_saved)
                 & (QFile::ReadGroup | QFile::ReadOther | QFile::WriteGroup | QFile::WriteOther));
}

TEST_F(DamagedBook, LosesOnlyTheSetsOfAPageThatIsGone)
{
    blank(pageWith("this is set <1500>"));
    const auto report = must(salvage());
    const std::vector<int> sets = savedSets();
    EXPECT_LT(sets.size(), static_cast<std::size_t>(kSets));
    EXPECT_GT(sets.size(), static_cast<std::size_t>(kSets - 150));
    EXPECT_EQ(std::count(sets.begin(), sets.end(), 1500), 0);
    EXPECT_EQ(sets.front(), 1);
    EXPECT_EQ(sets.back(), kSets);
    EXPECT_TRUE(report.anythingLost());
    const auto lines = salvageLines(report);
    EXPECT_TRUE(
        lines.filter(QStringLiteral("Sets: %1 saved, up to %2 lost").arg(sets.size()).arg(kSets - sets.size())).size()
        == 1)
        << qPrintable(lines.join(u'\n'));
    EXPECT_TRUE(lines.contains(QStringLiteral("Lifters: 1 saved, none lost")));
}

TEST_F(DamagedBook, LosesOnlyTheirSetsWhereTheFirstTheLastAndTwoPagesBetweenAreGone)
{
    for (const int set : {1, 900, 2100, kSets}) blank(pageWith("this is set <" + QByteArray::number(set) + '>'));
    const auto report = must(salvage());
    const auto sets = savedSets();
    EXPECT_GT(sets.size(), static_cast<std::size_t>(kSets - 500));
    EXPECT_LT(sets.size(), static_cast<std::size_t>(kSets - 100));
    EXPECT_GE(std::count(sets.begin(), sets.end(), 1200), 1);
    EXPECT_TRUE(salvageLines(report).join(u' ').contains(QStringLiteral("at least")))
        << "nobody knows how many were last";
}

TEST_F(DamagedBook, IsReadWithoutItsFirstHundredBytes)
{
    m_bytes.replace(0, 100, QByteArray(100, '\0'));
    EXPECT_FALSE(must(salvage()).anythingLost());
    EXPECT_EQ(savedSets().size(), static_cast<std::size_t>(kSets));
}

TEST_F(DamagedBook, CutInTheMiddleGivesItsFirstPart)
{
    m_bytes.truncate(m_bytes.size() * 5 / 6 / kPage * kPage + 77);
    const auto report = salvage();
    ASSERT_TRUE(report) << qPrintable(report.error().what);
    EXPECT_TRUE(report->anythingLost());
    EXPECT_GT(savedSets().size(), 100U);
}

TEST_F(DamagedBook, LeavesOutWhatCanNotBeTrue)
{
    const qsizetype at = m_bytes.indexOf("kg", m_bytes.indexOf("this is set <700>") - 10);
    ASSERT_GT(at, 0);
    m_bytes.replace(at, 2, "kq");
    const auto report = must(salvage());
    EXPECT_EQ(report.saved(QStringLiteral("set_entry")), kSets - 1);
    EXPECT_EQ(savedSets().size(), static_cast<std::size_t>(kSets - 1));
}

TEST_F(DamagedBook, KeepsSetsWhoseLifterAndLiftAreLostUnderNamesThatSaySo)
{
    for (const char* table : {"athlete", "variant", "exercise", "lift_line"}) {
        const auto db = must(Database::openReader(m_book.path()));
        auto root = must(db->prepare("SELECT rootpage FROM sqlite_schema WHERE type = 'table' AND name = ?1"));
        root.bind(1, QString::fromLatin1(table));
        ASSERT_TRUE(must(root.step()));
        blank(root.int64(0) - 1);
    }
    const auto report = must(salvage());
    EXPECT_EQ(savedSets().size(), static_cast<std::size_t>(kSets));
    EXPECT_GE(report.standIns, 4);
    EXPECT_EQ(report.findings, QStringList());
    const auto book = must(Book::open(m_saved, m_book.clock()));
    EXPECT_TRUE(must(book->athletes().all()).front().value.name.startsWith(QStringLiteral("Recovered lifter")));
    EXPECT_TRUE(salvageLines(report).join(u' ').contains(QStringLiteral("begin with “Recovered”")));
}

TEST_F(DamagedBook, WithSomethingForgedInItComesOutWithoutIt)
{
    m_book.reopen();
    must(
        m_book->database().execute("CREATE TRIGGER helper AFTER INSERT ON set_entry BEGIN DELETE FROM athlete; END;"
                                   "CREATE VIEW everybody AS SELECT * FROM athlete"));
    m_book.close();
    m_bytes = fileBytes(m_book.path());
    ASSERT_FALSE(Book::open(m_book.path(), m_book.clock()));
    EXPECT_FALSE(must(salvage()).anythingLost());
    EXPECT_EQ(must(dumpContent(must(Book::open(m_saved, m_book.clock()))->database())), m_content);
}

TEST_F(DamagedBook, IsReadWithoutAJournalThatIsNotItsOwn)
{
    TempBook other;
    for (int i = 0; i < 200; ++i)
        must(other->database().execute(("INSERT INTO gym (uuid, name) VALUES ('u" + QByteArray::number(i) + "', 'Gym "
                                        + QByteArray::number(i) + "')")
                                           .constData()));
    ASSERT_TRUE(QFile::copy(journalOf(other.path()), journalOf(m_damaged)));
    const auto report = must(salvage());
    EXPECT_TRUE(report.journalLeftOut);
    EXPECT_EQ(savedSets().size(), static_cast<std::size_t>(kSets));
    EXPECT_TRUE(QFile::exists(journalOf(m_damaged)));
}

TEST_F(DamagedBook, ThatIsNoBookAtAllIsSaidToBeNone)
{
    for (const QByteArray& bytes : {QByteArray(), QByteArray(50'000, 'z'), QByteArray(50'000, '\0')}) {
        m_bytes = bytes;
        const auto report = salvage();
        ASSERT_FALSE(report);
        EXPECT_EQ(report.error().code, ErrorCode::Storage);
        EXPECT_FALSE(QFile::exists(m_saved));
    }
}

TEST_F(DamagedBook, IsNeverSavedOverAFileAndNothingIsLeftWhenItIsStopped)
{
    std::stop_source stop;
    stop.request_stop();
    QFile(m_damaged).remove();
    ASSERT_TRUE(QFile::copy(m_book.path(), m_damaged));
    const auto stopped = salvageBook(m_damaged, m_saved, Progress({}, stop.get_token()));
    ASSERT_FALSE(stopped);
    EXPECT_EQ(stopped.error().code, ErrorCode::Cancelled);
    EXPECT_FALSE(QFile::exists(m_saved));
    EXPECT_EQ(salvageBook(m_damaged, m_damaged, {}).error().code, ErrorCode::Invalid);
    EXPECT_EQ(salvageBook(m_saved, m_saved + u'x', {}).error().code, ErrorCode::NotFound);
}

TEST(OlderDamagedBook, ComesOutUpToDate)
{
    TempBook folder;
    const QString saved = folder.file(QStringLiteral("saved.steelyard"));
    const QString older = QStringLiteral(STEELYARD_SOURCE_DIR "/tests/data/databases/version_1.steelyard");
    EXPECT_FALSE(must(salvageBook(older, saved, {})).anythingLost());
    const QString whole = folder.file(QStringLiteral("whole.steelyard"));
    ASSERT_TRUE(QFile::copy(older, whole));
    ASSERT_TRUE(QFile::setPermissions(whole, QFile::ReadOwner | QFile::WriteOwner));
    EXPECT_EQ(must(dumpContent(must(Book::open(saved, folder.clock()))->database())),
              must(dumpContent(must(Book::open(whole, folder.clock()))->database())));
}

}  // namespace
}  // namespace steelyard
