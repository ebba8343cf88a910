#include "app/desktop/crash_note.h"

#include <array>
#include <atomic>
#include <csignal>
#include <cstring>
#include <unistd.h>

namespace steelyard {
namespace {

std::atomic<int> crashNoteFile{-1};  // a signal handler is handed nothing

// Only what may be called in a signal handler.
void noteCrash(int signal)
{
    std::array<char, 20> note{"crashed signal 00\n"};
    note[15] = static_cast<char>('0' + signal / 10 % 10);
    note[16] = static_cast<char>('0' + signal % 10);
    if (crashNoteFile >= 0) [[maybe_unused]]
        const auto written = write(crashNoteFile, note.data(), std::strlen(note.data()));
    std::signal(signal, SIG_DFL);
    raise(signal);
}

}  // namespace

void noteCrashesIn(int descriptor)
{
    crashNoteFile = descriptor;
    for (const int signal : {SIGSEGV, SIGBUS, SIGFPE, SIGILL, SIGABRT}) std::signal(signal, noteCrash);
}

}  // namespace steelyard
