// The system asks the program to end (SIGTERM at logout or shutdown, SIGINT from a terminal, SIGHUP when that goes away): the window is
// closed as by its own button, so that what is half typed is kept and the book is closed well.
//
//   closeOnSignal(window);
//
// Does nothing where a system has no such signals.
#pragma once

class QWidget;

namespace steelyard {

void closeOnSignal(QWidget& window);

}  // namespace steelyard
