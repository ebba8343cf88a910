// What must hold whatever bytes come in, as values that a fuzzer (fuzz_main.cpp) and an ordinary test (replay_test.cpp) both look
// at: empty, or what went wrong. The first byte chooses how the others are read.
#pragma once

#include <QtCore/QByteArray>

#include <string>

namespace steelyard::test {

// core/keying/set_notation.h: a line is a set or a problem with its place; a set is written as a line that reads back as the same
// set; parts of a line are cut out of it in order.
[[nodiscard]] std::string notationFault(const QByteArray& input);

// core/exchange/logbook_csv.h: a file is rows and problems, or one refusal; every row is sound and can be said again.
[[nodiscard]] std::string logbookFault(const QByteArray& input);

}  // namespace steelyard::test
