// The system's keychain as it is met in the wild: none, one that hears and never answers, one that is locked, and a real
// Secret Service, each on a session bus of its own with a home of its own.
#include "tests/support/temp_dir.h"

#include <QtCore/QDirIterator>
#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>
#include <QtCore/QStandardPaths>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

class Keychain : public testing::Test {
protected:
    // The lines that the script prints; PROBE is the program that asks.
    QStringList linesOf(const QString& script, bool withBus = true)
    {
        QProcess process;
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        for (const char* place : {"HOME", "XDG_DATA_HOME", "XDG_RUNTIME_DIR", "XDG_CACHE_HOME", "XDG_CONFIG_HOME"})
            environment.insert(QString::fromLatin1(place), home.path());
        for (const char* unwanted : {"DISPLAY", "WAYLAND_DISPLAY", "GNOME_KEYRING_CONTROL"})
            environment.remove(QString::fromLatin1(unwanted));
        environment.insert(QStringLiteral("XDG_CURRENT_DESKTOP"), QStringLiteral("GNOME"));
        environment.insert(QStringLiteral("DBUS_SESSION_BUS_ADDRESS"), QStringLiteral("unix:path=/nowhere/at/all"));
        environment.insert(QStringLiteral("PROBE"), QStringLiteral(KEYCHAIN_PROBE_PROGRAM));
        process.setProcessEnvironment(environment);
        QStringList words{QStringLiteral("bash"), QStringLiteral("-c"), script};
        if (withBus) words = QStringList{QStringLiteral("dbus-run-session"), QStringLiteral("--")} + words;
        process.start(words.takeFirst(), words);
        EXPECT_TRUE(process.waitForFinished(60000)) << qPrintable(process.errorString());
        complaints = QString::fromUtf8(process.readAllStandardError());
        return QString::fromUtf8(process.readAllStandardOutput()).split(u'\n', Qt::SkipEmptyParts);
    }
    // Answers without the line of figures that follows each.
    static QStringList answersIn(QStringList lines)
    {
        lines.removeIf([](const QString& line) { return line.startsWith(QStringLiteral("ms ")); });
        return lines;
    }
    // A keyring that the word opens; without one it stays shut, for there is nobody to ask.
    static QString unlocked()
    {
        return QStringLiteral("echo -n pw | gnome-keyring-daemon --unlock --components=secrets >/dev/null; ");
    }

    testing_support::TempDir home;
    QString complaints;
};

bool hasAll(std::initializer_list<const char*> programs)
{
    return std::ranges::all_of(programs, [](const char* program) {
        return !QStandardPaths::findExecutable(QString::fromLatin1(program)).isEmpty();
    });
}

TEST_F(Keychain, SaysThatThereIsNoneWhereThereIsNoSessionBus)
{
    for (const char* what :
         {"\"$PROBE\" read some/key", "\"$PROBE\" keep some/key word", "\"$PROBE\" forget some/key"}) {
        const QStringList lines = linesOf(QString::fromLatin1(what), false);
        ASSERT_EQ(lines.size(), 2) << qPrintable(complaints);
        EXPECT_TRUE(lines[0].startsWith(QStringLiteral("failed "))) << qPrintable(lines[0]);
    }
    EXPECT_TRUE(QDir(home.path()).entryList(QDir::Files | QDir::Hidden).isEmpty());
}

TEST_F(Keychain, KeepsASecretGivesItBackAndForgetsIt)
{
    ASSERT_TRUE(hasAll({"dbus-run-session", "gnome-keyring-daemon"})) << "install dbus and gnome-keyring";
    const QStringList answers = answersIn(
        linesOf(unlocked() + QStringLiteral(R"("$PROBE" read k; "$PROBE" keep k "seven plain wörds"; "$PROBE" read k;
                                    "$PROBE" read other; "$PROBE" forget k; "$PROBE" read k; "$PROBE" forget k)")));
    EXPECT_EQ(answers, (QStringList{QStringLiteral("missing"), QStringLiteral("done"),
                                    QStringLiteral("secret seven plain wörds"), QStringLiteral("missing"),
                                    QStringLiteral("done"), QStringLiteral("missing"), QStringLiteral("done")}))
        << qPrintable(complaints);
}

TEST_F(Keychain, KeepsNothingInPlainText)
{
    ASSERT_TRUE(hasAll({"dbus-run-session", "gnome-keyring-daemon"})) << "install dbus and gnome-keyring";
    const QStringList answers =
        answersIn(linesOf(unlocked() + QStringLiteral(R"("$PROBE" keep k "seven plain words"; "$PROBE" read k)")));
    ASSERT_EQ(answers.value(1), QStringLiteral("secret seven plain words")) << qPrintable(complaints);
    int files = 0;
    QDirIterator all(home.path(), QDir::Files | QDir::Hidden, QDirIterator::Subdirectories);
    while (all.hasNext()) {
        QFile file(all.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        EXPECT_FALSE(file.readAll().contains("plain words")) << qPrintable(file.fileName());
        ++files;
    }
    EXPECT_GE(files, 1);
}

TEST_F(Keychain, NeverGivesASecretWhileLockedAndStillHasItAfterwards)
{
    ASSERT_TRUE(hasAll({"dbus-run-session", "gnome-keyring-daemon"})) << "install dbus and gnome-keyring";
    ASSERT_EQ(answersIn(linesOf(unlocked() + QStringLiteral("\"$PROBE\" keep k \"seven plain words\""))).value(0),
              QStringLiteral("done"))
        << qPrintable(complaints);
    const QStringList locked = linesOf(
        QStringLiteral("gnome-keyring-daemon --start --components=secrets >/dev/null; \"$PROBE\" read k; \"$PROBE\" "
                       "keep k other; \"$PROBE\" forget k"));
    EXPECT_EQ(answersIn(locked).filter(QStringLiteral("failed cancelled")).size(), 3) << qPrintable(complaints);
    EXPECT_EQ(answersIn(linesOf(unlocked() + QStringLiteral("\"$PROBE\" read k"))).value(0),
              QStringLiteral("secret seven plain words"))
        << qPrintable(complaints);
}

TEST_F(Keychain, GivesUpOnOneThatNeverAnswersAndHoldsNothingUpMeanwhile)
{
    ASSERT_TRUE(hasAll({"dbus-run-session", "dbus-test-tool"})) << "install dbus and dbus-tests";
    const QStringList lines = linesOf(QStringLiteral(R"(
        dbus-test-tool black-hole --name=org.freedesktop.secrets & hole=$!
        until dbus-send --session --print-reply --dest=org.freedesktop.DBus / org.freedesktop.DBus.NameHasOwner \
            string:org.freedesktop.secrets | grep -q true; do :; done
        "$PROBE" read k; kill $hole)"));
    ASSERT_EQ(lines.size(), 2) << qPrintable(complaints);
    EXPECT_EQ(lines[0], QStringLiteral("failed storage"));
    static const QRegularExpression figures(QStringLiteral("^ms (\\d+) beats (\\d+)$"));
    const auto match = figures.match(lines[1]);
    ASSERT_TRUE(match.hasMatch()) << qPrintable(lines[1]);
    EXPECT_GE(match.captured(1).toInt(), 4700);
    EXPECT_LE(match.captured(1).toInt(), 8000);
    EXPECT_GE(match.captured(2).toInt(), 40);  // a hundred, were the machine idle
}

}  // namespace
}  // namespace steelyard
