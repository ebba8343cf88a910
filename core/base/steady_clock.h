// How long something takes: a time since some moment, never set back, which runs on where the day doesn't move (clock.h).
//
//   const SteadyTime time = steadyNow;        // or a test's own
//   const auto began = time();
//
// Unit: milliseconds.
#pragma once

#include <chrono>
#include <functional>

namespace steelyard {

using SteadyTime = std::function<std::chrono::milliseconds()>;

[[nodiscard]] inline std::chrono::milliseconds steadyNow()
{
    return std::chrono::duration_cast<std::chrono::milliseconds>(std::chrono::steady_clock::now().time_since_epoch());
}

}  // namespace steelyard
