// The picture of the roster on the real window: keys only.
#include "ui/pages/week/roster_picture.h"

#include "core/edits/edits.h"
#include "tests/support/club_window.h"
#include "tests/support/temp_book.h"
#include "ui/format/format.h"
#include "ui/models/attention_words.h"
#include "ui/models/roster_model.h"
#include "ui/models/spark_painter.h"
#include "ui/pages/lifter/lifter_reading.h"
#include "ui/pages/week/roster_courses.h"
#include "ui/pages/week/roster_picture_delegate.h"
#include "ui/pages/week/roster_picture_model.h"
#include "ui/shell/theme.h"

#include <QtCore/QFileInfo>
#include <QtGui/QAction>
#include <QtGui/QClipboard>
#include <QtGui/QGuiApplication>
#include <QtGui/QImage>
#include <QtGui/QPainter>
#include <QtTest/QAbstractItemModelTester>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QTableView>

#include <algorithm>

namespace steelyard {
namespace {

class PictureOfTheRoster : public testing_support::ClubWindow {
protected:
    PictureOfTheRoster() : ClubWindow({.athletes = 12, .years = 1, .seed = 4}) {}

    void SetUp() override
    {
        ClubWindow::SetUp();
        press(Qt::Key_R);
    }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier)
    {
        ClubWindow::press(key, modifiers);
        settle();
    }
    void type(const QString& text) { QTest::keyClicks(window.focusWidget(), text); }

