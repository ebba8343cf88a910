// What the built programs leave to others on the machine: no file that others can read, no memory image, no word into a network.
#include "tests/support/temp_dir.h"

#include <QtCore/QProcess>
#include <QtCore/QRegularExpression>
#include <QtCore/QStandardPaths>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

class ClosedProcess : public testing::Test {
protected:
    // Runs a script under the loosest mask, at home in a folder of its own.
    QString outputOf(const QString& script)
    {
        QProcess process;
        process.setProcessEnvironment(surroundings());
        process.start(QStringLiteral("bash"), {QStringLiteral("-c"), QStringLiteral("set -e; umask 000; ") + script});
        EXPECT_TRUE(process.waitForFinished(120000)) << qPrintable(process.errorString());
        EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().constData();
        return QString::fromUtf8(process.readAllStandardOutput());
    }
    QProcessEnvironment surroundings()
    {
        QProcessEnvironment environment = QProcessEnvironment::systemEnvironment();
        for (const auto& [name, value] : {std::pair("HOME", home.path()), std::pair("DIR", work.path())})
            environment.insert(QString::fromLatin1(name), value);
        for (const char* place : {"XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_DATA_HOME", "XDG_CACHE_HOME"})
            environment.remove(QString::fromLatin1(place));
        environment.insert(QStringLiteral("QT_QPA_PLATFORM"), QStringLiteral("offscreen"));
        environment.insert(QStringLiteral("XDG_RUNTIME_DIR"), home.path());
        environment.insert(QStringLiteral("CONSOLE"), QStringLiteral(STEELYARD_CONSOLE_PROGRAM));
        environment.insert(QStringLiteral("STEELYARD"), QStringLiteral(STEELYARD_PROGRAM));
        return environment;
    }
    void makeBook()
    {
        outputOf(QStringLiteral("\"$CONSOLE\" demo --book \"$DIR/club.steelyard\" --athletes 2 --years 1"));
    }

    testing_support::TempDir home;
    testing_support::TempDir work;
};

const QString kLook =
    QStringLiteral("\"$STEELYARD\" \"$DIR/club.steelyard\" --page floor --picture \"$DIR/floor.png\"; ");

TEST_F(ClosedProcess, WritesNothingThatOthersCanRead)
{
    makeBook();
    const QString open = outputOf(QStringLiteral(R"(mkdir -m 700 -p "$HOME/.config" "$HOME/.config/steelyard"
        echo "[view]" > "$HOME/.config/steelyard/steelyard.ini"; chmod 644 "$HOME/.config/steelyard/steelyard.ini"
        )") + kLook + QStringLiteral(R"(
        "$CONSOLE" export --book "$DIR/club.steelyard" --to "$DIR/export" >/dev/null
        "$CONSOLE" sheets --book "$DIR/club.steelyard" --date 2027-03-01 --pdf "$DIR/sheets.pdf" >/dev/null || true
        find "$DIR" "$HOME" -mindepth 1 \( -type f -o -type d \) -perm /077
        echo files $(find "$DIR" "$HOME" -type f | wc -l))"));
    static const QRegularExpression onlyCount(QStringLiteral("^files (\\d+)\\s*$"));
    const auto match = onlyCount.match(open);
    ASSERT_TRUE(match.hasMatch()) << qPrintable(open);
    EXPECT_GE(match.captured(1).toInt(), 5);  // the book, the picture, the log, the settings, the export
}

TEST_F(ClosedProcess, LeavesNoMemoryImageBehind)
{
    makeBook();
    QProcess window;
    window.setProcessEnvironment(surroundings());
    window.start(QStringLiteral("bash"),
                 {QStringLiteral("-c"), QStringLiteral("exec \"$STEELYARD\" \"$DIR/club.steelyard\"")});
    ASSERT_TRUE(window.waitForStarted());
    const auto limitOf = [](qint64 pid) {
        QFile limits(QStringLiteral("/proc/%1/limits").arg(pid));
        return limits.open(QIODevice::ReadOnly) ? QString::fromUtf8(limits.readAll()) : QString();
    };
    static const QRegularExpression none(QStringLiteral("Max core file size\\s+0\\s+0\\s"));
    bool closed = false;
    for (int i = 0; i < 200 && !closed; ++i) {
        closed = none.match(limitOf(window.processId())).hasMatch();
        window.waitForFinished(50);
    }
    EXPECT_TRUE(closed);
    window.kill();
    window.waitForFinished();
}

// The log's last line says that it crashed, and with what.
TEST_F(ClosedProcess, SaysInItsLogThatItCrashed)
{
    makeBook();
    QProcess window;
    window.setProcessEnvironment(surroundings());
    window.start(QStringLiteral("bash"),
                 {QStringLiteral("-c"), QStringLiteral("exec \"$STEELYARD\" \"$DIR/club.steelyard\"")});
    ASSERT_TRUE(window.waitForStarted());
    QFile log(home.path(u".local/state/steelyard/steelyard.log"));
    const auto logged = [&] {
        log.close();
        return log.open(QIODevice::ReadOnly) ? log.readAll() : QByteArray();
    };
    for (int i = 0; i < 200 && !logged().contains("begin"); ++i) window.waitForFinished(50);
    ASSERT_TRUE(logged().contains("begin"));
    outputOf(QStringLiteral("kill -SEGV %1").arg(window.processId()));
    ASSERT_TRUE(window.waitForFinished(20000));
    EXPECT_EQ(window.exitStatus(), QProcess::CrashExit);
    EXPECT_TRUE(logged().endsWith("crashed signal 11\n")) << logged().constData();
    EXPECT_FALSE(logged().contains("club"));
}

TEST_F(ClosedProcess, SpeaksToNoNetwork)
{
    ASSERT_FALSE(QStandardPaths::findExecutable(QStringLiteral("strace")).isEmpty()) << "strace is not installed";
    makeBook();
    const QString calls = outputOf(QStringLiteral(R"(
        for page in week lifter block floor; do
            strace -f -qq -e trace=socket,connect,sendto,bind -o "$DIR/calls" -A \
                "$STEELYARD" "$DIR/club.steelyard" --page $page --picture "$DIR/$page.png"
        done
        strace -f -qq -e trace=execve,socket,connect,sendto,bind -o "$DIR/calls" -A "$CONSOLE" review \
            --book "$DIR/club.steelyard" >/dev/null
        cat "$DIR/calls")"));
    EXPECT_TRUE(calls.contains(QStringLiteral("execve"))) << "nothing was traced";
    EXPECT_FALSE(calls.contains(QStringLiteral("AF_INET"))) << qPrintable(calls);
    const QString libraries = outputOf(QStringLiteral("ldd \"$STEELYARD\" \"$CONSOLE\""));
    EXPECT_TRUE(libraries.contains(QStringLiteral("libQt6Core")));
    EXPECT_FALSE(libraries.contains(QStringLiteral("libQt6Network"))) << qPrintable(libraries);
}

}  // namespace
}  // namespace steelyard
