// How soon a stall is said: chosen in the menu, kept in the book, undone like any edit.
#include "core/flags/reading_thresholds.h"
#include "tests/support/shell_book.h"
#include "tests/support/temp_book.h"

#include <QtGui/QAction>

namespace steelyard {
namespace {

QStringList checkedChoices(const MainWindow& window)
{
    QStringList checked;
    for (const CautionAction& row : kCautionActions)
        if (window.action(QString::fromLatin1(row.id))->isChecked()) checked << QString::fromLatin1(row.id);
    return checked;
}

TEST(CautionChoice, IsKeptInTheBookAndUndone)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto window = shell.open();
    EXPECT_EQ(checkedChoices(*window), QStringList{QStringLiteral("roster.usual")});
    window->action(QStringLiteral("roster.surer"))->trigger();
    EXPECT_EQ(checkedChoices(*window), QStringList{QStringLiteral("roster.surer")});
    const auto settings = test::must(window->book()->ruleSettings().all());
    EXPECT_EQ(readingThresholds(settings).caution, Caution::Surer);
    window->action(QStringLiteral("edit.undo"))->trigger();
    EXPECT_EQ(checkedChoices(*window), QStringList{QStringLiteral("roster.usual")});
    EXPECT_TRUE(QTest::qWaitFor([&] { return window->isSettled(); }));
}

}  // namespace
}  // namespace steelyard
