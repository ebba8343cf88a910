// A passphrase in memory that is locked against swapping and wiped when it is done with.
//
//   STEELYARD_TRY(const Passphrase passphrase, Passphrase::make(QStringLiteral("seven plain words will do nicely")));
//   sealFile(from, to, passphrase, {}, progress);          // sealed_file.h
//
// It is taken as its letters, whatever keyboard or system composed them (Unicode NFC); nothing is trimmed. The text that it is
// made of stays with whoever typed it: wipe(QString&) helps there. Move only.
// Failures: Invalid (shorter than kFewestLetters, longer than kMostBytes, not well-formed).
#pragma once

#include "core/base/result.h"

#include <QtCore/QString>

#include <cstddef>
#include <memory>
#include <span>

namespace steelyard {

class Passphrase {
public:
    static constexpr qsizetype kFewestLetters = 12;
    static constexpr qsizetype kMostBytes = 1024;

    [[nodiscard]] static Result<Passphrase> make(const QString& text);
    [[nodiscard]] std::span<const std::byte> bytes() const { return {m_bytes.get(), m_size}; }

private:
    struct Wiped {
        void operator()(std::byte* bytes) const;
    };
    Passphrase() = default;

    std::unique_ptr<std::byte[], Wiped> m_bytes;
    std::size_t m_size = 0;
};

// Overwrites the letters and empties the text. Copies that share them elsewhere stay.
void wipe(QString& text);

}  // namespace steelyard
