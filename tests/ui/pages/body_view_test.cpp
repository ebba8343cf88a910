#include "ui/pages/lifter/body_view.h"

#include "core/exchange/book_dump.h"
#include "tests/support/lifter_page_book.h"
#include "ui/charts/panels_chart.h"

#include <QtTest/QAbstractItemModelTester>
#include <QtTest/QTest>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QTableView>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using testing_support::must;

Measurement waistOn(QDate day, const char16_t* value, TapeUnit unit)
{
    return {day, BodyPlace::Waist, Decimal::parse(QStringView(value)).value(), unit};
}

struct BodyCase : testing_support::LifterPageBook {
    BodyCase()
    {
        club.addLine(QStringLiteral("Arm curl"), 3);
        open();
        EXPECT_TRUE(QTest::qWaitFor([this] { return !chart().spec().empty(); }, 10000));
        page->perform(QStringLiteral("lifter.body"));
        EXPECT_TRUE(view().isVisible());
    }
    [[nodiscard]] BodyView& view() const { return *page->findChild<BodyView*>(); }
    [[nodiscard]] QTableView& table() const { return *view().findChild<QTableView*>(); }
    [[nodiscard]] QLineEdit& value() const
    {
        for (auto* line : view().findChildren<QLineEdit*>())
            if (line->accessibleName() == u"Value") return *line;
        qFatal("no line to type into");
    }
    [[nodiscard]] QString cell(int row, int column) const
    {
        return table().model()->index(row, column).data().toString();
    }
    void type(int what, const QString& text)
    {
        view().findChild<QComboBox*>()->setCurrentIndex(what);
        value().selectAll();
        QTest::keyClicks(&value(), text);
        QTest::keyClick(&value(), Qt::Key_Return);
    }
    [[nodiscard]] bool hasRows(int rows) const
    {
        return QTest::qWaitFor([&] { return table().model()->rowCount() == rows; }, 10000);
    }
};

constexpr int kMassItem = 0;
constexpr int kWaistItem = 1 + static_cast<int>(BodyPlace::Waist);

TEST(BodyView, SaysWhatItIsForWhileNothingIsWrittenDown)
{
    BodyCase c;
    EXPECT_TRUE(c.says(QStringLiteral("Nothing is written down yet")));
    EXPECT_FALSE(c.page->canPerform(QStringLiteral("lifter.remove")));
    EXPECT_TRUE(c.page->canPerform(QStringLiteral("lifter.add")));
}

TEST(BodyView, KeepsMassAndTapeAsTheyWereTypedAndShowsTheirCourse)
{
    BodyCase c;
    const QByteArray before = must(dumpContent(c.club.book->database()));
    c.type(kMassItem, QStringLiteral("81,40"));
    ASSERT_TRUE(c.hasRows(1));
    EXPECT_EQ(must(c.club.book->athletes().bodyMass(*c.club.athlete))[0].mass.toString(), QStringLiteral("81.40 kg"));
    c.type(kWaistItem, QStringLiteral("33 in"));
    ASSERT_TRUE(c.hasRows(2));
    EXPECT_EQ(must(c.club.book->athletes().measurements(*c.club.athlete))[0].unit, TapeUnit::in);
    EXPECT_TRUE(c.says(QStringLiteral("waist 33")));
    EXPECT_EQ(c.view().findChild<PanelsChart*>()->spec().panels.size(), 2u);
    EXPECT_FALSE(c.view().table().rows.empty());
    ASSERT_TRUE(c.club.book->history().undo());
    ASSERT_TRUE(c.club.book->history().undo());
    EXPECT_EQ(must(dumpContent(c.club.book->database())), before);
    EXPECT_TRUE(c.hasRows(0));
}

