#include "ui/charts/progress_spec.h"

#include "tests/support/made_up_reading.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

struct SpecCase {
    LineReading reading;
    std::vector<Row<Block>> blocks;
    std::vector<Row<Decision>> decisions;
    ProgressOptions options{QLocale::c(), MassUnit::kg, {}, {}, 9, 5};

    [[nodiscard]] ProgressSpec build() const
    {
        return buildProgressSpec({reading, blocks, decisions, Id<LiftLine>(3), QStringLiteral("Arm curl")}, options);
    }
};

ReadingPoint pointOn(QDate day, int reps, double kg)
{
    ReadingPoint point;
    point.date = day;
    point.topLoad = *Load::parse(u"40", MassUnit::kg);
    point.countedReps = reps;
    point.workSets = 3;
    point.reps = reps * 3;
    point.watched = true;
    point.capacityKg = kg;
    return point;
}

TEST(ProgressSpec, TellsTheFourKindsOfSessionApart)
{
    SpecCase c;
    for (int i = 0; i < 4; ++i) c.reading.points.push_back(pointOn(QDate(2026, 3, 2).addDays(3 * i), 8, 50));
    c.reading.points[1].watched = false;
    c.reading.points[2].offStandard = true;
    c.reading.points[3].deload = true;
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.reps.points.size(), 4u);
    EXPECT_EQ(spec.reps.points[0].kind, PointKind::Standard);
    EXPECT_EQ(spec.reps.points[1].kind, PointKind::Unwatched);
    EXPECT_EQ(spec.reps.points[2].kind, PointKind::OffStandard);
    EXPECT_EQ(spec.reps.points[3].kind, PointKind::Deload);
}

TEST(ProgressSpec, JoinsOnlyComparableSessions)
{
    SpecCase c;
    for (int i = 0; i < 5; ++i) c.reading.points.push_back(pointOn(QDate(2026, 3, 2).addDays(3 * i), 8 + i, 50 + i));
    c.reading.points[1].offStandard = true;
    c.reading.points[3].deload = true;
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.capacity.runs.size(), 1u);
    ASSERT_EQ(spec.capacity.runs[0].size(), 3u);
    EXPECT_EQ(spec.capacity.runs[0][1].y(), 52);
}

TEST(ProgressSpec, BreaksTheLineAtAGapOfMoreThanSixteenDays)
{
    SpecCase c;
    c.reading.points = {pointOn(QDate(2026, 3, 2), 8, 50), pointOn(QDate(2026, 3, 18), 8, 51),
                        pointOn(QDate(2026, 4, 4), 8, 52)};  // 16 days, then 17
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.reps.runs.size(), 2u);
    EXPECT_EQ(spec.reps.runs[0].size(), 2u);
}

TEST(ProgressSpec, LeavesASessionWithoutAnEstimateOutOfTheCapacityPanelOnly)
{
    SpecCase c;
    c.reading.points = {pointOn(QDate(2026, 3, 2), 8, 50), pointOn(QDate(2026, 3, 5), 25, 50)};
    c.reading.points[1].capacityKg.reset();
    const ProgressSpec spec = c.build();
    EXPECT_EQ(spec.capacity.points.size(), 1u);
    EXPECT_EQ(spec.reps.points.size(), 2u);
}

TEST(ProgressSpec, DrawsTheBandOnlyWhereTheTrendWasFitted)
{
    SpecCase c;
    c.reading = madeUpReading(60);
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.trend.size(), 24u);
    ASSERT_EQ(spec.trendLow.size(), spec.trendHigh.size());
    EXPECT_EQ(spec.trend.front().x(), chartDay(c.reading.trend.front().date));
    EXPECT_GT(spec.trend.front().x(), chartDay(c.reading.points.front().date));
    for (std::size_t i = 0; i < spec.trend.size(); ++i) {
        EXPECT_LT(spec.trendLow[i].y(), spec.trend[i].y());
        EXPECT_GT(spec.trendHigh[i].y(), spec.trend[i].y());
    }
}

TEST(ProgressSpec, BreaksTheTrendWhereTheReadingLeftASessionOut)
{
    SpecCase c;
    c.reading = madeUpReading(60);
    ASSERT_EQ(c.build().trendStarts, std::vector<std::size_t>{0});
    c.reading.trend.erase(c.reading.trend.begin() + 10, c.reading.trend.begin() + 13);
    EXPECT_EQ(c.build().trendStarts, (std::vector<std::size_t>{0, 10}));
    c.reading.trend.clear();
    EXPECT_TRUE(c.build().trendStarts.empty());
}

