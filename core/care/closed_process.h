// Closes the running program to others on the machine, before it touches a file: what it writes is readable by its owner only,
// whatever the surroundings ask for, and no memory image is left behind when it crashes.
//
//   int main(…) { steelyard::closeToOthers(); …
#pragma once

#include <QtCore/QString>

namespace steelyard {

void closeToOthers();
// The same for a file that an earlier version, or another program, left open to others. One that isn't there stays so.
void closeFileToOthers(const QString& path);

}  // namespace steelyard
