// A steady time (steady_clock.h) that goes on while the machine sleeps: for how long nobody was there.
//
//   const SteadyTime time = steadyNowAsleepToo;        // or a test's own
//
// Unit: milliseconds since some moment. Where the system has no such clock it is the other one.
#pragma once

#include "core/base/steady_clock.h"

#include <ctime>

namespace steelyard {

[[nodiscard]] inline std::chrono::milliseconds steadyNowAsleepToo()
{
#ifdef CLOCK_BOOTTIME
    std::timespec now{};
    if (clock_gettime(CLOCK_BOOTTIME, &now) == 0)
        return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::seconds(now.tv_sec)
                                                                     + std::chrono::nanoseconds(now.tv_nsec));
#endif
    return steadyNow();
}

}  // namespace steelyard
