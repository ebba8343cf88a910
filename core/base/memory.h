// How the program's memory is handed back to the system.
//
//   int main() { keepFreedMemory(); ... }
//
// Reviews, imports and exports build one record after the other and drop each again. Giving the pages back in between and
// asking for them anew costs more than reading the record. Called once, first thing in a program.
#pragma once

namespace steelyard {

// Keeps up to 64 MB of freed memory at hand. Only where the C library is GNU's; elsewhere it does nothing.
void keepFreedMemory();

}  // namespace steelyard
