#include "ui/pages/import/import_memory.h"

#include "tests/support/temp_dir.h"

#include <QtCore/QSettings>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::TempDir;

struct MemoryCase {
    TempDir dir;
    QSettings settings{dir.path(u"settings.ini"), QSettings::IniFormat};
    [[nodiscard]] ImportMemory open(const char* book = "club.steelyard")
    {
        return ImportMemory(&settings, QString::fromLatin1(book));
    }
};

TEST(ImportMemory, KeepsMappingsByNameWhateverItsCase)
{
    MemoryCase c;
    c.open().keep(QStringLiteral("Old sheet"), "one");
    c.open().keep(QStringLiteral("old SHEET"), "two");
    EXPECT_EQ(c.open().names(), QStringList(QStringLiteral("old SHEET")));
    EXPECT_EQ(c.open().kept(QStringLiteral("Old Sheet")), "two");
    c.open().forget(QStringLiteral("OLD sheet"));
    EXPECT_TRUE(c.open().names().isEmpty());
}

TEST(ImportMemory, FindsTheMappingOfFilesWithTheSameColumns)
{
    MemoryCase c;
    c.open().remember(QStringLiteral("abc"), "mapping");
    c.open().remember({}, "of no header");
    EXPECT_EQ(c.open().of(QStringLiteral("abc")), "mapping");
    EXPECT_TRUE(c.open().of(QStringLiteral("other")).isEmpty());
    EXPECT_TRUE(c.open().of({}).isEmpty());
}

TEST(ImportMemory, KnowsWhenAFileCameIntoThisBookAndNoOther)
{
    MemoryCase c;
    c.open().bringsIn(QStringLiteral("file"), QDate(2026, 3, 2));
    EXPECT_EQ(c.open().cameIn(QStringLiteral("file")), QDate(2026, 3, 2));
    EXPECT_FALSE(c.open().cameIn(QStringLiteral("another file")));
    EXPECT_FALSE(c.open("other.steelyard").cameIn(QStringLiteral("file")));
}

TEST(ImportMemory, ForgetsTheOldestBeyondAFewHundred)
{
    MemoryCase c;
    ImportMemory memory = c.open();
    for (int i = 0; i < 400; ++i) memory.bringsIn(QString::number(i), QDate(2026, 3, 2));
    EXPECT_FALSE(memory.cameIn(QStringLiteral("0")));
    EXPECT_TRUE(memory.cameIn(QStringLiteral("399")));
}

TEST(ImportMemory, LivesWithoutSettingsAsLongAsItself)
{
    ImportMemory memory(nullptr, {});
    memory.keep(QStringLiteral("a"), "b");
    EXPECT_EQ(memory.kept(QStringLiteral("a")), "b");
}

}  // namespace
}  // namespace steelyard
