// Draws the window into a file once everything in it is there, and ends the program: for documentation and for looking at
// every screen. Actions of the table of actions (ui/shell/actions.h) are performed before it, one after the other.
#pragma once

#include <QtCore/QSize>
#include <QtCore/QStringList>

namespace steelyard {

class MainWindow;

struct PictureRequest {
    QString file;
    QSize size{1366, 768};
    QStringList actions;  // by id: "lifter.why"
};

// Returns at once; QCoreApplication::exit() is called with 0, or 3 when the file can't be written.
void takePicture(MainWindow& window, const PictureRequest& request);

}  // namespace steelyard
