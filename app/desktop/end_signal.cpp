#include "app/desktop/end_signal.h"

#include <QtCore/QSocketNotifier>
#include <QtWidgets/QApplication>
#include <QtWidgets/QWidget>

#ifdef Q_OS_UNIX
#include <sys/socket.h>
#include <unistd.h>

#include <csignal>
#endif

namespace steelyard {

#ifdef Q_OS_UNIX
namespace {

// A handler may do next to nothing: it writes a byte that the event loop finds.
int endSockets[2] = {-1, -1};

void passOn(int)
{
    const char byte = 1;
    [[maybe_unused]] const auto written = ::write(endSockets[0], &byte, 1);
}

}  // namespace

void closeOnSignal(QWidget& window)
{
    if (::socketpair(AF_UNIX, SOCK_STREAM, 0, endSockets) != 0) return;
    auto* heard = new QSocketNotifier(endSockets[1], QSocketNotifier::Read, &window);
    QObject::connect(heard, &QSocketNotifier::activated, &window, [&window, heard] {
        heard->setEnabled(false);
        window.close();
        QApplication::quit();
    });
    struct sigaction action = {};
    action.sa_handler = passOn;
    sigemptyset(&action.sa_mask);
    action.sa_flags = SA_RESTART;
    for (const int signal : {SIGTERM, SIGINT, SIGHUP}) ::sigaction(signal, &action, nullptr);
}
#else
void closeOnSignal(QWidget&) {}
#endif

}  // namespace steelyard
