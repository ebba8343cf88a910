// A last line in the log when the program crashes: which signal, and nothing else. Then the crash takes its course.
//
//   noteCrashesIn(log.descriptor());
#pragma once

namespace steelyard {

void noteCrashesIn(int descriptor);

}  // namespace steelyard
