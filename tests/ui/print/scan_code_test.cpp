#include "ui/print/scan_code.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

// ISO/IEC 18004: version 1 is 21 modules wide; with level Q it holds 16 characters of the alphanumeric set.
TEST(ScanCode, TheNumberOfASheetIsTheSmallestSquare)
{
    const auto code = makeScanCode(QStringLiteral("04HTQK-1DBM4"));
    ASSERT_TRUE(code);
    EXPECT_EQ(code->size, 21);
    EXPECT_EQ(code->dark.size(), 21U * 21U);
}

// ISO/IEC 18004, finder pattern: a dark 7 x 7 ring, a light one, and a dark 3 x 3 core in three corners.
TEST(ScanCode, HasItsFinderPatternsInThreeCorners)
{
    const auto code = makeScanCode(QStringLiteral("04HTQK-1DBM4"));
    ASSERT_TRUE(code);
    for (const auto& [top, left] : {std::pair(0, 0), {0, 14}, {14, 0}})
        for (int row = 0; row < 7; ++row)
            for (int column = 0; column < 7; ++column) {
                const int ring = std::max(std::abs(row - 3), std::abs(column - 3));
                EXPECT_EQ(code->isDark(top + row, left + column), ring != 2) << row << ' ' << column;
            }
}

TEST(ScanCode, NothingAndTooMuchMakeNone)
{
    EXPECT_FALSE(makeScanCode(QString()));
    EXPECT_FALSE(makeScanCode(QString(5000, QLatin1Char('A'))));
}

}  // namespace
}  // namespace steelyard
