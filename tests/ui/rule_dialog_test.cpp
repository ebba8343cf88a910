// Every rule lays itself out; what is set is stored, counts in the review, and can be taken back.
#include "ui/shell/rule_dialog.h"

#include "core/flags/registry.h"
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
        const auto rules = flagRules();
        const auto at = std::ranges::find_if(rules, [&](const FlagRule* one) { return one->id() == rule; });
        list->setCurrentRow(static_cast<int>(at - rules.begin()));
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

    ShellBook shell{{QStringLiteral("Bo Marrow")}};
    std::unique_ptr<MainWindow> window = shell.open();
    RuleDialog* dialog = nullptr;
    QListWidget* list = nullptr;
};

TEST_F(RuleDialogTest, HasAFieldForEveryThresholdOfEveryRule)
{
    ASSERT_EQ(list->count(), static_cast<int>(flagRules().size()));
    for (const FlagRule* rule : flagRules()) {
        choose(rule->id());
        for (const RuleParameter& parameter : rule->parameters()) {
            const QDoubleSpinBox* spin = field(rule->id() + u'.' + parameter.name);
            ASSERT_NE(spin, nullptr) << qPrintable(rule->id() + u'.' + parameter.name);
            EXPECT_EQ(spin->value(), parameter.defaultValue) << qPrintable(spin->objectName());
            EXPECT_EQ(spin->minimum(), parameter.low) << qPrintable(spin->objectName());
            EXPECT_EQ(spin->maximum(), parameter.high) << qPrintable(spin->objectName());
        }
        EXPECT_FALSE(reset()->isEnabled()) << qPrintable(rule->id());
    }
    EXPECT_TRUE(stored().empty());  // looking changes nothing
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
