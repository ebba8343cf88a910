#include "ui/charts/trial_strip.h"

#include "ui/charts/trial_calendar.h"

#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtTest/QSignalSpy>
#include <QtTest/QTest>

#include <gtest/gtest.h>

#include <set>

namespace steelyard {
namespace {

const QDate kMonday(2027, 3, 1);
const std::vector<QString> kNames{QStringLiteral("supinated"), QStringLiteral("neutral")};

Trial madeTrial()
{
    Trial trial{.athlete = Id<Athlete>(1)};
    for (int i = 0; i < 2; ++i)
        trial.arms.push_back({.variant = Id<Variant>(1), .grip = Id<Grip>(i + 1), .standard = Id<RepStandard>(1)});
    for (int i = 0; i < 6; ++i)
        trial.days.push_back({.date = kMonday.addDays(3 * i), .block = i / 2, .arm = static_cast<std::size_t>(i % 2)});
    return trial;
}

TrialObservation seenOn(const Trial& trial, std::size_t day, std::optional<std::size_t> done)
{
    return {.day = day,
            .date = trial.days[day].date,
            .block = trial.days[day].block,
            .drawn = trial.days[day].arm,
            .done = done};
}

// Getting used done and done, then done, another arm, missed, to come.
std::vector<TrialCell> madeCells(Trial trial = madeTrial())
{
    TrialRecord record;
    record.observations = {seenOn(trial, 0, 0), seenOn(trial, 1, 1), seenOn(trial, 2, 0), seenOn(trial, 3, 0),
                           seenOn(trial, 4, {})};
    record.deviations.push_back({TrialDeviation::Missed, trial.days[4].date, 4, {}});
    return trialCells(trial, record, kNames, trial.days[5].date);
}

QImage paintedCell(const TrialCell& cell, bool dark)
{
    QImage image(28, 28, QImage::Format_RGB32);
    image.fill(themeColours(dark).ground);
    QPainter painter(&image);
    paintTrialCell(painter, QRectF(2, 2, 24, 24), cell, themeColours(dark));
    return image;
}

TEST(TrialCells, SayWhatBecameOfEverySession)
{
    const auto cells = madeCells();
    ASSERT_EQ(cells.size(), 6U);
    EXPECT_EQ(cells[0].block, 0);
    EXPECT_EQ(cells[2].state, TrialCellState::Done);
    EXPECT_EQ(cells[3].state, TrialCellState::OtherArm);
    EXPECT_EQ(cells[3].letter(), QStringLiteral("A")) << "what was done, where B was drawn";
    EXPECT_EQ(cells[4].state, TrialCellState::Missed);
    EXPECT_EQ(cells[5].state, TrialCellState::ToCome);
    EXPECT_TRUE(cells[5].isToday);
    EXPECT_TRUE(cells[2].words.contains(QStringLiteral("A (supinated)"))) << qPrintable(cells[2].words);
    EXPECT_TRUE(cells[0].words.contains(QStringLiteral("doesn’t count")));
}

TEST(TrialCells, OfATrialThatEndedAreNotToComeAnyMore)
{
    Trial trial = madeTrial();
    trial.ending = TrialEnding{.date = trial.days[4].date};
    EXPECT_EQ(madeCells(trial)[5].state, TrialCellState::NeverHeld);
}

TEST(TrialCells, LookDifferentInEveryStateWithoutColour)
{
    for (const bool dark : {false, true}) {
        std::set<QByteArray> looks;
        auto cells = madeCells();
        cells.push_back(cells[5]);
        cells.back().state = TrialCellState::NeverHeld;
        for (std::size_t i : {0, 2, 3, 4, 5, 6}) {
            cells[i].arm = 0;
            if (cells[i].state != TrialCellState::OtherArm && cells[i].done) cells[i].done = 0;
            const QImage grey = paintedCell(cells[i], dark).convertToFormat(QImage::Format_Grayscale8);
            looks.insert(QByteArray(reinterpret_cast<const char*>(grey.constBits()), grey.sizeInBytes()));
        }
        EXPECT_EQ(looks.size(), 6U) << (dark ? "dark" : "light");
    }
}

TEST(TrialStrip, StepsByKeysAndSaysTheSessionToAScreenReader)
{
    TrialStrip strip;
    strip.resize(600, 80);
    strip.setCells(madeCells(), 5);
    EXPECT_EQ(strip.chosen(), 5);
    QSignalSpy chosen(&strip, &TrialStrip::cellChosen);
    QTest::keyClick(&strip, Qt::Key_Left);
    EXPECT_EQ(strip.chosen(), 4);
    EXPECT_TRUE(strip.accessibleDescription().contains(QStringLiteral("missed")));
    QTest::keyClick(&strip, Qt::Key_Home);
    EXPECT_EQ(strip.chosen(), 0);
    QTest::keyClick(&strip, Qt::Key_End);
    EXPECT_EQ(strip.chosen(), 5);
    EXPECT_EQ(chosen.size(), 3);
    QSignalSpy opened(&strip, &TrialStrip::cellOpened);
    QTest::keyClick(&strip, Qt::Key_Return);
    EXPECT_EQ(opened.size(), 1);
}

TEST(TrialStrip, KeepsABlockInOneRowAndEverythingInSight)
{
    Trial trial = madeTrial();
    trial.days.clear();
    for (int i = 0; i < 48; ++i)
        trial.days.push_back({.date = kMonday.addDays(i), .block = 1 + i / 4, .arm = static_cast<std::size_t>(i % 2)});
    TrialStrip strip;
    strip.resize(300, 80);
    strip.setCells(plannedCells(trial, kNames, kMonday));
    for (int i = 0; i < 48; ++i) {
        EXPECT_LE(strip.rectOf(i).right(), 300) << i;
        EXPECT_LE(strip.rectOf(i).bottom(), strip.height()) << i;
        EXPECT_TRUE(i % 4 == 0 || strip.rectOf(i).top() == strip.rectOf(i - 1).top()) << i;
    }
    EXPECT_GT(strip.rectOf(47).top(), strip.rectOf(0).top());
}

TEST(TrialStrip, SetsBlocksApart)
{
    TrialStrip strip;
    strip.resize(600, 80);
    strip.setCells(madeCells());
    const double within = strip.rectOf(3).left() - strip.rectOf(2).right();
    const double between = strip.rectOf(4).left() - strip.rectOf(3).right();
    EXPECT_GT(between, within);
}

TEST(TrialStrip, WithoutCellsIsSilent)
{
    TrialStrip strip;
    strip.setCells({});
    EXPECT_EQ(strip.chosen(), -1);
    QTest::keyClick(&strip, Qt::Key_Right);
    EXPECT_EQ(strip.accessibleDescription(), QString());
}

TEST(TrialCalendar, PutsADayIntoItsWeekAndWeekday)
{
    TrialCalendarPicture picture;
    picture.resize(400, 200);
    picture.setCells(plannedCells(madeTrial(), kNames, kMonday));
    const QRectF first = picture.rectOf(kMonday);
    EXPECT_EQ(picture.rectOf(kMonday.addDays(7)).top(), first.top());
    EXPECT_GT(picture.rectOf(kMonday.addDays(7)).left(), first.left());
    EXPECT_GT(picture.rectOf(kMonday.addDays(1)).top(), first.top());
    EXPECT_EQ(picture.rectOf(kMonday.addDays(1)).left(), first.left());
    EXPECT_TRUE(picture.rectOf(kMonday.addDays(-1)).isNull());
    EXPECT_TRUE(picture.accessibleDescription().contains(QStringLiteral("Session 6")));
}

}  // namespace
}  // namespace steelyard
