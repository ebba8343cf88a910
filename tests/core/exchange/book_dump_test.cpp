#include "core/exchange/book_dump.h"

#include "core/storage/statement.h"
#include "tests/support/full_book.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;

class DumpedBook : public testing::Test {
protected:
    DumpedBook() : m_book(must(Book::create(m_dir.filePath(QStringLiteral("a.steelyard")), m_clock)))
    {
        test::fillFullBook(*m_book);
    }
    [[nodiscard]] QByteArray dump() const { return must(dumpContent(m_book->database())); }
    void run(const std::string& sql) const { must(m_book->database().execute(sql.c_str())); }

    QTemporaryDir m_dir;
    FixedClock m_clock{QDate(2026, 3, 2)};
    std::unique_ptr<Book> m_book;
};

TEST_F(DumpedBook, ShowsAChangeInAnyColumnOfAnyTable)
{
    auto& db = m_book->database();
    std::vector<std::array<std::string, 3>> columns;
    {
        auto st =
            must(db.prepare("SELECT t.name, c.name, c.type FROM sqlite_schema t JOIN pragma_table_info(t.name) c WHERE "
                            "t.type = 'table' "
                            "AND c.name NOT IN ('id', 'position', 'set_id') AND NOT EXISTS (SELECT 1 FROM "
                            "pragma_foreign_key_list(t.name) f WHERE f.\"from\" = c.name)"));
        while (must(st.step()))
            columns.push_back({std::string(st.bytes(0)), std::string(st.bytes(1)), std::string(st.bytes(2))});
    }
    ASSERT_GT(columns.size(), 100U);
    const QByteArray before = dump();
    for (const auto& [table, column, type] : columns) {
        if (must(db.integer("SELECT count(*) FROM " + table)) == 0) continue;
        run("SAVEPOINT one; PRAGMA ignore_check_constraints = 1");
        run("UPDATE " + table + " SET " + column + " = " + (type == "TEXT" ? column + " || 'x'" : column + " + 100")
            + " WHERE rowid = (SELECT max(rowid) FROM " + table + " WHERE " + column + " IS NOT NULL)");
        EXPECT_NE(dump(), before) << table << '.' << column;
        run("ROLLBACK TO one; RELEASE one; PRAGMA ignore_check_constraints = 0");
    }
    EXPECT_EQ(dump(), before);
}

TEST_F(DumpedBook, ShowsWhereSetsChangePlacesButNotTheGapsBetweenThem)
{
    const QByteArray before = dump();
    run("UPDATE set_entry SET position = position * 10");
    EXPECT_EQ(dump(), before);
    run("UPDATE set_entry SET position = 1000 - position");
    EXPECT_NE(dump(), before);
}

TEST_F(DumpedBook, DoesNotDependOnRowIds)
{
    const QByteArray before = dump();
    run("PRAGMA defer_foreign_keys = 0; UPDATE body_mass SET id = id + 500; UPDATE exercise_rating SET id = id + 70; "
        "UPDATE rule_setting SET id = 100 - id");
    EXPECT_EQ(dump(), before);
}

TEST_F(DumpedBook, TellsRealNumbersApartThatPrintAlike)
{
    const QByteArray before = dump();
    run("UPDATE rule_setting SET value = 0.3 WHERE name = 'weeks'");  // was 0.1 + 0.2
    EXPECT_NE(dump(), before);
}

TEST_F(DumpedBook, LeavesOutTheTablesNamed)
{
    const QByteArray part = must(dumpContent(m_book->database(), {"set_entry", "set_replaced"}));
    EXPECT_FALSE(part.contains("\nset_entry "));
    EXPECT_FALSE(part.contains("\nset_replaced "));
    EXPECT_TRUE(part.contains("\nsession "));
    EXPECT_TRUE(dump().contains("\nset_entry "));
}

}  // namespace
}  // namespace steelyard
