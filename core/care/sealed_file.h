// A file that only who knows its passphrase can read: for backups and hand-over files that leave the coach's machine.
//
//   STEELYARD_CHECK(sealFile(book, QStringLiteral("club.steelyard.sealed"), passphrase, SealCost::usual(), progress));
//   STEELYARD_CHECK(openSealedFile(sealed, QStringLiteral("club.steelyard"), passphrase, progress));
//
// Both write beside the target, readable by its owner only, and take the target's place when all is done; what stood there
// stays if anything fails, and nothing half written is left. A change of a single bit, a piece that is missing, twice there or
// elsewhere, something after the end: each is noticed, and said.
//
// Format 1, numbers with the least byte first:
//   magic 8 ("SYRDSEAL") | format u16 = 1 | key derivation u16 = 1 (Argon2id 1.3) | passes u64 | memory in bytes u64 |
//   salt 16 | piece u32 = 65,536 | stream header 24
// then the pieces: each 65,536 bytes (the last is shorter, maybe empty) and 17 more, sealed with XChaCha20-Poly1305 as
// libsodium's secretstream chains them; the 72 bytes of the header are additional data of the first; the last is tagged as
// final. Limits, checked before anything is reserved: passes 2..10, memory 19 MiB..2 GiB.
//
// There is no way back without the passphrase. Units: bytes. Failures: NotFound, Storage (reading, writing), Invalid (no sealed
// file, wrong passphrase, damage), NewerFormat, Cancelled.
// Sources: RFC 9106 (Argon2), libsodium's documentation of crypto_pwhash and crypto_secretstream; the lower limit is the OWASP
// Password Storage Cheat Sheet's.
#pragma once

#include "core/base/progress.h"
#include "core/care/passphrase.h"

#include <cstdint>

namespace steelyard {

// What trying one passphrase costs, to us and to whoever guesses.
struct SealCost {
    std::uint64_t passes = 3;
    std::uint64_t memoryBytes = 256ULL << 20;

    [[nodiscard]] static SealCost usual() { return {}; }  // about a second
    [[nodiscard]] static SealCost least() { return {2, 19ULL << 20}; }
    [[nodiscard]] bool isWithinLimits() const;
};

[[nodiscard]] Result<void> sealFile(const QString& from, const QString& to, const Passphrase&, const SealCost&,
                                    const Progress&);
[[nodiscard]] Result<void> openSealedFile(const QString& from, const QString& to, const Passphrase&, const Progress&);
// By its first bytes. NotFound, Storage.
[[nodiscard]] Result<bool> isSealedFile(const QString& path);

}  // namespace steelyard
