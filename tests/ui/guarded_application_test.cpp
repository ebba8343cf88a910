#include "ui/shell/guarded_application.h"

#include "tests/support/shell_book.h"
#include "ui/shell/privacy_deeds.h"

#include <QtCore/QTimer>

#include <stdexcept>

namespace steelyard {
namespace {

class LastNet : public testing::Test {
protected:
    LastNet()
    {
        app()->setCaught([this](const QString& kind) { kinds << kind; });
    }
    ~LastNet() override { app()->setCaught({}); }
    static GuardedApplication* app() { return qobject_cast<GuardedApplication*>(qApp); }
    QStringList kinds;
};

TEST_F(LastNet, CatchesWhatASlotThrowsNamesItsKindAndGoesOn)
{
    QTimer::singleShot(0, qApp, [] { throw std::runtime_error("Zorblatt Quibblewick hurts"); });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !kinds.isEmpty(); }));
    EXPECT_EQ(kinds, QStringList{QStringLiteral("std::runtime_error")});
    bool goesOn = false;
    QTimer::singleShot(0, qApp, [] { throw 7; });
    QTimer::singleShot(1, qApp, [&] { goesOn = true; });
    ASSERT_TRUE(QTest::qWaitFor([&] { return goesOn; }));
    EXPECT_EQ(kinds.size(), 2);
}

TEST_F(LastNet, LeavesWhatWasStoredBeforeWhereItWas)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    const auto window = shell.open();
    QTimer::singleShot(0, window.get(), [&] {
        Athlete added;
        added.name = QStringLiteral("Cass Thorne");
        ASSERT_TRUE(window->book()->history().perform(addAthlete(added)));
        throw std::logic_error("after the edit");
    });
    ASSERT_TRUE(QTest::qWaitFor([&] { return !kinds.isEmpty(); }));
    EXPECT_EQ(window->book()->athletes().all()->size(), 2U);
    window->action(QStringLiteral("edit.undo"))->trigger();
    EXPECT_EQ(window->book()->athletes().all()->size(), 1U);
}

TEST(DiagnosisFile, IsWrittenWhereTheCoachChoosesAndOnlyThen)
{
    ShellBook shell({QStringLiteral("Bo Marrow")});
    MainWindow window(
        {.reviewer = reviewByHand,
         .diagnose = [](Book* book,
                        const QSettings&) { return book ? QStringLiteral("with") : QStringLiteral("without"); }},
        shell.prompter, shell.clock, shell.settings);
    window.perform(QStringLiteral("help.diagnosis"));
    shell.prompter.path = shell.folder.filePath(QStringLiteral("diagnosis.txt"));
    window.perform(QStringLiteral("help.diagnosis"));
    QFile written(shell.prompter.path);
    ASSERT_TRUE(written.open(QIODevice::ReadOnly));
    EXPECT_EQ(written.readAll(), QByteArray("without"));
}

}  // namespace
}  // namespace steelyard
