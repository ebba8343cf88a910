// How soon the window stands, and how much memory it takes, with 200 athletes and five years in the book (about two million
// sets), against the same window on an empty book.
//
//   window_benchmark [BOOK, kept; made when it isn't there] [athletes, default 200]
//
// Each window is a process of its own, so that peak memory (VmHWM) is its own too. "first paint": from the beginning of
// main() until the open book has been drawn once. "reviewed": until nothing is being read or computed any more; the window
// can be used meanwhile.
#include "core/book/roster_review.h"
#include "tests/benchmarks/benchmark_club.h"
#include "ui/prompt/qt_prompter.h"
#include "ui/shell/main_window.h"
#include "ui/shell/theme.h"

#include <QtCore/QProcess>
#include <QtCore/QSettings>
#include <QtCore/QTemporaryDir>
#include <QtCore/QTimer>
#include <QtWidgets/QApplication>

#include <cstdio>

namespace steelyard {
namespace {

using benchmark::must;
using benchmark::Stopwatch;

double peakMegabytes()
{
    QFile status(QStringLiteral("/proc/self/status"));
    if (!status.open(QIODevice::ReadOnly)) return 0;
    for (const QByteArray& line : status.readAll().split('\n'))
        if (line.startsWith("VmHWM:")) return line.mid(6).trimmed().split(' ').front().toDouble() / 1024;
    return 0;
}

// Notes when the window has been drawn for the first time, and when it has come to rest.
class WindowWatch final : public QObject {
public:
    WindowWatch(const MainWindow& window, const Stopwatch& started) : m_window(window), m_started(started)
    {
        qApp->installEventFilter(this);
        connect(&m_rest, &QTimer::timeout, this, [this] { lookForRest(); });
        m_rest.start(5);
    }

    bool eventFilter(QObject* receiver, QEvent* event) override
    {
        if (receiver == &m_window && event->type() == QEvent::Paint && m_firstPaint == 0) {
            m_firstPaint = -1;
            // Once what hangs on this paint event (all that stands in the window) is done.
            QTimer::singleShot(0, this, [this] { m_firstPaint = m_started.seconds(); });
        }
        return QObject::eventFilter(receiver, event);
    }

private:
    void lookForRest()
    {
        if (m_firstPaint <= 0 || !m_window.isSettled()) return;
        m_rest.stop();
        const double settled = m_started.seconds();
        // What the review brought has yet to be drawn; the events for it are waiting now.
        QTimer::singleShot(0, this, [this, settled] {
            std::printf("%.3f %.3f %.1f\n", m_firstPaint, settled, peakMegabytes());
            QApplication::quit();
        });
    }

    const MainWindow& m_window;
    const Stopwatch& m_started;
    QTimer m_rest;
    double m_firstPaint = 0;
};

int openOne(QApplication& app, const Stopwatch& started, const QString& path)
{
    const QTemporaryDir folder;
    QSettings settings(folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat);
    applyTheme(app, ThemeChoice::Light);
    const FixedClock clock(benchmark::clubDay());
    QtPrompter prompter;
    MainWindow window(MainServices{.reviewer = reviewRoster}, prompter, clock, settings);
    window.resize(1366, 768);
    if (!window.openBook(path)) qFatal("%s can't be opened", qUtf8Printable(path));
    const WindowWatch watch(window, started);
    window.show();
    return QApplication::exec();
}

struct Figures {
    double firstPaint = 0;
    double reviewed = 0;
    double megabytes = 0;
};

Figures measure(const QString& path)
{
    QProcess child;
    child.start(QCoreApplication::applicationFilePath(), {QStringLiteral("--one"), path});
    if (!child.waitForFinished(-1) || child.exitCode() != 0)
        qFatal("the window failed: %s", child.readAllStandardError().constData());
    const QList<QByteArray> words = child.readAllStandardOutput().trimmed().split(' ');
    if (words.size() != 3) qFatal("the window gave no figures");
    return {words[0].toDouble(), words[1].toDouble(), words[2].toDouble()};
}

void print(const char* what, double club, double empty)
{
    std::printf("%-28s %10.2f %10.2f %8.2f\n", what, club, empty, club / empty);
}

int compare(const QString& path, int athletes)
{
    const QTemporaryDir folder;
    const QString emptyPath = folder.filePath(QStringLiteral("empty.steelyard"));
    must(newBook(emptyPath, FixedClock(benchmark::clubDay())));
    benchmark::needClub(path, athletes);
    static_cast<void>(measure(emptyPath));  // libraries and fonts are read from the disk once
    const Figures empty = measure(emptyPath);
    const Figures club = measure(path);
    std::printf("%-28s %10s %10s %8s\n", "", "club", "empty", "ratio");
    print("first paint, s", club.firstPaint, empty.firstPaint);
    print("reviewed, s", club.reviewed, empty.reviewed);
    print("peak memory, MB", club.megabytes, empty.megabytes);
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();  // as every program does
    using namespace steelyard;
    const benchmark::Stopwatch started;
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    if (argc == 3 && QByteArray(argv[1]) == "--one") {
        QApplication app(argc, argv);
        return openOne(app, started, QString::fromLocal8Bit(argv[2]));
    }
    const QCoreApplication app(argc, argv);
    return benchmark::onClub(compare);
}
