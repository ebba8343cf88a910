#include "tests/faults/failing_memory.h"

#include <sqlite3.h>

namespace steelyard::test {
namespace {

sqlite3_mem_methods ownMemory;

void* giveMemory(int bytes)
{
    return failingMemory().refuses() ? nullptr : ownMemory.xMalloc(bytes);
}

void* growMemory(void* memory, int bytes)
{
    return failingMemory().refuses() ? nullptr : ownMemory.xRealloc(memory, bytes);
}

const bool takenOver = [] {
    sqlite3_config(SQLITE_CONFIG_GETMALLOC, &ownMemory);
    sqlite3_mem_methods failing = ownMemory;
    failing.xMalloc = giveMemory;
    failing.xRealloc = growMemory;
    return sqlite3_config(SQLITE_CONFIG_MALLOC, &failing) == SQLITE_OK;
}();

}  // namespace

FailingMemory& failingMemory()
{
    static FailingMemory memory;
    return memory;
}

}  // namespace steelyard::test
