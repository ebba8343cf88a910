#include "ui/charts/compare_spec.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QDate kFirst(2026, 3, 2);

ComparedLine lineFrom(const QString& name, int firstDay, std::vector<double> kilograms)
{
    ComparedLine line{name, {}};
    for (std::size_t i = 0; i < kilograms.size(); ++i)
        line.trend.push_back(
            {kFirst.addDays(firstDay + 7 * static_cast<qint64>(i)), kilograms[i], kilograms[i] - 1, kilograms[i] + 1});
    return line;
}

PanelsSpec specOf(const std::vector<ComparedLine>& lines, std::optional<QDate> start)
{
    return buildCompareSpec(lines, start, {.locale = QLocale::c()});
}

TEST(CompareSpec, PutsEveryLineAtAHundredWhereAllHaveBegun)
{
    const std::vector<ComparedLine> lines{lineFrom(QStringLiteral("wide"), 0, {40, 42, 44, 46}),
                                          lineFrom(QStringLiteral("narrow"), 14, {20, 21})};
    const auto start = commonStart(lines);
    ASSERT_EQ(start, kFirst.addDays(14));
    const PanelsSpec spec = specOf(lines, start);
    ASSERT_EQ(spec.panels[0].series.size(), 2u);
    // 46 of 44, and 21 of 20.
    EXPECT_NEAR(spec.panels[0].series[0].points.back().y, 100 * 46.0 / 44, 1e-9);
    EXPECT_NEAR(spec.panels[0].series[1].points.back().y, 105, 1e-9);
    EXPECT_NEAR(spec.panels[0].series[0].runs[0].front().y(), 100 * 40.0 / 44, 1e-9);
    EXPECT_NEAR(spec.panels[0].series[1].bandHigh[0].y(), 105, 1e-9);
}

TEST(CompareSpec, TakesWhatWasKnownLastBeforeTheStartUnlessThatIsLongAgo)
{
    ComparedLine line = lineFrom(QStringLiteral("one"), 0, {40});
    line.trend.push_back({kFirst.addDays(60), 50, 49, 51});
    // Ten days after: the 40. Fifty days after: the first one that follows.
    EXPECT_NEAR(specOf({line}, kFirst.addDays(10)).panels[0].series[0].points.back().y, 125, 1e-9);
    EXPECT_NEAR(specOf({line}, kFirst.addDays(50)).panels[0].series[0].points.back().y, 100, 1e-9);
}

TEST(CompareSpec, TellsLinesApartByMarkAndDashAndNamesThemDirectly)
{
    std::vector<ComparedLine> lines;
    for (int i = 0; i < 6; ++i) lines.push_back(lineFrom(QStringLiteral("line %1").arg(i), 0, {40, 41, 42.0 + i}));
    const auto spec = specOf(lines, kFirst);
    const auto& series = spec.panels[0].series;
    for (std::size_t i = 0; i < series.size(); ++i) {
        EXPECT_TRUE(series[i].direct);
        EXPECT_TRUE(series[i].name.contains(lines[i].name));
        for (std::size_t k = 0; k < i; ++k) EXPECT_NE(series[i].shape, series[k].shape);
    }
    EXPECT_NE(series[0].line, series[1].line);
}

TEST(CompareSpec, LeavesOutAndNamesWhatHasNoReference)
{
    const std::vector<ComparedLine> lines{lineFrom(QStringLiteral("fine"), 0, {40, 41}),
                                          lineFrom(QStringLiteral("helped"), 0, {-5, -4}),
                                          lineFrom(QStringLiteral("nothing"), 0, {})};
    const PanelsSpec spec = specOf(lines, kFirst);
    EXPECT_EQ(spec.panels[0].series.size(), 1u);
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("helped; nothing")));
    const PanelsSpec none = specOf({lines[1]}, kFirst);
    EXPECT_TRUE(none.empty());
    EXPECT_TRUE(none.summary.contains(QStringLiteral("helped")));
    EXPECT_FALSE(commonStart({lines[2]}));
    EXPECT_TRUE(specOf({lines[2]}, std::nullopt).empty());
}

TEST(CompareSpec, BeginsNoEarlierThanTheStretchThatIsShown)
{
    const std::vector<ComparedLine> lines{lineFrom(QStringLiteral("old"), 0, {40, 42, 44, 46})};
    EXPECT_EQ(commonStart(lines, kFirst.addDays(10)), kFirst.addDays(14));
}

TEST(CompareSpec, StopsAtEveryDayOfAnyLineAndSaysWhatEachWasThen)
{
    const std::vector<ComparedLine> lines{lineFrom(QStringLiteral("a"), 0, {40, 44}),
                                          lineFrom(QStringLiteral("b"), 3, {20, 21})};
    const PanelsSpec spec = specOf(lines, kFirst.addDays(3));
    ASSERT_EQ(spec.stops.size(), 4u);
    EXPECT_FALSE(spec.stops[0].words.contains(QStringLiteral("b:")));
    EXPECT_TRUE(spec.stops[3].words.contains(QStringLiteral("a: 110.0 %")));
    EXPECT_TRUE(spec.stops[3].words.contains(QStringLiteral("b: 105.0 %")));
    ASSERT_EQ(spec.table.rows.size(), 4u);
    EXPECT_EQ(spec.table.rows[0], (QStringList{QStringLiteral("2026-03-02"), QStringLiteral("100.0"), QString()}));
}

}  // namespace
}  // namespace steelyard
