#include "app/desktop/picture.h"

#include "ui/shell/main_window.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QTimer>
#include <QtGui/QPixmap>

namespace steelyard {
namespace {

// A settled window may begin further work when its events come in (a page reads its lines); so it is asked again after
// the events that are waiting now, until it stays settled for a few rounds.
void pictureWhenCalm(MainWindow* window, const QString& file, int calmRounds)
{
    constexpr int enough = 5;
    constexpr int roundMs = 40;
    const int calm = window->isSettled() ? calmRounds + 1 : 0;
    if (calm < enough) {
        QTimer::singleShot(roundMs, window, [=] { pictureWhenCalm(window, file, calm); });
        return;
    }
    QCoreApplication::exit(window->grab().save(file) ? 0 : 3);
}

}  // namespace

void takePicture(MainWindow& window, const PictureRequest& request)
{
    window.resize(request.size);
    QTimer::singleShot(0, &window, [&window, file = request.file] { pictureWhenCalm(&window, file, 0); });
}

}  // namespace steelyard
