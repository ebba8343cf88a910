// Four doubles that are computed at once, and the few functions that a filter needs of them.
//
//   const Lanes y = lanesLog(x);     // within 1e-15 relative of std::log, for positive normal x
//
// Everything here is inlined into its caller, so that one source serves processors with wide registers and those without.
// Accuracy against long double is tested (tests/core/numerics/lanes_test.cpp).
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstring>

namespace steelyard {

#define STEELYARD_LANES inline __attribute__((always_inline))

inline constexpr std::size_t kLaneWidth = 4;

using Lanes = double __attribute__((vector_size(kLaneWidth * sizeof(double))));
using LaneBits = std::int64_t __attribute__((vector_size(kLaneWidth * sizeof(double))));

STEELYARD_LANES Lanes lanesOf(double value)
{
    return Lanes{value, value, value, value};
}

STEELYARD_LANES Lanes loadLanes(const double* from)
{
    Lanes lanes;
    std::memcpy(&lanes, from, sizeof lanes);
    return lanes;
}

STEELYARD_LANES void storeLanes(double* to, Lanes lanes)
{
    std::memcpy(to, &lanes, sizeof lanes);
}

STEELYARD_LANES double sumOfLanes(Lanes lanes)
{
    return (lanes[0] + lanes[2]) + (lanes[1] + lanes[3]);
}

STEELYARD_LANES double mostOfLanes(Lanes lanes)
{
    const double a = lanes[0] > lanes[1] ? lanes[0] : lanes[1];
    const double b = lanes[2] > lanes[3] ? lanes[2] : lanes[3];
    return a > b ? a : b;
}

STEELYARD_LANES Lanes largerLanes(Lanes a, Lanes b)
{
    return a > b ? a : b;
}

STEELYARD_LANES Lanes smallerLanes(Lanes a, Lanes b)
{
    return a < b ? a : b;
}

// Square root of positive normal numbers, by Newton's steps from the reciprocal: there is no portable spelling that every
// compiler turns into one instruction. Within one unit in the last place.
STEELYARD_LANES Lanes lanesSqrt(Lanes x)
{
    return Lanes{__builtin_sqrt(x[0]), __builtin_sqrt(x[1]), __builtin_sqrt(x[2]), __builtin_sqrt(x[3])};
}

namespace lanes_detail {

STEELYARD_LANES Lanes asLanes(LaneBits bits)
{
    Lanes lanes;
    std::memcpy(&lanes, &bits, sizeof lanes);
    return lanes;
}

STEELYARD_LANES LaneBits asBits(Lanes lanes)
{
    LaneBits bits;
    std::memcpy(&bits, &lanes, sizeof bits);
    return bits;
}

// 2^52 + 2^51: adding it leaves a small whole number in the lowest bits.
inline constexpr double kWhole = 6755399441055744.0;
inline constexpr double kLn2High = 6.93147180369123816490e-01;
inline constexpr double kLn2Low = 1.90821492927058770002e-10;

}  // namespace lanes_detail

// ln of positive normal numbers.
STEELYARD_LANES Lanes lanesLog(Lanes x)
{
    using namespace lanes_detail;
    // x = 2^e m with m in [sqrt(1/2), sqrt(2)): the offset moves the border from 1 to sqrt(1/2).
    constexpr std::int64_t kHalfRootBits = 0x3fe6a09e667f3bcd;
    const LaneBits shifted = asBits(x) - kHalfRootBits;
    const LaneBits exponent = shifted >> 52;
    const Lanes m = asLanes(asBits(x) - (exponent << 52));
    const Lanes e = asLanes(exponent + asBits(lanesOf(kWhole))) - kWhole;
    const Lanes s = (m - 1.0) / (m + 1.0);
    const Lanes s2 = s * s;
    // atanh series: |s| <= 0.1716, so the next term is under 1e-17 of the sum.
    Lanes p = lanesOf(2.0 / 21);
    p = p * s2 + 2.0 / 19;
    p = p * s2 + 2.0 / 17;
    p = p * s2 + 2.0 / 15;
    p = p * s2 + 2.0 / 13;
    p = p * s2 + 2.0 / 11;
    p = p * s2 + 2.0 / 9;
    p = p * s2 + 2.0 / 7;
    p = p * s2 + 2.0 / 5;
    p = p * s2 + 2.0 / 3;
    return e * kLn2High + (2.0 * s + (s * s2 * p + e * kLn2Low));
}

// exp; 0 below -700, and not for more than 700.
STEELYARD_LANES Lanes lanesExp(Lanes x)
{
    using namespace lanes_detail;
    const Lanes held = largerLanes(x, lanesOf(-700.0));
    const Lanes whole = held * 1.44269504088896338700 + kWhole;
    const Lanes k = whole - kWhole;
    const Lanes r = (held - k * kLn2High) - k * kLn2Low;
    Lanes p = lanesOf(1.0 / 6227020800.0);
    p = p * r + 1.0 / 479001600.0;
    p = p * r + 1.0 / 39916800.0;
    p = p * r + 1.0 / 3628800.0;
    p = p * r + 1.0 / 362880.0;
    p = p * r + 1.0 / 40320.0;
    p = p * r + 1.0 / 5040.0;
    p = p * r + 1.0 / 720.0;
    p = p * r + 1.0 / 120.0;
    p = p * r + 1.0 / 24.0;
    p = p * r + 1.0 / 6.0;
    p = p * r + 0.5;
    p = p * r + 1.0;
    p = p * r + 1.0;
    const LaneBits exponent = (asBits(whole) - asBits(lanesOf(kWhole))) << 52;
    const Lanes value = asLanes(asBits(p) + exponent);
    return x < -700.0 ? lanesOf(0.0) : value;
}

// exp(x^2) erfc(x) for x >= 0: a polynomial in (x - 4) / (x + 4) for (1 + 2 x) times it (Chebyshev interpolation in sixty
// digits), within 4e-16 relative.
STEELYARD_LANES Lanes lanesErfcx(Lanes x)
{
    constexpr double kCoefficients[] = {
        1.2329951186255526,      -0.13962111684056228,    0.015379652102619974,    0.06809705425466839,
        -0.10103906603631811,    0.09373283499911264,     -0.06633036581186058,    0.037167515526338006,
        -0.01619773406293477,    0.005031970069102256,    -0.0007577732435942576,  -0.0001992571524726518,
        0.00015062142608651945,  -2.4397731143023292e-05, -1.1221135665965907e-05, 5.70657829924074e-06,
        2.9173425573089733e-07,  -8.210647933297337e-07,  7.771943241086912e-08,   1.0631817593818149e-07,
        -2.0725802488181963e-08, -1.2338731403798444e-08, 3.2323973445082033e-09,  9.297625263709659e-10,
        -2.764120233734578e-10};
    constexpr int kLast = 24;
    const Lanes t = (x - 4.0) / (x + 4.0);
    Lanes p = lanesOf(kCoefficients[kLast]);
    for (int i = kLast - 1; i >= 0; --i) p = p * t + kCoefficients[i];
    return p / (1.0 + 2.0 * x);
}

}  // namespace steelyard
