#include "tests/fuzz/peak_memory.h"

#include <malloc.h>

#include <atomic>

namespace {

std::atomic<std::size_t> g_held{0};
std::atomic<std::size_t> g_peak{0};

void* taken(void* block)
{
    if (!block) return block;
    const std::size_t now = g_held += malloc_usable_size(block);
    std::size_t peak = g_peak;
    while (now > peak && !g_peak.compare_exchange_weak(peak, now)) continue;
    return block;
}

void given(void* block)
{
    if (block) g_held -= malloc_usable_size(block);
}

}  // namespace

// glibc's own, behind the names that are taken here.
extern "C" {
void* __libc_malloc(std::size_t size);
void* __libc_calloc(std::size_t count, std::size_t size);
void* __libc_realloc(void* block, std::size_t size);
void* __libc_memalign(std::size_t alignment, std::size_t size);
void __libc_free(void* block);

void* malloc(std::size_t size)
{
    return taken(__libc_malloc(size));
}

void* calloc(std::size_t count, std::size_t size)
{
    return taken(__libc_calloc(count, size));
}

void* realloc(void* block, std::size_t size)
{
    const std::size_t before = block ? malloc_usable_size(block) : 0;
    void* moved = __libc_realloc(block, size);
    if (moved || size == 0) g_held -= before;
    return taken(moved);
}

void* memalign(std::size_t alignment, std::size_t size)
{
    return taken(__libc_memalign(alignment, size));
}

void* aligned_alloc(std::size_t alignment, std::size_t size)
{
    return taken(__libc_memalign(alignment, size));
}

int posix_memalign(void** block, std::size_t alignment, std::size_t size)
{
    *block = taken(__libc_memalign(alignment, size));
    return *block ? 0 : 12;  // ENOMEM
}

void free(void* block)
{
    given(block);
    __libc_free(block);
}
}

namespace steelyard::test {

PeakMemory::PeakMemory() : m_before(g_held)
{
    g_peak = m_before;
}

std::size_t PeakMemory::bytes() const
{
    return g_peak - m_before;
}

}  // namespace steelyard::test