TEST(BodyView, RefusesWhatCannotBeReadOrCannotBe)
{
    BodyCase c;
    c.type(kMassItem, QStringLiteral("heavy"));
    EXPECT_TRUE(c.says(QStringLiteral("“heavy” can’t be read as a mass")));
    c.type(kMassItem, QStringLiteral("8140"));
    EXPECT_TRUE(c.says(QStringLiteral("can’t be read as a mass")));
    c.type(kMassItem, QStringLiteral("814"));
    EXPECT_TRUE(c.says(QStringLiteral("between 20 and 400 kg")));
    c.type(kWaistItem, QStringLiteral("845"));
    EXPECT_TRUE(c.says(QStringLiteral("between 5 and 300 cm")));
    EXPECT_EQ(c.table().model()->rowCount(), 0);
}

TEST(BodyView, CorrectsAnEntryWithItsDayAndRemovesIt)
{
    BodyCase c;
    c.type(kWaistItem, QStringLiteral("84.5"));
    ASSERT_TRUE(c.hasRows(1));
    QTest::keyClick(&c.table(), Qt::Key_Return);
    EXPECT_EQ(c.value().text(), QStringLiteral("84.5 cm"));
    EXPECT_TRUE(c.says(QStringLiteral("Correcting waist")));
    c.view().findChild<QDateEdit*>()->setDate(QDate(2026, 11, 2));
    c.type(kWaistItem, QStringLiteral("83.5"));
    ASSERT_TRUE(QTest::qWaitFor([&] { return c.cell(0, BodyModel::Value).startsWith(QStringLiteral("83.5")); }, 10000));
    const auto measured = must(c.club.book->athletes().measurements(*c.club.athlete));
    EXPECT_EQ(measured, (std::vector{waistOn(QDate(2026, 11, 2), u"83.5", TapeUnit::cm)}));
    c.page->perform(QStringLiteral("lifter.remove"));
    EXPECT_TRUE(c.hasRows(0));
}

TEST(BodyView, EscapeLeavesACorrectionBeforeItLeavesTheView)
{
    BodyCase c;
    c.type(kMassItem, QStringLiteral("81.4"));
    ASSERT_TRUE(c.hasRows(1));
    c.page->perform(QStringLiteral("lifter.edit"));
    QTest::keyClick(&c.value(), Qt::Key_Escape);
    EXPECT_TRUE(c.view().isVisible());
    EXPECT_TRUE(c.value().text().isEmpty());
    QTest::keyClick(&c.value(), Qt::Key_Escape);
    EXPECT_TRUE(c.chart().isVisible());
}

TEST(BodyModel, SaysTheChangeSinceTheEntryBeforeOfTheSameKind)
{
    BodyModel model;
    const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
    const QDate day(2026, 11, 2);
    model.setRecord(
        {{{day.addDays(-7), Load::parseWithUnit(u"80 kg").value()}, {day, Load::parseWithUnit(u"81.5 kg").value()}},
         {waistOn(day.addDays(-7), u"85", TapeUnit::cm), waistOn(day, u"33", TapeUnit::in)}},
        MassUnit::kg);
    ASSERT_EQ(model.rowCount(), 4);
    EXPECT_NEAR(model.at(0)->change.value(), 1.5, 1e-9);
    EXPECT_NEAR(model.at(1)->change.value(), 33 * 2.54 - 85, 1e-9);
    EXPECT_FALSE(model.at(2)->change);
    EXPECT_EQ(model.rowOf(day, BodyPlace::Waist), 1);
    EXPECT_EQ(model.rowOf(day, BodyPlace::Calf), -1);
}

TEST(BodyModel, ReadsLengthsWithACommaAndWithTheirUnit)
{
    EXPECT_EQ(parseTape(QStringLiteral(" 84,5 cm"), TapeUnit::in)->unit, TapeUnit::cm);
    EXPECT_EQ(parseTape(QStringLiteral("33"), TapeUnit::in)->unit, TapeUnit::in);
    EXPECT_EQ(parseTape(QStringLiteral("84,50"), TapeUnit::cm)->value.toString(), QStringLiteral("84.50"));
    EXPECT_FALSE(parseTape(QStringLiteral("cm"), TapeUnit::cm));
    EXPECT_FALSE(parseTape(QStringLiteral("wide"), TapeUnit::cm));
}

}  // namespace
}  // namespace steelyard