TEST(ProgressSpec, DrawsTheNextSetBehindTheLastDayWithinTheAxis)
{
    SpecCase c;
    c.reading = madeUpReading(30);
    c.options.asOf = c.reading.points.back().date.addDays(4);
    c.reading.next->repsHigh80 = 19.5;
    const ProgressSpec spec = c.build();
    ASSERT_TRUE(spec.next);
    EXPECT_GT(spec.next->date, c.options.asOf);
    EXPECT_LT(spec.next->date, spec.to);
    EXPECT_EQ(spec.next->reps, c.reading.next->repsMedian);
    EXPECT_GE(spec.reps.axis.high, 19.5);
    EXPECT_LE(spec.reps.axis.low, spec.next->low80);
    EXPECT_TRUE(spec.next->label.isEmpty());  // the load that is written last
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("Next first set"))) << spec.summary.toStdString();
    c.options.nextSet = false;
    EXPECT_FALSE(c.build().next);
    c.options.nextSet = true;
    c.reading.next.reset();
    EXPECT_FALSE(c.build().next);
}

TEST(ProgressSpec, KeepsEveryPointAndEdgeWithinItsAxis)
{
    SpecCase c;
    for (const int sessions : {1, 2, 5, 40, 200}) {
        c.reading = madeUpReading(sessions);
        const ProgressSpec spec = c.build();
        for (const PanelSpec* panel : {&spec.capacity, &spec.reps})
            for (const ChartPoint& point : panel->points) {
                EXPECT_GE(point.value, panel->axis.low);
                EXPECT_LE(point.value, panel->axis.high);
                EXPECT_GT(point.date, spec.from);
                EXPECT_LT(point.date, spec.to);
            }
        for (const QPointF& edge : spec.trendHigh) EXPECT_LE(edge.y(), spec.capacity.axis.high);
    }
}

TEST(ProgressSpec, ASlipOfThePenDoesNotFlattenTheScale)
{
    SpecCase c;
    c.reading = madeUpReading(60);
    const ChartAxis before = c.build().capacity.axis;
    ReadingPoint& slip = c.reading.points[45];
    ASSERT_FALSE(slip.offStandard || slip.deload);
    slip.capacityKg = *slip.capacityKg * 10;
    const ProgressSpec spec = c.build();
    EXPECT_EQ(spec.capacity.axis, before);
    const auto at = std::ranges::find(spec.capacity.points, 45, &ChartPoint::exposure);
    ASSERT_NE(at, spec.capacity.points.end());
    EXPECT_EQ(at->beyond, Beyond::Above);
    EXPECT_EQ(at->value, *slip.capacityKg);
    EXPECT_EQ(at->label, QString::number(*slip.capacityKg, 'f', 1));
    EXPECT_EQ(spec.table.rows[45][8], at->label);
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("1 far beyond"))) << spec.summary.toStdString();
    for (const auto& run : spec.capacity.runs)
        for (const QPointF& joined : run) EXPECT_LE(joined.y(), spec.capacity.axis.high);
    for (const ChartPoint& point : spec.reps.points) EXPECT_EQ(point.beyond, Beyond::No);
}

TEST(ProgressSpec, AnHonestRiseOfFortyPercentKeepsEveryPointOnTheScale)
{
    SpecCase c;
    for (int i = 0; i <= 40; ++i)
        c.reading.points.push_back(pointOn(QDate(2026, 3, 2).addDays(3 * i), 8 + i / 8, 50 + i * 0.5));
    const ProgressSpec spec = c.build();
    EXPECT_GE(spec.capacity.axis.high, 70);
    for (const ChartPoint& point : spec.capacity.points) EXPECT_EQ(point.beyond, Beyond::No);
    EXPECT_FALSE(spec.summary.contains(QStringLiteral("beyond")));
}

TEST(ProgressSpec, NeverCutsTheTrendOrItsBand)
{
    SpecCase c;
    c.reading = madeUpReading(40);
    c.reading.trend.back().high90Kg = 400;
    EXPECT_GE(c.build().capacity.axis.high, 400);
}

TEST(ProgressSpec, SaysALoadOnceWhereItChanges)
{
    SpecCase c;
    for (int i = 0; i < 4; ++i) c.reading.points.push_back(pointOn(QDate(2026, 3, 2).addDays(3 * i), 8 + i, 50));
    c.reading.points[2].topLoad = *Load::parse(u"42.50", MassUnit::kg);
    c.reading.points[3].topLoad = *Load::parse(u"42.5", MassUnit::kg);
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.loads.size(), 2u);
    EXPECT_EQ(spec.loads[0].label, QStringLiteral("40"));
    EXPECT_EQ(spec.loads[1].label, QStringLiteral("42.5"));
    EXPECT_EQ(spec.loads[1].from, QDate(2026, 3, 8));
    EXPECT_EQ(spec.loads[1].topReps, 11);
}

TEST(ProgressSpec, ShowsPoundsToALifterWhoCountsInPounds)
{
    SpecCase c;
    c.reading.points = {pointOn(QDate(2026, 3, 2), 8, 45.359237)};
    c.options.unit = MassUnit::lb;
    const ProgressSpec spec = c.build();
    EXPECT_NEAR(spec.capacity.points[0].value, 100, 1e-9);
    EXPECT_EQ(spec.capacity.title, QStringLiteral("capacity, lb"));
    EXPECT_EQ(spec.loads[0].label, QStringLiteral("40 kg"));  // as it was typed
}

