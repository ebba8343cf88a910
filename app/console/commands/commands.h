// Every command of the console, in the order of its help. A new command is one file and one line in main.cpp.
#pragma once

#include "app/console/console.h"

namespace steelyard {

[[nodiscard]] ConsoleCommand newCommand();
[[nodiscard]] ConsoleCommand demoCommand();
[[nodiscard]] ConsoleCommand importCommand();
[[nodiscard]] ConsoleCommand exportCommand();
[[nodiscard]] ConsoleCommand eraseCommand();
[[nodiscard]] ConsoleCommand reviewCommand();
[[nodiscard]] ConsoleCommand forecastCommand();
[[nodiscard]] ConsoleCommand learnCommand();
[[nodiscard]] ConsoleCommand planCommand();
[[nodiscard]] ConsoleCommand sheetsCommand();
[[nodiscard]] ConsoleCommand trialCommand();
[[nodiscard]] ConsoleCommand verifyCommand();
[[nodiscard]] ConsoleCommand salvageCommand();
[[nodiscard]] ConsoleCommand backupCommand();
[[nodiscard]] ConsoleCommand restoreCommand();

}  // namespace steelyard
