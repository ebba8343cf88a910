// Takes a lock file that nobody holds, also one without a word in it: whoever is ended between making the file and naming itself
// leaves such a one, and QLockFile takes it for held for ever.
//
//   lock.setStaleLockTime(0);                 // stale when its process is gone, never because it is old
//   if (takeLock(lock, 20'000)) ...           // waits so many milliseconds for who holds it
//
// A program that lives names itself at once; the file has a fifth of a second to be named in.
#pragma once

class QLockFile;

namespace steelyard {

[[nodiscard]] bool takeLock(QLockFile& lock, int patienceMs);

}  // namespace steelyard
