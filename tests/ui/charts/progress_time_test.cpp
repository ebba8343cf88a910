#include "tests/support/progress_case.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::ProgressCase;

const QDate kFirst(2026, 3, 2);

ProgressCase onDays(std::initializer_list<int> days)
{
    ProgressCase c;
    for (const int day : days) c.session(kFirst.addDays(day), {{.load = 40, .reps = 8, .off = 0, .rir = 1}}, 50);
    return c;
}

TEST(ProgressTime, ABreakOfMoreThanSixteenDaysIsALayoffWithItsLength)
{
    ProgressCase c = onDays({0, 16, 33, 36});
    const auto layoffs = c.build().layoffs;
    ASSERT_EQ(layoffs.size(), 1u);  // 16 days are none
    EXPECT_EQ(layoffs[0].from, kFirst.addDays(17));
    EXPECT_EQ(layoffs[0].to, kFirst.addDays(32));
    EXPECT_TRUE(layoffs[0].label.startsWith(QStringLiteral("16 day"))) << layoffs[0].label.toStdString();
}

TEST(ProgressTime, ALayoffThatBeganBeforeTheStretchIsShownFromItsEdge)
{
    ProgressCase c = onDays({0, 60, 63});
    c.options.from = kFirst.addDays(50);
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.layoffs.size(), 1u);
    EXPECT_EQ(spec.layoffs[0].from, spec.from);
}

TEST(ProgressTime, PointingSaysTheWholeOfABlockAndOfADecision)
{
    ProgressCase c = onDays({0, 3, 6, 9});
    Block block{Id<Athlete>(1), QStringLiteral("Spring"), QStringLiteral("More arm work"), kFirst, {}};
    block.weeks.resize(2);
    block.weeks[1].kind = WeekKind::Deload;
    c.blocks.push_back({Id<Block>(1), {}, block});
    Decision decision{Id<Athlete>(1),
                      {},
                      QStringLiteral("stalled"),
                      DecisionKind::Dismiss,
                      kFirst.addDays(5),
                      {},
                      {},
                      QStringLiteral("exam week")};
    decision.said = QStringLiteral("No rise for six weeks.");
    c.decisions.push_back({Id<Decision>(1), {}, decision});
    const ProgressSpec spec = c.build();
    ASSERT_EQ(spec.blocks.size(), 2u);
    EXPECT_TRUE(spec.blocks[0].tip.contains(QStringLiteral("Spring")));
    EXPECT_TRUE(spec.blocks[0].tip.contains(QStringLiteral("More arm work")));
    EXPECT_TRUE(spec.blocks[1].tip.contains(QStringLiteral("Spring")));
    ASSERT_EQ(spec.decisions.size(), 1u);
    EXPECT_TRUE(spec.decisions[0].tip.contains(QStringLiteral("exam week")));
    EXPECT_TRUE(spec.decisions[0].tip.contains(QStringLiteral("No rise for six weeks.")));
}

TEST(ProgressReadout, SaysLoadRepsCapacityBandAndWhatWasExpected)
{
    ProgressCase c = onDays({0, 3});
    c.reading.trend.push_back({kFirst.addDays(3), 49.5, 47, 52});
    c.reading.surprises.push_back({kFirst.addDays(3), c.reading.points[1].topLoad, 8, 1.2, 0.5, true});
    const auto readouts = c.build().readouts;
    ASSERT_EQ(readouts.size(), 2u);
    const QString all = readouts[1].join(u'\n');
    for (const char* part :
         {"40 kg × 8", "capacity 50.0 kg", "known then 49.5 kg (90 %: 47.0 to 52.0)", "expected 6.8"})
        EXPECT_TRUE(all.contains(QString::fromUtf8(part))) << part << " in " << all.toStdString();
    EXPECT_FALSE(readouts[0].join(u'\n').contains(QStringLiteral("expected")));
}

TEST(ProgressTime, MarksTheSessionsOfATrialThatWereHeldOnThisLine)
{
    ProgressCase c = onDays({0, 3, 6, 9});
    AthleteLog made = c.log.build();
    const LineRecord& record = made.lines.front();
    Trial trial{.athlete = Id<Athlete>(1)};
    trial.question = QStringLiteral("Usual or neutral?");
    trial.arms = {{.variant = record.line.variant, .grip = record.line.grip, .standard = record.line.standard},
                  {.variant = record.line.variant, .grip = Id<Grip>(99), .standard = record.line.standard}};
    trial.days = {{.date = kFirst, .block = 0, .arm = 0},
                  {.date = kFirst.addDays(3), .block = 1, .arm = 1},
                  {.date = kFirst.addDays(6), .block = 1, .arm = 1, .armDone = 0},
                  {.date = kFirst.addDays(7), .block = 2, .arm = 0},
                  {.date = kFirst.addDays(9), .block = 2, .arm = 0, .missed = true}};
    const std::vector<Row<Trial>> trials{{Id<Trial>(1), {}, trial}};
    const ProgressSpec spec = buildProgressSpec(
        {c.reading, c.blocks, c.decisions, record.id, QStringLiteral("Arm curl"), &record, &trials}, c.options);
    ASSERT_EQ(spec.trials.size(), 2u)
        << "another line's session, one that was not held and one that was missed have none";
    EXPECT_EQ(spec.trials[0].letter, QStringLiteral("A"));
    EXPECT_FALSE(spec.trials[0].counts);
    EXPECT_EQ(spec.trials[1].date, kFirst.addDays(6));
    EXPECT_TRUE(spec.trials[1].counts);
    EXPECT_TRUE(spec.trials[1].tip.contains(QStringLiteral("Usual or neutral?")));
}

}  // namespace
}  // namespace steelyard
