// Another program has the book open. It is told apart by its lock, never by how old that is.
#include "tests/faults/keying.h"
#include "tests/faults/keying_process.h"
#include "tests/support/temp_book.h"

namespace steelyard {
namespace {

using test::KeyingProcess;
using test::must;
using test::TempBook;

class SecondProgram : public testing::Test {
protected:
    void SetUp() override
    {
        must(test::typeSet(*m_book, m_book.line(), 1));
        m_line = m_book.line();
        m_book.close();
        m_other.start({QStringLiteral("hold"), m_book.path()});
        ASSERT_EQ(m_other.firstLine(), QStringLiteral("holding"));
    }
    TempBook m_book;
    std::optional<LiftLine> m_line;
    KeyingProcess m_other;
};

TEST_F(SecondProgram, LetsTheBookBeReadAndIsNamed)
{
    const auto ours = must(Book::open(m_book.path(), m_book.clock()));
    EXPECT_TRUE(ours->isReadOnly());
    EXPECT_TRUE(ours->holder().contains(QString::number(m_other.id()))) << qPrintable(ours->holder());
    EXPECT_TRUE(ours->holder().contains(QStringLiteral("fault_keying"))) << qPrintable(ours->holder());
    EXPECT_EQ(test::differenceFromTyped(*ours, 1), "");
    const auto typed = test::typeSet(*ours, *m_line, 2);
    ASSERT_FALSE(typed);
    EXPECT_TRUE(typed.error().what.contains(QStringLiteral("reading only"))) << qPrintable(typed.error().what);
    m_other.finish();
    EXPECT_FALSE(must(Book::open(m_book.path(), m_book.clock()))->isReadOnly());
}

TEST_F(SecondProgram, ThatWasKilledHoldsNobodyUp)
{
    m_other.kill();
    const auto ours = must(Book::open(m_book.path(), m_book.clock()));
    EXPECT_FALSE(ours->isReadOnly());
    EXPECT_EQ(ours->holder(), QString());
    must(test::typeSet(*ours, *m_line, 2));
    EXPECT_EQ(test::differenceFromTyped(*ours, 2), "");
}

TEST_F(SecondProgram, IsReadOnlyItselfWhileTheFirstGoesOn)
{
    KeyingProcess third;
    third.start({QStringLiteral("hold"), m_book.path()});
    EXPECT_EQ(third.firstLine(), QStringLiteral("reading"));
    third.finish();
    m_other.finish();
    EXPECT_EQ(m_other.exitCode(), 0);
}

}  // namespace
}  // namespace steelyard