    [[nodiscard]] QTableView& table() const
    {
        return *window.view()->findChild<RosterPicture*>()->findChild<QTableView*>();
    }
    [[nodiscard]] bool isShown() const { return window.view()->findChild<RosterPicture*>()->isVisible(); }
    [[nodiscard]] const AthleteReview& at(int row) const
    {
        return *table().model()->index(row, 0).data(RosterPictureModel::ReviewRole).value<const AthleteReview*>();
    }
    [[nodiscard]] QStringList names() const
    {
        QStringList all;
        for (int row = 0; row < table().model()->rowCount(); ++row) all << at(row).name;
        return all;
    }
    [[nodiscard]] int currentRow() const { return table().currentIndex().row(); }
    [[nodiscard]] QComboBox& box(const QString& name) const
    {
        for (QComboBox* each : window.view()->findChild<RosterPicture*>()->findChildren<QComboBox*>())
            if (each->accessibleName() == name) return *each;
        qFatal("no box");
    }
};

TEST_F(PictureOfTheRoster, ShowsEverybodyWorstFirstAndGoesBackToTheSameLifter)
{
    ASSERT_TRUE(isShown());
    ASSERT_EQ(names().size(), 12);
    for (int row = 0; row < 12; ++row)
        EXPECT_EQ(at(row).athlete, window.reviews()->reviews()[static_cast<std::size_t>(row)].athlete);
    EXPECT_EQ(at(currentRow()).athlete, chosen());
    press(Qt::Key_Down);
    press(Qt::Key_Down);
    const Id<Athlete> third = chosen();
    EXPECT_EQ(at(currentRow()).athlete, third);
    press(Qt::Key_R);
    EXPECT_FALSE(isShown());
    EXPECT_EQ(chosen(), third);
    press(Qt::Key_R);
    EXPECT_EQ(at(currentRow()).athlete, third);
}

TEST_F(PictureOfTheRoster, OpensTheLifterWithEnterAndIsStillThereAfterwards)
{
    press(Qt::Key_Down);
    const Id<Athlete> second = chosen();
    press(Qt::Key_Return);
    EXPECT_EQ(window.view()->currentPage()->key(), QStringLiteral("lifter"));
    EXPECT_EQ(chosen(), second);
    press(Qt::Key_1, Qt::ControlModifier);
    EXPECT_TRUE(isShown());
    EXPECT_EQ(at(currentRow()).athlete, second);
    EXPECT_EQ(window.focusWidget(), &table());
}

TEST_F(PictureOfTheRoster, FollowsTheRosterWhenItGoesOn)
{
    press(Qt::Key_N);
    EXPECT_EQ(at(currentRow()).athlete, chosen());
    EXPECT_EQ(currentRow(), 1);
}

TEST_F(PictureOfTheRoster, DecidesNothingBehindTheCoach)
{
    ASSERT_FALSE(chosenReview().flags.empty());
    for (const char* action : {"week.act", "week.watch", "week.dismiss", "week.fine"})
        EXPECT_FALSE(window.action(QString::fromLatin1(action))->isEnabled()) << action;
    const auto before = window.book()->decisions().of(chosen())->size();
    press(Qt::Key_F);
    EXPECT_EQ(window.book()->decisions().of(chosen())->size(), before);
    press(Qt::Key_R);
    EXPECT_TRUE(window.action(QStringLiteral("week.act"))->isEnabled());
    EXPECT_FALSE(window.action(QStringLiteral("week.picture.copy"))->isEnabled());
}

TEST_F(PictureOfTheRoster, SortsByEveryColumnAndBack)
{
    const QStringList byAttention = names();
    for (int column = 0; column < table().model()->columnCount(); ++column) {
        const int sorted = (column + 2) % 6;  // the first press leaves attention
        press(Qt::Key_S);
        for (int row = 1; row < 12; ++row) {
            const auto value = [&](int of) {
                return table().model()->index(of, sorted).data(RosterPictureModel::SortRole);
            };
            if (sorted == 0)
                EXPECT_LE(value(row - 1).toString().localeAwareCompare(value(row).toString()), 0);
            else
                EXPECT_LE(value(row - 1).toDouble(), value(row).toDouble()) << sorted;
        }
    }
    EXPECT_EQ(names(), byAttention);
    press(Qt::Key_S, Qt::ShiftModifier);
    QStringList turned = byAttention;
    std::ranges::reverse(turned);
    EXPECT_EQ(names(), turned);
}

TEST_F(PictureOfTheRoster, KeepsTheChosenLifterWhileTheOrderChanges)
{
    press(Qt::Key_Down);
    const Id<Athlete> second = chosen();
    for (int i = 0; i < 6; ++i) {
        press(Qt::Key_S);
        EXPECT_EQ(at(currentRow()).athlete, second);
    }
    EXPECT_EQ(chosen(), second);
}

TEST_F(PictureOfTheRoster, FiltersByWordsAndShowsEverybodyAgain)
{
    const QString wanted = at(7).name;
    const Id<Athlete> before = chosen();
    press(Qt::Key_Slash);
    type(wanted);
    EXPECT_EQ(names(), QStringList{wanted});
    EXPECT_EQ(chosen(), before);  // nobody else is chosen before the coach goes to the rows
    press(Qt::Key_Return);
    EXPECT_EQ(window.focusWidget(), &table());
    EXPECT_EQ(at(currentRow()).name, wanted);
    EXPECT_EQ(chosenReview().name, wanted);
    press(Qt::Key_X);
    EXPECT_EQ(names().size(), 12);
    EXPECT_EQ(chosenReview().name, wanted);
}

TEST_F(PictureOfTheRoster, FiltersByAnOpenFlag)
{
    QComboBox& flags = box(QStringLiteral("any flag"));
    ASSERT_GT(flags.count(), 1);
    flags.setCurrentIndex(1);
    const QString rule = flags.currentData().toString();
    QStringList expected;
    for (const AthleteReview& review : window.reviews()->reviews())
        if (std::ranges::any_of(review.flags, [&](const Flag& flag) { return flag.rule == rule; }))
            expected << review.name;
    ASSERT_FALSE(expected.isEmpty());
    EXPECT_EQ(names(), expected);
}

TEST_F(PictureOfTheRoster, KeepsFiltersByNameAcrossARestart)
{
    press(Qt::Key_Slash);
    type(at(3).name);
    press(Qt::Key_Return);
    press(Qt::Key_S, Qt::ControlModifier);
    type(QStringLiteral("the one"));
    press(Qt::Key_Return);
    EXPECT_EQ(window.focusWidget(), &table());
    press(Qt::Key_F2);
    type(QStringLiteral("that one"));
    press(Qt::Key_Return);
    const QStringList filtered = names();

    ASSERT_TRUE(window.openBook(path));
    settle();
    press(Qt::Key_R);
    EXPECT_EQ(names().size(), 12);
    QComboBox& kept = box(QStringLiteral("kept filters"));
    EXPECT_EQ(kept.count(), 2);
    kept.setCurrentIndex(kept.findData(QStringLiteral("that one")));
    Q_EMIT kept.activated(kept.currentIndex());
    EXPECT_EQ(names(), filtered);
    EXPECT_EQ(window.focusWidget(), &table());
    ASSERT_TRUE(window.action(QStringLiteral("week.picture.delete"))->isEnabled());
    press(Qt::Key_Delete, Qt::ShiftModifier);
    EXPECT_EQ(kept.count(), 1);
    EXPECT_EQ(names(), filtered);
}

TEST_F(PictureOfTheRoster, CopiesWhatIsShownAsATable)
{
    press(Qt::Key_C);
    const QStringList rows = QGuiApplication::clipboard()->text().split(u'\n', Qt::SkipEmptyParts);
    ASSERT_EQ(rows.size(), 13);
    for (const QString& row : rows) EXPECT_EQ(row.count(u'\t'), 5) << qPrintable(row);
    EXPECT_TRUE(rows[1].startsWith(at(0).name));
    EXPECT_TRUE(rows[1].contains(format::verdictWord(at(0).lines.front().reading.verdict)));
}

TEST_F(PictureOfTheRoster, StoresTagsThatAreTypedAndFindsThemAndUndoes)
{
    const Id<Athlete> who = chosen();
    press(Qt::Key_T);
    type(QStringLiteral("juniors, back soon, Juniors"));
    press(Qt::Key_Return);
    const std::vector<QString> tags{QStringLiteral("juniors"), QStringLiteral("back soon")};
    EXPECT_EQ(window.book()->athletes().find(who)->value.tags, tags);
    EXPECT_EQ(window.reviews()->find(who)->tags, tags);
    QComboBox& box = this->box(QStringLiteral("any tag"));
    box.setCurrentIndex(box.findData(QStringLiteral("back soon")));
    ASSERT_EQ(names().size(), 1);
    EXPECT_EQ(at(0).athlete, who);
    press(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_TRUE(window.book()->athletes().find(who)->value.tags.empty());
}

TEST_F(PictureOfTheRoster, SaysBesideTheLineWhatIsWrongWithATag)
{
    press(Qt::Key_T);
    type(QString(41, u'x'));
    press(Qt::Key_Return);
    EXPECT_TRUE(window.book()->athletes().find(chosen())->value.tags.empty());
    EXPECT_NE(window.focusWidget(), &table());  // the line stays
    press(Qt::Key_Escape);
    EXPECT_EQ(window.focusWidget(), &table());
}

TEST_F(PictureOfTheRoster, SavesTheReviewOfThoseItShowsAndOfEverybodyWithoutIt)
{
    prompter.path = dir.path(u"review.pdf");
    ASSERT_TRUE(window.action(QStringLiteral("week.pdf"))->isEnabled());
    press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    const qint64 whole = QFileInfo(prompter.path).size();
    EXPECT_GT(whole, 0);
    press(Qt::Key_Slash);
    type(at(0).name);
    press(Qt::Key_Return);
    press(Qt::Key_P, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_LT(QFileInfo(prompter.path).size(), whole);
    press(Qt::Key_R);
    prompter.agree = true;  // without a printer the PDF is offered
    press(Qt::Key_P, Qt::ControlModifier);
    EXPECT_TRUE(prompter.asked.contains(QStringLiteral("No printer is set up on this machine.")));
    EXPECT_EQ(prompter.errors, QStringList());
}

TEST_F(PictureOfTheRoster, SaysWhySomebodyStandsWhereTheyStand)
{
    const QString words = attentionWords(at(0), clock.today());
    const QString tip = table().model()->index(0, 1).data(Qt::ToolTipRole).toString();
    EXPECT_TRUE(tip.contains(words.section(u'\n', 0, 0).toHtmlEscaped())) << qPrintable(tip);
    const RosterModel roster(*window.book(), *window.reviews());
    const QString inPane = roster.index(*roster.rowOf(at(0).athlete)).data(Qt::ToolTipRole).toString();
    EXPECT_TRUE(inPane.contains(words.section(u'\n', -1).toHtmlEscaped())) << qPrintable(inPane);
}

TEST_F(PictureOfTheRoster, KeepsTheRulesOfItemModels)
{
    RosterPictureModel model(*window.reviews());
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.readReviews();
    EXPECT_EQ(model.rowCount(), 12);
}

TEST_F(PictureOfTheRoster, HasTheWayOfEveryLineAsTheLiftersPageHasIt)
{
    const auto* courses = window.view()->findChild<RosterCourses*>();
    const auto* way = &at(0).lines.front();
    for (const LineReview& line : at(0).lines)
        if (line.reading.points.size() > way->reading.points.size()) way = &line;
    const auto known = courses->of(at(0).athlete, way->id);
    ASSERT_GT(known.size(), 4U);
    EXPECT_LE(known.size(), 2 * kMostSparkPoints);
    const LifterReading page =
        test::must(readLifter(window.book()->path(), at(0).athlete, window.reviews()->asOf(), {}));
    const auto line = std::ranges::find(page.log.lines, way->id, &LineRecord::id);
    const auto& whole = page.readings[static_cast<std::size_t>(line - page.log.lines.begin())].trend;
    EXPECT_TRUE(std::ranges::equal(known, std::span(whole).last(known.size())));
    EXPECT_EQ(known.back().date, way->reading.points.back().date);
}

TEST_F(PictureOfTheRoster, ReadsTheWayAnewOfWhoIsWorkedOn)
{
    const auto* courses = window.view()->findChild<RosterCourses*>();
    const Id<Athlete> first = at(0).athlete;
    const Id<LiftLine> line = at(0).lines.front().id;
    const std::size_t before = courses->of(first, line).size();
    ASSERT_GT(before, 0U);
    const Id<Athlete> other = at(1).athlete;
    const Id<LiftLine> othersLine = at(1).lines.front().id;
    const auto* untouched = courses->of(other, othersLine).data();
    ASSERT_TRUE(
        window.book()->history().perform(recordBodyMass(first, {QDate(2026, 1, 1), *Load::parseWithUnit(u"80 kg")})));
    settle();
    EXPECT_EQ(courses->of(first, line).size(), before);
    EXPECT_EQ(courses->of(other, othersLine).data(), untouched) << "nobody else was read again";
}

TEST_F(PictureOfTheRoster, PaintsOnlyInsideItsCells)
{
    AthleteReview review = at(0);
    for (LineReview& line : review.lines) line.exercise = QString(200, u'W');
    for (WeeklyMuscleSets& sets : review.summary.muscles) sets.name = QString(200, u'W');
    const QFont font = table().font();
    const std::vector<TrendPoint> course{{review.lines[0].reading.points.front().date, 20, 1, 400},
                                         {review.lines[0].reading.points.back().date, 25, 2, 500}};
    const auto paintLines = [&](QPainter& painter, const QRect& cell, const AthleteReview& shown, const CellInk& ink) {
        paintMainLines(painter, cell, shown, ink, [&](const LineReview&) { return course; });
    };
    for (const int width : {60, 200, 900})
        for (const RosterPictureDelegate::CellPainter& paint :
             {RosterPictureDelegate::CellPainter(paintLines), RosterPictureDelegate::CellPainter(paintWeeklySets),
              RosterPictureDelegate::CellPainter(paintSessions)}) {
            const QRect cell(20, 20, width, pictureRowHeight(font));
            QImage image(width + 40, cell.height() + 40, QImage::Format_RGB32);
            image.fill(Qt::white);
            QPainter painter(&image);
            paint(painter, cell, review, cellInk(font, themePalette(false), false));
            painter.end();
            bool inside = false;
            for (int y = 0; y < image.height(); ++y)
                for (int x = 0; x < image.width(); ++x) {
                    if (image.pixel(x, y) == QColor(Qt::white).rgb()) continue;
                    inside = true;
                    ASSERT_TRUE(cell.contains(x, y)) << x << ' ' << y << " of a cell " << width << " wide";
                }
            EXPECT_TRUE(inside) << width;
        }
}

}  // namespace
}  // namespace steelyard
