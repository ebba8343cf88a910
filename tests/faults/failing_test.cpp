// A disk that fails at the first call, then at the second, and so on until the work succeeds: once, and from then on. The same with
// memory that gives out. The loop is that of SQLite's own tests (sqlite.org/testing.html, 3.1 and 3.2), here around our work.
#include "tests/faults/failing_memory.h"
#include "tests/faults/fault_length.h"
#include "tests/faults/fault_vfs.h"
#include "tests/faults/small_work.h"

#include <gtest/gtest.h>

#include <iostream>

namespace steelyard::test {
namespace {

struct Case {
    NamedWork work;
    Fault fault;
};

std::vector<Case> allCases()
{
    std::vector<Case> cases;
    for (const NamedWork& work : smallWorks())
        for (const Fault fault : {Fault::Once, Fault::FromThenOn}) cases.push_back({work, fault});
    return cases;
}

class WorkWithAFault : public testing::TestWithParam<Case> {
protected:
    // Places are tried until one is past the end of the work.
    template <class Device>
    void failEverywhere(Device& device)
    {
        const auto work = GetParam().work.make();
        int failures = 0;
        int refusals = 0;
        for (int place = 1;; place = nextFault(place)) {
            const QTemporaryDir folder;
            device.calm();
            work->lay(folder.path());
            device.failAt(place, GetParam().fault);
            work->perform();
            const bool failed = device.hasFailed();
            device.calm();
            ASSERT_EQ(work->check(), "") << "failed at " << place;
            if (!failed) {
                EXPECT_TRUE(work->isDone()) << "nothing failed";
                break;
            }
            ++failures;
            refusals += work->isDone() ? 0 : 1;
        }
        EXPECT_GT(failures, 15);
        EXPECT_GT(refusals, 5) << "a fault is told, not passed over";
        std::cout << failures << " faults, " << refusals << " refusals\n";
    }
};

TEST_P(WorkWithAFault, OfTheDiskLosesNothingThatWasAcknowledged)
{
    failEverywhere(FaultVfs::installed());
}

TEST_P(WorkWithAFault, OfTheMemoryLosesNothingThatWasAcknowledged)
{
    static_cast<void>(FaultVfs::installed());  // whose syncs take no time
    failEverywhere(failingMemory());
}

std::string nameOf(const testing::TestParamInfo<Case>& info)
{
    return info.param.work.name + std::string(info.param.fault == Fault::Once ? "Once" : "FromThenOn");
}

INSTANTIATE_TEST_SUITE_P(Each, WorkWithAFault, testing::ValuesIn(allCases()), nameOf);

}  // namespace
}  // namespace steelyard::test
