// Every rule lays itself out; what is set is stored, counts in the review, and can be taken back.
#include "ui/shell/rule_dialog.h"

#include "core/flags/registry.h"
#include "core/planning/progression_registry.h"
#include "core/planning/slot_load.h"
#include "tests/support/shell_book.h"
#include "tests/support/temp_book.h"

#include <QtGui/QAction>
#include <QtWidgets/QDoubleSpinBox>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>

namespace steelyard {
namespace {

class RuleDialogTest : public testing::Test {
protected:
    void SetUp() override
    {
        window->action(QStringLiteral("roster.rules"))->trigger();
        dialog = window->findChild<RuleDialog*>();
        ASSERT_NE(dialog, nullptr);
        list = dialog->findChild<QListWidget*>();
    }
    void choose(QStringView rule)
    {
        for (int row = 0; row < list->count(); ++row) {
            const QVariant entry = list->item(row)->data(Qt::UserRole);
            if (entry.isValid() && entries[entry.toULongLong()].rule->id() == rule) return list->setCurrentRow(row);
        }
        ADD_FAILURE() << "no row for " << qPrintable(rule.toString());
    }
    [[nodiscard]] QDoubleSpinBox* field(const QString& name) const { return dialog->findChild<QDoubleSpinBox*>(name); }
    [[nodiscard]] QPushButton* reset() const
    {
        for (auto* button : dialog->findChildren<QPushButton*>())
            if (button->text().contains(QStringLiteral("usual values"))) return button;
        return nullptr;
    }
    [[nodiscard]] RuleSettings stored() const { return test::must(window->book()->ruleSettings().all()); }
    [[nodiscard]] bool isMarked(QStringView rule)
    {
        choose(rule);
        return list->currentItem()->text().contains(u'•');
    }

    std::vector<RuleEntry> entries = adjustableRules();
    ShellBook shell{{QStringLiteral("Bo Marrow")}};
    std::unique_ptr<MainWindow> window = shell.open();
    RuleDialog* dialog = nullptr;
    QListWidget* list = nullptr;
};

TEST_F(RuleDialogTest, HasAFieldForEveryNumberOfEveryRule)
{
    ASSERT_EQ(entries.size(), flagRules().size() + progressionRules().size() + 1);
    ASSERT_EQ(list->count(), static_cast<int>(entries.size()) + 2) << "and a name for each group";
    for (const RuleEntry& entry : entries) {
        choose(entry.rule->id());
        for (const RuleParameter& parameter : entry.rule->parameters()) {
            const QDoubleSpinBox* spin = field(entry.rule->id() + u'.' + parameter.name);
            ASSERT_NE(spin, nullptr) << qPrintable(entry.rule->id() + u'.' + parameter.name);
            EXPECT_EQ(spin->value(), parameter.defaultValue) << qPrintable(spin->objectName());
            EXPECT_EQ(spin->minimum(), parameter.low) << qPrintable(spin->objectName());
            EXPECT_EQ(spin->maximum(), parameter.high) << qPrintable(spin->objectName());
        }
        EXPECT_FALSE(reset()->isEnabled()) << qPrintable(entry.rule->id());
    }
    EXPECT_TRUE(stored().empty());  // looking changes nothing
}

TEST_F(RuleDialogTest, StoresHowOftenATargetIsReachedAndASmallStep)
{
    choose(u"slot_load");
    EXPECT_EQ(field(QStringLiteral("slot_load.percent"))->value(), 75);
    field(QStringLiteral("slot_load.percent"))->setValue(90);
    EXPECT_EQ(RuleParameters(slotLoadNumbers(), stored()).whole(u"percent"), 90);
    EXPECT_TRUE(isMarked(u"slot_load"));
    const QString step = QString(findProgression(u"load_by_step")->parameters().front().name);
    choose(u"load_by_step");
    field(QStringLiteral("load_by_step.") + step)->setValue(1.25);
    EXPECT_EQ(RuleParameters(*findProgression(u"load_by_step"), stored()).value(step), 1.25);
    EXPECT_FALSE(isMarked(u"hold"));
    dialog->close();
    window->action(QStringLiteral("edit.undo"))->trigger();
    window->action(QStringLiteral("edit.undo"))->trigger();
    EXPECT_TRUE(stored().empty());
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

TEST_F(RuleDialogTest, WalksOverTheNamesOfTheGroups)
{
    list->setFocus();
    QTest::keyClick(list, Qt::Key_End);
    for (std::size_t up = 0; up + 1 < entries.size(); ++up) {
        EXPECT_TRUE(list->currentItem()->data(Qt::UserRole).isValid()) << list->currentRow();
        QTest::keyClick(list, Qt::Key_Up);
    }
    EXPECT_EQ(list->currentRow(), 1);
}

TEST_F(RuleDialogTest, StoresWhatIsSetAndUndoesIt)
{
    choose(u"deload_due");
    field(QStringLiteral("deload_due.weeks"))->setValue(9);
    EXPECT_EQ(stored().at({QStringLiteral("deload_due"), QStringLiteral("weeks")}), 9);
    EXPECT_TRUE(reset()->isEnabled());
    EXPECT_TRUE(isMarked(u"deload_due"));
    EXPECT_FALSE(isMarked(u"stalled"));
    dialog->close();
    window->action(QStringLiteral("edit.undo"))->trigger();
    EXPECT_TRUE(stored().empty());
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

TEST_F(RuleDialogTest, IsDoneByKeysAlone)
{
    choose(u"unwatched");
    list->setFocus();
    QTest::keyClick(list, Qt::Key_Tab);
    QDoubleSpinBox* spin = field(QStringLiteral("unwatched.sessions"));
    ASSERT_EQ(dialog->focusWidget(), spin);
    QTest::keyClick(spin, Qt::Key_Up);
    EXPECT_EQ(stored().at({QStringLiteral("unwatched"), QStringLiteral("sessions")}), 5);
    QTest::keyClick(spin, Qt::Key_Tab);
    EXPECT_EQ(dialog->focusWidget(), field(QStringLiteral("unwatched.worse")));
    QTest::keyClick(dialog->focusWidget(), Qt::Key_Tab);
    EXPECT_EQ(dialog->focusWidget(), reset());
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

TEST_F(RuleDialogTest, GoesBackToTheUsualValues)
{
    choose(u"deload_due");
    field(QStringLiteral("deload_due.weeks"))->setValue(9);
    field(QStringLiteral("deload_due.sore"))->setValue(8);
    reset()->click();
    EXPECT_EQ(field(QStringLiteral("deload_due.weeks"))->value(), 6);
    EXPECT_EQ(field(QStringLiteral("deload_due.sore"))->value(), 6);
    EXPECT_FALSE(reset()->isEnabled());
    EXPECT_FALSE(isMarked(u"deload_due"));
    EXPECT_EQ(RuleParameters(*findRule(u"deload_due"), stored()).whole(u"weeks"), 6);
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

}  // namespace
}  // namespace steelyard
