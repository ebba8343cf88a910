// A passphrase from standard input: its first line, as it stands. On a terminal it is asked for, and not shown.
//
//   STEELYARD_TRY(const auto passphrase, readPassphrase(console, Asked::Twice));    // for a new seal
//
// Twice only on a terminal: what comes through a pipe isn't mistyped. Failures: Unsupported (nothing came), Invalid (passphrase.h,
// or the two differ).
#pragma once

#include "app/console/console.h"
#include "core/care/passphrase.h"

namespace steelyard {

enum class Asked { Once, Twice };

[[nodiscard]] Result<std::shared_ptr<const Passphrase>> readPassphrase(const Console& console, Asked asked);

}  // namespace steelyard
