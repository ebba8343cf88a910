// How long a step to the next lifter takes until their page stands drawn, with 200 athletes and five years in the book (about
// two million sets): from the key to the last thing painted, nothing of the lifter read before.
//
//   switch_benchmark [BOOK, kept; made when it isn't there] [athletes, default 200]
//
// Against the same step between lifters of a club with one year in the book.
#include "core/book/roster_review.h"
#include "tests/benchmarks/benchmark_club.h"
#include "ui/prompt/qt_prompter.h"
#include "ui/shell/book_view.h"
#include "ui/shell/main_window.h"
#include "ui/shell/theme.h"

#include <QtCore/QSettings>
#include <QtCore/QTemporaryDir>
#include <QtGui/QImage>
#include <QtGui/QScreen>
#include <QtWidgets/QApplication>

#include <algorithm>
#include <array>
#include <cstdio>
#include <ctime>

namespace steelyard {
namespace {

using benchmark::must;
using benchmark::Stopwatch;

constexpr int kSteps = 60;

struct Times {
    double middle = 0;
    double nineOfTen = 0;
    double worst = 0;
    double cpu = 0;  // of a step, all threads: says what it costs whatever else the machine does
};

class OpenClub {
public:
    explicit OpenClub(const QString& path)
        : m_settings(m_folder.filePath(QStringLiteral("settings.ini")), QSettings::IniFormat),
          m_window(MainServices{.reviewer = reviewRoster}, m_prompter, m_clock, m_settings),
          m_image(1366, 768, QImage::Format_ARGB32_Premultiplied)
    {
        m_window.resize(m_image.size());
        if (!m_window.openBook(path)) qFatal("%s can't be opened", qUtf8Printable(path));
        m_window.show();
        rest();
    }

    Times steps(const QString& place)
    {
        m_window.view()->showPlace(place);
        rest();
        std::vector<double> times;
        const std::clock_t began = std::clock();
        for (int i = 0; i < kSteps; ++i) {
            const Stopwatch watch;
            m_window.perform(QStringLiteral("roster.next"));
            rest();
            times.push_back(1000 * watch.seconds());
        }
        const double cpu = 1000 * static_cast<double>(std::clock() - began) / CLOCKS_PER_SEC / kSteps;
        needDrawn();
        std::ranges::sort(times);
        return {times[kSteps / 2], times[kSteps * 9 / 10], times.back(), cpu};
    }

private:
    void rest()
    {
        while (!m_window.isSettled()) QCoreApplication::processEvents(QEventLoop::WaitForMoreEvents);
        QCoreApplication::processEvents();  // what the last job brought, laid out and painted
    }
    // What stands on the screen is what the page looks like when it is drawn anew: the clock stopped after the last paint.
    void needDrawn()
    {
        const QImage seen = m_window.screen()->grabWindow(m_window.winId()).toImage().convertToFormat(m_image.format());
        m_window.render(&m_image);
        if (seen.size() != m_image.size()) qFatal("the screen can't be read");
        qint64 apart = 0;
        for (int y = 0; y < seen.height(); ++y)
            for (int x = 0; x < seen.width(); ++x) apart += seen.pixel(x, y) != m_image.pixel(x, y);
        if (apart > seen.width() * seen.height() / 1000) qFatal("%lld pixels were not painted yet", apart);
    }

    const QTemporaryDir m_folder;
    QSettings m_settings;
    const FixedClock m_clock{benchmark::clubDay()};
    QtPrompter m_prompter;
    MainWindow m_window;
    QImage m_image;
};

int compare(const QString& path, int athletes)
{
    const QTemporaryDir folder;
    const QString shortPath = folder.filePath(QStringLiteral("short.steelyard"));
    benchmark::needClub(shortPath, 70, 1);
    benchmark::needClub(path, athletes);
    OpenClub club(path);
    OpenClub aYear(shortPath);
    std::printf("%-22s %10s %10s %10s %10s %10s\n", "ms to the next lifter", "middle", "9 of 10", "worst", "to 1 year",
                "CPU");
    for (const auto& [place, words] : {std::pair("lifter", "Lifter"), {"week", "Week"}}) {
        const Times long5 = club.steps(QString::fromLatin1(place));
        const Times short1 = aYear.steps(QString::fromLatin1(place));
        std::printf("%-22s %10.1f %10.1f %10.1f %10.2f %10.1f\n", words, long5.middle, long5.nineOfTen, long5.worst,
                    long5.middle / short1.middle, long5.cpu);
    }
    return 0;
}

}  // namespace
}  // namespace steelyard

int main(int argc, char** argv)
{
    steelyard::keepFreedMemory();  // as every program does
    using namespace steelyard;
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication app(argc, argv);
    applyTheme(app, ThemeChoice::Light);
    return benchmark::onClub(compare);
}
