#include "core/base/decimal.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace steelyard {
namespace {

constexpr std::array<double, Decimal::kMaxDecimals + 1> kPowers{1, 10, 100, 1e3, 1e4, 1e5, 1e6};
// 15 significant digits: beyond that a double no longer tells neighbouring texts apart.
constexpr int kMaxDigits = 15;

}  // namespace

Decimal Decimal::fromScaled(std::int64_t mantissa, int decimals)
{
    Q_ASSERT(decimals >= 0 && decimals <= kMaxDecimals);
    Q_ASSERT(std::abs(mantissa) < (std::int64_t{1} << (62 - kDecimalsBits)));
    Decimal result;
    result.m_packed = mantissa * kDecimalsRoom + decimals;
    return result;
}

Decimal Decimal::nearest(double value, int decimals)
{
    return fromScaled(std::llround(value * kPowers[static_cast<std::size_t>(decimals)]), decimals).trimmed();
}

std::optional<Decimal> Decimal::parse(std::string_view text)
{
    bool negative = false;
    std::size_t at = 0;
    if (!text.empty() && (text[0] == '-' || text[0] == '+')) {
        negative = text[0] == '-';
        at = 1;
    }
    std::int64_t mantissa = 0;
    int decimals = 0;
    int digits = 0;
    bool point = false;
    for (; at < text.size(); ++at) {
        const char c = text[at];
        if (c == '.' && !point) {
            point = true;
            continue;
        }
        if (c < '0' || c > '9' || ++digits > kMaxDigits) return std::nullopt;
        mantissa = mantissa * 10 + (c - '0');
        if (point && ++decimals > kMaxDecimals) return std::nullopt;
    }
    if (digits == 0 || text.back() == '.') return std::nullopt;
    return fromScaled(negative ? -mantissa : mantissa, decimals);
}

std::optional<Decimal> Decimal::parse(QStringView text)
{
    std::array<char, 32> bytes{};
    if (text.size() > static_cast<qsizetype>(bytes.size())) return std::nullopt;
    std::size_t length = 0;
    for (const QChar c : text) {
        if (c.unicode() > 127) return std::nullopt;
        bytes[length++] = static_cast<char>(c.unicode());
    }
    return parse(std::string_view(bytes.data(), length));
}

double Decimal::toDouble() const
{
    return static_cast<double>(mantissa()) / kPowers[static_cast<std::size_t>(decimals())];
}

std::size_t Decimal::write(char* buffer) const
{
    char* out = buffer;
    std::uint64_t magnitude = static_cast<std::uint64_t>(mantissa());
    if (isNegative()) {
        *out++ = '-';
        magnitude = 0 - magnitude;
    }
    std::array<char, 20> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), magnitude).ptr;
    const int count = static_cast<int>(end - digits.data());
    const int whole = count - decimals();
    if (whole <= 0) {
        *out++ = '0';
    } else {
        out = std::copy_n(digits.data(), whole, out);
    }
    if (decimals() > 0) {
        *out++ = '.';
        for (int i = whole; i < 0; ++i) *out++ = '0';
        out = std::copy(digits.data() + std::max(whole, 0), digits.data() + count, out);
    }
    return static_cast<std::size_t>(out - buffer);
}

QString Decimal::toString() const
{
    std::array<char, 32> buffer{};
    return QString::fromLatin1(buffer.data(), static_cast<qsizetype>(write(buffer.data())));
}

Decimal Decimal::trimmed() const
{
    std::int64_t amount = mantissa();
    int places = decimals();
    for (; places > 0 && amount % 10 == 0; --places) amount /= 10;
    return fromScaled(amount, places);
}

}  // namespace steelyard
