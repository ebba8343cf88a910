#include "ui/pages/lifter/why_view.h"

#include "tests/support/log_builder.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/lifter_reading.h"
#include "ui/pages/lifter/line_numbers.h"
#include "ui/pages/lifter/why_words.h"

#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QSignalSpy>
#include <QtCore/QLocale>
#include <QtWidgets/QLabel>
#include <QtWidgets/QTableView>

#include <gtest/gtest.h>

#include <cmath>

namespace steelyard {
namespace {

using testing_support::LogBuilder;
using testing_support::MadeSet;

const QDate kWhyDay(2026, 11, 20);

LifterReading readingOfLog(const LogBuilder& builder)
{
    return readLines(builder.build(), {}, {}, kWhyDay, Progress()).value();
}

// Steady work with a warm-up and a slip of the pen in its newest session.
LogBuilder mixedSets()
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl"));
    builder.exposures(16, kWhyDay.addDays(-4), 4,
                      [](int i) { return MadeSet{.load = i % 2 == 0 ? 40.5 : 39.5, .reps = 8, .off = 0, .rir = 1}; });
    return builder.exposure(kWhyDay, {{.load = 20, .reps = 8, .kind = SetKind::WarmUp},
                                      {.load = 40, .reps = 8, .off = 0, .rir = 0},
                                      {.load = 400, .reps = 8, .off = 0, .rir = 1},
                                      {.load = 40, .reps = 8, .off = 1, .rir = 6}});
}

QString cell(const WhyModel& model, int row, int column)
{
    return model.index(row, column).data().toString();
}

TEST(WhyModel, KeepsTheRulesOfItemModelsAndListsTheNewestSessionFirst)
{
    const LifterReading lifter = readingOfLog(mixedSets());
    WhyModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    EXPECT_EQ(model.rowCount(), 0);
    model.setExplanation(explainLineOf(lifter, 0));
    ASSERT_EQ(model.rowCount(), 16 + 5);  // one row a session of one set; four sets and what they say together
    EXPECT_EQ(cell(model, 0, WhyModel::DateColumn), format::dayMonth(kWhyDay));
    EXPECT_TRUE(cell(model, 0, WhyModel::SetColumn).startsWith(u'2'));  // of four; a warm-up and a slip aren't heard
    EXPECT_TRUE(model.isTogether(0));
    EXPECT_FALSE(model.isTogether(1));
    EXPECT_EQ(cell(model, 1, WhyModel::DateColumn), QString());  // said once
    EXPECT_EQ(model.index(1, WhyModel::DateColumn).data(Qt::AccessibleTextRole).toString(), format::date(kWhyDay));
    EXPECT_EQ(cell(model, 5, WhyModel::DateColumn), format::dayMonth(kWhyDay.addDays(-4)));
    EXPECT_EQ(model.exposureAt(0), 16);
    EXPECT_EQ(model.exposureAt(5), 15);
    EXPECT_EQ(model.rowOfExposure(16), 0);
    EXPECT_EQ(model.rowOfExposure(99), -1);
}

TEST(WhyModel, SaysHowEachSetWasHeardAndHowFullyItCounted)
{
    const LifterReading lifter = readingOfLog(mixedSets());
    WhyModel model;
    model.setExplanation(explainLineOf(lifter, 0));
    EXPECT_EQ(cell(model, 1, WhyModel::HeardColumn), QStringLiteral("warm-up"));
    EXPECT_EQ(cell(model, 1, WhyModel::CountedColumn), QStringLiteral("not"));
    EXPECT_EQ(cell(model, 1, WhyModel::SpeaksColumn), QString());
    EXPECT_EQ(cell(model, 2, WhyModel::SetColumn),
              format::load(lifter.log.lines[0].exposures[16].sets[1].set.load) + QStringLiteral(" × 8, RIR 0"));
    EXPECT_EQ(cell(model, 2, WhyModel::HeardColumn), QStringLiteral("exactly"));
    EXPECT_EQ(cell(model, 2, WhyModel::CountedColumn), QStringLiteral("fully"));
    EXPECT_EQ(cell(model, 2, WhyModel::ReachedColumn), format::number(8.5, 1));
    EXPECT_EQ(cell(model, 3, WhyModel::HeardColumn), QStringLiteral("a slip?"));
    EXPECT_EQ(cell(model, 3, WhyModel::CountedColumn), QStringLiteral("not"));
    EXPECT_EQ(cell(model, 3, WhyModel::SpeaksColumn), QString());
    EXPECT_EQ(cell(model, 4, WhyModel::HeardColumn), QStringLiteral("between"));
}

TEST(WhyModel, HasAWordForEveryColumnAndRightAlignsItsNumbers)
{
    WhyModel model;
    for (int column = 0; column < model.columnCount(); ++column)
        EXPECT_FALSE(model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty()) << column;
    for (const int column : {WhyModel::ExpectedColumn, WhyModel::ReachedColumn})
        EXPECT_TRUE(model.headerData(column, Qt::Horizontal, Qt::TextAlignmentRole).toInt() & Qt::AlignRight);
}

TEST(WhyWords, ShapeAndWordSayTheSameWhichWayASetSpeaks)
{
    EXPECT_EQ(pullWords(std::log(3)), QStringLiteral("◆◆ not rising, strongly"));
    EXPECT_EQ(pullWords(std::log(1.5)), QStringLiteral("◆ not rising, somewhat"));
    EXPECT_EQ(pullWords(-std::log(1.5)), QStringLiteral("▲ rising, somewhat"));
    EXPECT_EQ(pullWords(-std::log(1.1)), QStringLiteral("△ rising, hardly"));
    EXPECT_EQ(pullWords(0), QStringLiteral("neither"));
}

TEST(WhyWords, TheDecisionNamesTheChanceAndTheLimitItIsHeldAgainst)
{
    const VerdictThresholds limits;
    LineExplanation why;
    why.chances = RegimeChances{0.2, 0.7, 0.1};
    why.notRisingLimit = 0.7;
    LineReading reading;
    reading.verdict = Verdict::Stalled;
    reading.reason = QStringLiteral("no_rise");
    QString text = decisionWords(reading, why, limits);
    EXPECT_TRUE(text.contains(format::percent(0.8)) && text.contains(format::percent(0.7))) << text.toStdString();
    EXPECT_FALSE(text.contains(QStringLiteral("less for the word"))) << text.toStdString();
    why.chances = RegimeChances{0.35, 0.6, 0.05};  // said last week, so it needs ten points less
    text = decisionWords(reading, why, limits);
    EXPECT_TRUE(text.contains(QStringLiteral("less for the word"))) << text.toStdString();
    reading.verdict = Verdict::CantTell;
    reading.reason = QStringLiteral("too_few");
    text = decisionWords(reading, why, limits);
    EXPECT_TRUE(text.contains(QStringLiteral("before any chance"))) << text.toStdString();
    reading.reason = QStringLiteral("effort_unknown");
    text = decisionWords(reading, why, limits);
    EXPECT_TRUE(text.contains(format::percent(limits.sureWithoutEffort))) << text.toStdString();
    why.chances.reset();
    EXPECT_TRUE(decisionWords(reading, why, limits).contains(QStringLiteral("nothing to add up")));
}

TEST(WhyWords, DaysOfTheWeekAreNamedOnlyWhereTheyDiffer)
{
    LineExplanation why;
    EXPECT_TRUE(weekdayWords(why).isEmpty());
    why.weekdayShares = {0.021, 0.001, 0, -0.034, 0, 0, 0};
    const QString text = weekdayWords(why);
    const QLocale locale;
    EXPECT_TRUE(text.contains(locale.standaloneDayName(1, QLocale::ShortFormat) + QStringLiteral(" +2.1 %")))
        << text.toStdString();
    EXPECT_TRUE(text.contains(locale.standaloneDayName(4, QLocale::ShortFormat) + QStringLiteral(" −3.4 %")))
        << text.toStdString();
    EXPECT_FALSE(text.contains(locale.standaloneDayName(2, QLocale::ShortFormat))) << text.toStdString();
}

TEST(WhyView, SaysWhenTheLastWeeksHoldNoSet)
{
    LogBuilder builder;
    builder.line(QStringLiteral("Arm curl")).exposures(6, kWhyDay.addDays(-200), 4, [](int) {
        return MadeSet{.load = 40, .reps = 8, .off = 0, .rir = 1};
    });
    const LifterReading lifter = readingOfLog(builder);
    WhyView view;
    view.show();
    view.showExplanation(lifter.readings[0], explainLineOf(lifter, 0), lifter.engine->thresholds());
    EXPECT_EQ(view.table()->model()->rowCount(), 0);
    bool said = false;
    for (const QLabel* label : view.findChildren<QLabel*>())
        said = said || label->text().contains(QStringLiteral("No set of this line"));
    EXPECT_TRUE(said);
    view.lookAt(3);
    EXPECT_FALSE(view.table()->currentIndex().isValid());
}

TEST(WhyView, KeepsTheAnswerInSightInANarrowWindowAndBesideItsSetInAWideOne)
{
    const LifterReading lifter = readingOfLog(mixedSets());
    WhyView view;
    view.show();
    view.showExplanation(lifter.readings[0], explainLineOf(lifter, 0), lifter.engine->thresholds());
    const QTableView& table = *view.table();
    const auto endOf = [&](int column) { return table.columnViewportPosition(column) + table.columnWidth(column); };
    int others = 0;
    view.resize(2000, 300);
    for (int column = 0; column < WhyModel::SpeaksColumn; ++column)
        if (column != WhyModel::SetColumn) others += table.columnWidth(column);
    const int setWidth = table.columnWidth(WhyModel::SetColumn);
    EXPECT_LT(endOf(WhyModel::CountedColumn), 1000);
    const int answer = table.sizeHintForIndex(table.model()->index(0, WhyModel::SpeaksColumn)).width();
    view.resize(others + setWidth + answer, 300);  // too narrow by the scroll bar and what the answers need
    EXPECT_LT(table.columnWidth(WhyModel::SetColumn), setWidth);
    EXPECT_LE(endOf(WhyModel::SpeaksColumn), table.viewport()->width());
}

TEST(WhyView, TellsWhichSessionIsLookedAt)
{
    const LifterReading lifter = readingOfLog(mixedSets());
    WhyView view;
    view.showExplanation(lifter.readings[0], explainLineOf(lifter, 0), lifter.engine->thresholds());
    QSignalSpy looked(&view, &WhyView::sessionLookedAt);
    view.lookAt(12);
    ASSERT_EQ(looked.size(), 1);
    EXPECT_EQ(looked[0][0].toInt(), 12);
}

TEST(LineNumbers, SayTheLikeliestFirstAndInWords)
{
    LineReading reading;
    reading.rate = TrendRate{0.001, -0.001, 0.003, 0.21, 0.04};
    const auto numbers = lineNumbers(reading, MassUnit::kg);
    EXPECT_EQ(numbers[0].value, QStringLiteral("flat: about 8 in 10"));
    EXPECT_EQ(numbers[0].detail, QStringLiteral("rising: about 2 in 10"));
    EXPECT_EQ(numbers[0].note, QStringLiteral("falling: under 1 in 10"));
    EXPECT_EQ(chanceWords(0.97), QStringLiteral("over 9 in 10"));
}

TEST(LineNumbers, KeepThePlaceOfWhatTheRecordCannotCarry)
{
    const auto numbers = lineNumbers({}, MassUnit::kg);
    for (const LineNumber& number : numbers) {
        EXPECT_EQ(number.value, format::absent()) << number.title.toStdString();
        EXPECT_FALSE(number.title.isEmpty() || number.detail.isEmpty());
    }
}

TEST(LineNumbers, DateAStallWithItsRangeAndSayWhenItMayBeOlder)
{
    LineReading reading;
    reading.verdict = Verdict::Stalled;
    reading.since = QDate(2026, 10, 1);
    reading.sinceEarliest = QDate(2026, 9, 20);
    reading.sinceLatest = QDate(2026, 10, 9);
    LineNumber since = lineNumbers(reading, MassUnit::kg)[2];
    EXPECT_EQ(since.value, format::date(*reading.since));
    EXPECT_TRUE(since.detail.contains(format::dayMonth(*reading.sinceEarliest)));
    EXPECT_TRUE(since.detail.contains(format::dayMonth(*reading.sinceLatest)));
    reading.sinceEarliest.reset();
    since = lineNumbers(reading, MassUnit::kg)[2];
    EXPECT_EQ(since.detail, QStringLiteral("or before"));
}

}  // namespace
}  // namespace steelyard
