#include "core/samples/club_random.h"

#include <cmath>
#include <numbers>

namespace steelyard {

double ClubRandom::uniform()
{
    return static_cast<double>(m_engine() >> 11) * 0x1.0p-53;
}

double ClubRandom::uniform(double low, double high)
{
    return low + (high - low) * uniform();
}

int ClubRandom::integer(int low, int high)
{
    return low + static_cast<int>(uniform() * (high - low + 1));
}

double ClubRandom::normal()
{
    const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
    return radius * std::cos(2.0 * std::numbers::pi * uniform());
}

QUuid ClubRandom::uuid()
{
    const std::uint64_t high = m_engine();
    const std::uint64_t low = m_engine();
    const auto byte = [low](int i) { return static_cast<uchar>(low >> (8 * i)); };
    // Version 4, variant 1: as a random UUID has them (RFC 4122).
    return {static_cast<uint>(high >> 32),
            static_cast<ushort>(high >> 16),
            static_cast<ushort>((high & 0x0fff) | 0x4000),
            static_cast<uchar>((byte(0) & 0x3f) | 0x80),
            byte(1),
            byte(2),
            byte(3),
            byte(4),
            byte(5),
            byte(6),
            byte(7)};
}

}  // namespace steelyard
