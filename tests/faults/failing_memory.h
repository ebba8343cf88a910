// SQLite's memory, which can give out at the N-th request. Linked in, it takes the place of the library's own allocator before the
// library is used for the first time.
//
//   failingMemory().failAt(100, Fault::FromThenOn);   // ... work ...
//   failingMemory().calm();
#pragma once

#include "tests/faults/fault_vfs.h"

#include <atomic>

namespace steelyard::test {

class FailingMemory {
public:
    void failAt(int request, Fault fault)
    {
        calm();
        m_fault = fault;
        m_failAt = request;
    }
    void calm()
    {
        m_failAt = 0;
        m_requests = 0;
        m_failed = false;
    }
    [[nodiscard]] bool hasFailed() const { return m_failed; }
    [[nodiscard]] int requests() const { return m_requests; }
    [[nodiscard]] bool refuses()
    {
        const int request = ++m_requests;
        const int at = m_failAt;
        const bool now = at > 0 && (m_fault == Fault::Once ? request == at : request >= at);
        if (now) m_failed = true;
        return now;
    }

private:
    std::atomic<int> m_requests{0};
    std::atomic<int> m_failAt{0};
    std::atomic<bool> m_failed{false};
    Fault m_fault = Fault::Once;
};

[[nodiscard]] FailingMemory& failingMemory();

}  // namespace steelyard::test
