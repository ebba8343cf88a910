// How much memory a piece of work holds at its worst: every allocation of the program is counted (peak_memory.cpp takes the place
// of malloc in the program that it is linked into).
#pragma once

#include <cstddef>

namespace steelyard::test {

class PeakMemory {
public:
    PeakMemory();
    // Bytes beyond what was held when this was made.
    [[nodiscard]] std::size_t bytes() const;

private:
    std::size_t m_before;
};

}  // namespace steelyard::test
