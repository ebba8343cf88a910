// A decimal number as it was typed: 42.5 and 42.50 are the same amount but not the same Decimal.
//
//   Decimal::parse(u"42.50")->toString() == u"42.50"
//   Decimal::parse(u"42.50")->toDouble() == 42.5
//
// Invariants: at most kMaxDecimals decimals; the whole fits 15 digits, so the double is the nearest one to the text.
// Text form is the C locale's: '.', no grouping, no exponent. Other forms are read by the importer and ui/format.
#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace steelyard {

class Decimal {
public:
    static constexpr int kMaxDecimals = 6;

    constexpr Decimal() = default;  // zero, without decimals
    explicit constexpr Decimal(int whole) : m_packed(std::int64_t{whole} * kDecimalsRoom) {}
    // mantissa / 10^decimals; decimals in 0..kMaxDecimals, mantissa at most 15 digits or so (asserted).
    [[nodiscard]] static Decimal fromScaled(std::int64_t mantissa, int decimals);
    // The nearest decimal with that many decimals, without trailing zeros beyond the first `keep`.
    [[nodiscard]] static Decimal nearest(double value, int decimals);
    [[nodiscard]] static std::optional<Decimal> parse(std::string_view text);
    [[nodiscard]] static std::optional<Decimal> parse(QStringView text);

    [[nodiscard]] constexpr std::int64_t mantissa() const { return m_packed >> kDecimalsBits; }
    [[nodiscard]] constexpr int decimals() const { return static_cast<int>(m_packed & (kDecimalsRoom - 1)); }
    [[nodiscard]] constexpr bool isNegative() const { return m_packed < 0; }
    [[nodiscard]] constexpr bool isZero() const { return mantissa() == 0; }
    [[nodiscard]] double toDouble() const;
    [[nodiscard]] QString toString() const;
    // Writes the text form into buffer (at least 24 bytes) and returns its length.
    std::size_t write(char* buffer) const;
    // The same amount without trailing zeros after the point.
    [[nodiscard]] Decimal trimmed() const;

    friend constexpr bool operator==(Decimal, Decimal) = default;

private:
    // Both in one word: a roster's records hold millions of these.
    static constexpr int kDecimalsBits = 3;
    static constexpr std::int64_t kDecimalsRoom = std::int64_t{1} << kDecimalsBits;
    static_assert(kMaxDecimals < kDecimalsRoom);
    std::int64_t m_packed = 0;  // mantissa * kDecimalsRoom + decimals
};

}  // namespace steelyard
