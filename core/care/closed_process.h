// Closes the running program to others on the machine, before it touches a file: what it writes is readable by its owner only,
// whatever the surroundings ask for, and no memory image is left behind when it crashes.
//
//   int main(…) { steelyard::closeToOthers(); …
#pragma once

namespace steelyard {

void closeToOthers();

}  // namespace steelyard
