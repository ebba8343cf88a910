// Draws the window into a file once everything in it is there, and ends the program: for documentation and tests.
#pragma once

#include <QtCore/QSize>
#include <QtCore/QString>

namespace steelyard {

class MainWindow;

struct PictureRequest {
    QString file;
    QSize size{1366, 768};
};

// Returns at once; QCoreApplication::exit() is called with 0, or 3 when the file can't be written.
void takePicture(MainWindow& window, const PictureRequest& request);

}  // namespace steelyard
