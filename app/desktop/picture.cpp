#include "app/desktop/picture.h"

#include "ui/shell/main_window.h"

#include <QtCore/QTimer>
#include <QtGui/QPixmap>
#include <QtWidgets/QApplication>

namespace steelyard {
namespace {

// A settled window may begin further work when its events come in (a page reads its lines); so it is asked again after
// the events that are waiting now, until it stays settled for a few rounds.
void pictureWhenCalm(MainWindow* window, const PictureRequest& request, int calmRounds)
{
    constexpr int enough = 5;
    constexpr int roundMs = 40;
    const auto again = [window](const PictureRequest& rest, int calm) {
        QTimer::singleShot(roundMs, window, [=] { pictureWhenCalm(window, rest, calm); });
    };
    const int calm = window->isSettled() ? calmRounds + 1 : 0;
    if (calm < enough) {
        again(request, calm);
        return;
    }
    if (!request.actions.isEmpty()) {
        PictureRequest rest = request;
        window->perform(rest.actions.takeFirst());
        again(rest, 0);
        return;
    }
    // A dialog or window that an action opened is the picture, the window behind it is not.
    QWidget* front = QApplication::activeModalWidget();
    for (QWidget* each : window->findChildren<QWidget*>(QString(), Qt::FindDirectChildrenOnly))
        if (!front && each->isWindow() && each->isVisible()
            && (each->windowType() == Qt::Window || each->windowType() == Qt::Dialog))
            front = each;
    QWidget* shown = front ? front : window;
    QCoreApplication::exit(shown->grab().save(request.file) ? 0 : 3);
}

}  // namespace

void takePicture(MainWindow& window, const PictureRequest& request)
{
    window.resize(request.size);
    QTimer::singleShot(0, &window, [&window, request] { pictureWhenCalm(&window, request, 0); });
}

}  // namespace steelyard
