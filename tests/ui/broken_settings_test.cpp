// Settings that are garbage, of a screen that is gone, or can't be written: the window is there, on a screen, and works.
#include "tests/support/shell_book.h"

#include <QtCore/QFile>
#include <QtGui/QScreen>

namespace steelyard {
namespace {

class BrokenSettings : public testing::Test {
protected:
    BrokenSettings() : m_shell({QStringLiteral("Bo Marrow")}) {}
    void openWith(QSettings& settings)
    {
        MainWindow window(MainServices{.reviewer = reviewByHand}, m_shell.prompter, m_shell.clock, settings);
        EXPECT_TRUE(window.openBook(m_shell.path()));
        window.show();
        EXPECT_TRUE(QTest::qWaitFor([&] { return window.isSettled(); }));
        const QRect screen = window.screen()->availableGeometry();
        EXPECT_TRUE(screen.intersects(window.frameGeometry()));
        EXPECT_GE(window.width(), 200);
        EXPECT_EQ(m_shell.prompter.errors, QStringList());
    }
    ShellBook m_shell;
};

TEST_F(BrokenSettings, ThatAreGarbageAreDefaults)
{
    const QString path = m_shell.folder.filePath(QStringLiteral("garbage.ini"));
    QFile file(path);
    ASSERT_TRUE(file.open(QIODevice::WriteOnly));
    file.write(
        "[window]\ngeometry=@ByteArray(\\x1\\xd9\\xd0\\xcb\\0\\x3garbage)\nroster=@Invalid()\n[books\nrecent=@Variant("
        "\\0\\0)\n\0\xff");
    file.write(QByteArray(5000, '\xfe'));
    file.close();
    QSettings settings(path, QSettings::IniFormat);
    openWith(settings);
}

TEST_F(BrokenSettings, OfAScreenThatIsGoneLeaveTheWindowInSight)
{
    QSettings settings(m_shell.folder.filePath(QStringLiteral("far.ini")), QSettings::IniFormat);
    QWidget far;
    far.setGeometry(90'000, 90'000, 800, 600);
    settings.setValue(QStringLiteral("window/geometry"), far.saveGeometry());
    openWith(settings);
}

TEST_F(BrokenSettings, ThatCanNotBeWrittenStopNothing)
{
    QSettings settings(QStringLiteral("/proc/no/such/place/settings.ini"), QSettings::IniFormat);
    settings.setValue(QStringLiteral("probe"), 1);
    settings.sync();
    ASSERT_NE(settings.status(), QSettings::NoError);
    openWith(settings);
}

}  // namespace
}  // namespace steelyard