TEST(ProgressSpec, ClipsBlocksToTheTimeAxisAndMarksTheirDeloadWeeks)
{
    SpecCase c;
    c.reading = madeUpReading(30, QDate(2026, 3, 2));
    Block block{Id<Athlete>(1), QStringLiteral("Spring"), {}, QDate(2026, 2, 2), {}};
    block.weeks.resize(6);
    block.weeks[5].kind = WeekKind::Deload;
    c.blocks.push_back({Id<Block>(1), {}, block});
    Block past = block;
    past.start = QDate(2025, 1, 6);
    c.blocks.push_back({Id<Block>(2), {}, past});
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.blocks.size(), 2u);
    EXPECT_EQ(spec.blocks[0].from, spec.from);
    EXPECT_EQ(spec.blocks[0].to, QDate(2026, 3, 15));
    EXPECT_EQ(spec.blocks[0].label, QStringLiteral("Spring"));
    EXPECT_FALSE(spec.blocks[0].deload);
    EXPECT_EQ(spec.blocks[1].from, QDate(2026, 3, 9));
    EXPECT_TRUE(spec.blocks[1].deload);
}

TEST(ProgressSpec, TicksDecisionsOnThisLineAndOnTheLifterOnly)
{
    SpecCase c;
    c.reading = madeUpReading(30, QDate(2026, 3, 2));
    const auto decide = [&](std::optional<Id<LiftLine>> line, DecisionKind kind, const char* reason) {
        Decision decision{Id<Athlete>(1), line, QStringLiteral("stalled"), kind, QDate(2026, 3, 20), {}, {}, {}};
        decision.reason = QString::fromLatin1(reason);
        c.decisions.push_back({Id<Decision>(1), {}, decision});
    };
    decide(Id<LiftLine>(3), DecisionKind::Act, "");
    decide(Id<LiftLine>(4), DecisionKind::Act, "another line");
    decide(std::nullopt, DecisionKind::Dismiss, "exam week");
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.decisions.size(), 2u);
    EXPECT_EQ(spec.decisions[0].label, QStringLiteral("acted"));
    EXPECT_EQ(spec.decisions[1].label, QStringLiteral("dismissed: exam week"));
}

TEST(ProgressSpec, LeavesOutWhatCameBeforeTheStretchAskedFor)
{
    SpecCase c;
    c.reading = madeUpReading(60);
    c.options.from = c.reading.points[40].date;
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.reps.points.size(), 20u);
    EXPECT_EQ(spec.reps.points.front().exposure, 40);
}

TEST(ProgressSpec, OfNoSessionsIsEmptyAndSaysSo)
{
    const ProgressSpec spec = SpecCase{}.build();
    EXPECT_TRUE(spec.empty());
    EXPECT_TRUE(spec.dates.empty());
    EXPECT_TRUE(spec.table.rows.empty());
    EXPECT_TRUE(spec.summary.contains(QStringLiteral("no sessions")));
}

TEST(ProgressSpec, SummaryCountsWhatTheShapesShow)
{
    SpecCase c;
    for (int i = 0; i < 5; ++i) c.reading.points.push_back(pointOn(QDate(2026, 3, 2).addDays(3 * i), 8, 50));
    c.reading.points[1].offStandard = true;
    c.reading.points[2].offStandard = true;
    const QString summary = c.build().summary;
    EXPECT_TRUE(summary.contains(QStringLiteral("2 off standard"))) << summary.toStdString();
    EXPECT_FALSE(summary.contains(QStringLiteral("not watched"))) << summary.toStdString();
}

TEST(ProgressSpec, TableLeavesOffBlankWhenNobodyWatched)
{
    SpecCase c;
    c.reading.points = {pointOn(QDate(2026, 3, 2), 8, 50), pointOn(QDate(2026, 3, 5), 9, 51.26)};
    c.reading.points[0].watched = false;
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.table.rows.size(), 2u);
    EXPECT_EQ(spec.table.rows[0].size(), spec.table.header.size());
    EXPECT_EQ(spec.table.rows[0][7], QString());
    EXPECT_EQ(spec.table.rows[1][7], QStringLiteral("0"));
    EXPECT_EQ(spec.table.rows[1][8], QStringLiteral("51.3"));
}

TEST(ProgressSpec, CopiesAsTabSeparatedLinesWithAHeader)
{
    const ChartTable table{{QStringLiteral("a"), QStringLiteral("b")},
                           {{QStringLiteral("1\t2"), QStringLiteral("x\ny")}}};
    EXPECT_EQ(toTabSeparated(table), QStringLiteral("a\tb\n1 2\tx y\n"));
}

}  // namespace
}  // namespace steelyard
