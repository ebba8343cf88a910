#include "core/base/lock_taking.h"

#include "tests/support/temp_dir.h"

#include <QtCore/QLockFile>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

TEST(TakenLock, ThatWasLeftWithoutAWordHoldsNobodyUp)
{
    const testing_support::TempDir dir;
    (void)dir.write(QStringLiteral(".lock"), QByteArray());
    QLockFile lock(dir.path(u".lock"));
    lock.setStaleLockTime(0);
    ASSERT_FALSE(lock.tryLock(0)) << "there would be nothing to mend";
    EXPECT_TRUE(takeLock(lock, 0));
}

TEST(TakenLock, OfSomebodyElseStays)
{
    const testing_support::TempDir dir;
    QLockFile first(dir.path(u".lock"));
    ASSERT_TRUE(first.tryLock(0));
    QLockFile second(dir.path(u".lock"));
    second.setStaleLockTime(0);
    EXPECT_FALSE(takeLock(second, 0));
    EXPECT_TRUE(first.isLocked());
}

}  // namespace
}  // namespace steelyard
