#include "core/book/block_outlook.h"

#include "core/edits/edits.h"
#include "tests/support/log_builder.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using testing_support::madeEntry;

const QDate kToday(2026, 3, 2);

TEST(BlockOutlook, TheLoadsOfABlockComeFromTheBook)
{
    TempBook book(kToday);
    for (int i = 1; i <= 14; ++i)
        must(book->history().perform(
            addSet(book.line(), kToday.addDays(-4 * i), madeEntry({.load = 40, .reps = 10, .off = 0, .rir = 2}))));
    Slot slot{book.line().variant, book.line().grip, book.line().standard};
    slot.plannedRir = Decimal::parse(u"2");
    const Block block{book.athlete(),
                      QStringLiteral("Spring"),
                      {},
                      kToday,
                      {{WeekKind::Normal, {{kToday, {}, {slot}}, {kToday.addDays(2), {}, {slot}}}}}};
    auto reader = must(Database::openReader(book.path()));
    const BlockOutlook outlook = must(readBlockOutlook(*reader, {book.athlete(), block, kToday}));
    ASSERT_EQ(outlook.forecast.slotList.size(), 2u);
    ASSERT_EQ(outlook.changes.size(), 2u);
    EXPECT_EQ(outlook.changes[0].after.load.value().kilograms(), 40);
    const Block written = withLoads(block, outlook.changes);
    EXPECT_TRUE(must(readBlockOutlook(*reader, {book.athlete(), written, kToday})).changes.empty());
}

TEST(BlockOutlook, NobodyHasNoBlock)
{
    TempBook book(kToday);
    auto reader = must(Database::openReader(book.path()));
    const Block block{Id<Athlete>(99), QStringLiteral("Spring"), {}, kToday, {}};
    const auto outlook = readBlockOutlook(*reader, {Id<Athlete>(99), block, kToday});
    ASSERT_FALSE(outlook);
    EXPECT_EQ(outlook.error().code, ErrorCode::NotFound);
}

}  // namespace
}  // namespace steelyard
