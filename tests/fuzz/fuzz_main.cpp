// The entry that libFuzzer calls (packaging/fuzz). FUZZED is one of the functions of faults_of_input.h.
#include "tests/fuzz/faults_of_input.h"

#include <cstdint>
#include <cstdio>
#include <cstdlib>

// NOLINTNEXTLINE(readability-identifier-naming): the name is libFuzzer's
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const QByteArray input(reinterpret_cast<const char*>(data), static_cast<qsizetype>(size));
    if (const std::string fault = steelyard::test::FUZZED(input); !fault.empty()) {
        std::fprintf(stderr, "%s\n", fault.c_str());
        std::abort();
    }
    return 0;
}
