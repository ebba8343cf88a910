// As many numbers as a 32-byte register holds, computed at once: four doubles or eight floats; and the few functions that a
// filter needs of them.
//
//   const Lanes<float> y = lanesLog(x);     // for positive normal x
//
// Accuracy, relative: lanesLog 1e-15 with doubles and 4e-7 with floats (absolute near 1), lanesExp 1e-14 and 4e-7,
// lanesErfcx 4e-15 and 6e-7; tested against long double (tests/core/numerics/lanes_test.cpp).
// Everything here is inlined into its caller, so that one source serves processors with wide registers and those without.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <type_traits>
#include <utility>

namespace steelyard {

#define STEELYARD_LANES inline __attribute__((always_inline))

// Before a loop of a fixed and small number of rounds that the compiler would leave a loop.
#ifdef __clang__
#define STEELYARD_UNROLLED _Pragma("unroll")
#else
#define STEELYARD_UNROLLED _Pragma("GCC unroll 32")
#endif

inline constexpr std::size_t kLaneBytes = 32;
template <class Real>
inline constexpr std::size_t kLaneWidth = kLaneBytes / sizeof(Real);

namespace lanes_detail {

template <class Real>
struct Types;

template <>
struct Types<double> {
    using Values = double __attribute__((vector_size(kLaneBytes)));
    using Bits = std::int64_t __attribute__((vector_size(kLaneBytes)));
};

template <>
struct Types<float> {
    using Values = float __attribute__((vector_size(kLaneBytes)));
    using Bits = std::int32_t __attribute__((vector_size(kLaneBytes)));
};

}  // namespace lanes_detail

template <class Real>
using Lanes = typename lanes_detail::Types<Real>::Values;
template <class Real>
using LaneBits = typename lanes_detail::Types<Real>::Bits;
// float or double, of lanes of such.
template <class Values>
using RealOf = std::remove_cvref_t<decltype(std::declval<Values&>()[0])>;

template <class Real>
STEELYARD_LANES Lanes<Real> lanesOf(Real value)
{
    return value - Lanes<Real>{};
}

template <class Real>
STEELYARD_LANES Lanes<Real> loadLanes(const Real* from)
{
    Lanes<Real> lanes;
    std::memcpy(&lanes, from, sizeof lanes);
    return lanes;
}

template <class Values>
STEELYARD_LANES void storeLanes(RealOf<Values>* to, Values lanes)
{
    std::memcpy(to, &lanes, sizeof lanes);
}

namespace lanes_detail {

// The upper `half` where the lower one was.
template <std::size_t half, class Values, std::size_t... I>
STEELYARD_LANES Values upperHalf(Values x, std::index_sequence<I...>)
{
    return __builtin_shufflevector(x, x, ((I + half) % sizeof...(I))...);
}

}  // namespace lanes_detail

// By halves: the upper half is added to the lower one, until one number is left.
template <class Values>
STEELYARD_LANES RealOf<Values> sumOfLanes(Values lanes)
{
    constexpr std::size_t kWidth = kLaneWidth<RealOf<Values>>;
    using Places = std::make_index_sequence<kWidth>;
    if constexpr (kWidth == 8) lanes += lanes_detail::upperHalf<4>(lanes, Places());
    lanes += lanes_detail::upperHalf<2>(lanes, Places());
    lanes += lanes_detail::upperHalf<1>(lanes, Places());
    return lanes[0];
}

template <class Values>
STEELYARD_LANES RealOf<Values> mostOfLanes(Values lanes)
{
    RealOf<Values> most = lanes[0];
    for (std::size_t i = 1; i < kLaneWidth<RealOf<Values>>; ++i) most = lanes[i] > most ? lanes[i] : most;
    return most;
}

template <class Values>
STEELYARD_LANES Values largerLanes(Values a, Values b)
{
    return a > b ? a : b;
}

template <class Values>
STEELYARD_LANES Values smallerLanes(Values a, Values b)
{
    return a < b ? a : b;
}

namespace lanes_detail {

template <class Values, std::size_t... I>
STEELYARD_LANES Values rootsOf(Values x, std::index_sequence<I...>)
{
    if constexpr (std::is_same_v<RealOf<Values>, float>)
        return Values{__builtin_sqrtf(x[I])...};
    else
        return Values{__builtin_sqrt(x[I])...};
}

template <class Values, std::size_t... I>
STEELYARD_LANES Values movedUp(Values x, std::index_sequence<I...>)
{
    return __builtin_shufflevector(x, x, 0, I...);
}

}  // namespace lanes_detail

// Square roots, one by one: there is no portable spelling for all at once, and compilers make one instruction of these.
template <class Values>
STEELYARD_LANES Values lanesSqrt(Values x)
{
    return lanes_detail::rootsOf(x, std::make_index_sequence<kLaneWidth<RealOf<Values>>>());
}

// Each number one place up; the first stands twice, the last is gone.
template <class Values>
STEELYARD_LANES Values movedUpLanes(Values x)
{
    return lanes_detail::movedUp(x, std::make_index_sequence<kLaneWidth<RealOf<Values>> - 1>());
}

namespace lanes_detail {

template <class Real>
STEELYARD_LANES Lanes<Real> asLanes(LaneBits<Real> bits)
{
    Lanes<Real> lanes;
    std::memcpy(&lanes, &bits, sizeof lanes);
    return lanes;
}

template <class Values>
STEELYARD_LANES LaneBits<RealOf<Values>> asBits(Values lanes)
{
    LaneBits<RealOf<Values>> bits;
    std::memcpy(&bits, &lanes, sizeof bits);
    return bits;
}

// What differs between the two kinds of numbers. Polynomials: lowest power first.
template <class Real>
struct Numbers;

template <>
struct Numbers<double> {
    static constexpr int kMantissaBits = 52;
    static constexpr std::int64_t kHalfRootBits = 0x3fe6a09e667f3bcd;  // of the square root of 1/2
    // 2^52 + 2^51: adding it leaves a small whole number in the lowest bits.
    static constexpr double kWhole = 6755399441055744.0;
    static constexpr double kLn2High = 6.93147180369123816490e-01;
    static constexpr double kLn2Low = 1.90821492927058770002e-10;
    static constexpr double kLog2OfE = 1.44269504088896338700;
    static constexpr double kLeastExponent = -700;
    // 2 / (2 n + 3): |s| <= 0.1716, so the next term is under 1e-17 of the sum.
    static constexpr std::array kLog{2.0 / 3,  2.0 / 5,  2.0 / 7,  2.0 / 9,  2.0 / 11,
                                     2.0 / 13, 2.0 / 15, 2.0 / 17, 2.0 / 19, 2.0 / 21};
    static constexpr std::array kExp{1.0,
                                     1.0,
                                     0.5,
                                     1.0 / 6.0,
                                     1.0 / 24.0,
                                     1.0 / 120.0,
                                     1.0 / 720.0,
                                     1.0 / 5040.0,
                                     1.0 / 40320.0,
                                     1.0 / 362880.0,
                                     1.0 / 3628800.0,
                                     1.0 / 39916800.0,
                                     1.0 / 479001600.0,
                                     1.0 / 6227020800.0};
    static constexpr std::array kErfcx{
        1.2329951186255526,      -0.13962111684056228,    0.015379652102619974,    0.06809705425466839,
        -0.10103906603631811,    0.09373283499911264,     -0.06633036581186058,    0.037167515526338006,
        -0.01619773406293477,    0.005031970069102256,    -0.0007577732435942576,  -0.0001992571524726518,
        0.00015062142608651945,  -2.4397731143023292e-05, -1.1221135665965907e-05, 5.70657829924074e-06,
        2.9173425573089733e-07,  -8.210647933297337e-07,  7.771943241086912e-08,   1.0631817593818149e-07,
        -2.0725802488181963e-08, -1.2338731403798444e-08, 3.2323973445082033e-09,  9.297625263709659e-10,
        -2.764120233734578e-10};
};

template <>
struct Numbers<float> {
    static constexpr int kMantissaBits = 23;
    static constexpr std::int32_t kHalfRootBits = 0x3f3504f3;
    static constexpr float kWhole = 12582912.0F;
    static constexpr float kLn2High = 0.693359375F;
    static constexpr float kLn2Low = -2.12194440e-4F;
    static constexpr float kLog2OfE = 1.44269504F;
    static constexpr float kLeastExponent = -87;
    static constexpr std::array kLog{2.0F / 3, 2.0F / 5, 2.0F / 7, 2.0F / 9};
    static constexpr std::array kExp{1.0F,         1.0F,          0.5F,          1.0F / 6.0F,
                                     1.0F / 24.0F, 1.0F / 120.0F, 1.0F / 720.0F, 1.0F / 5040.0F};
    static constexpr std::array kErfcx{1.23299512F,    -0.139621084F,  0.0153796837F,   0.0680961321F,
                                       -0.101039951F,  0.0937404438F,  -0.0663232595F,  0.0371399169F,
                                       -0.0162222746F, 0.00508280915F, -0.00071633947F, -0.000248632298F,
                                       0.000116607997F};
};

template <class Values, std::size_t N>
STEELYARD_LANES Values polynomial(const std::array<RealOf<Values>, N>& coefficients, Values x)
{
    Values sum = lanesOf(coefficients[N - 1]);
    for (std::size_t i = N - 1; i-- > 0;) sum = sum * x + coefficients[i];
    return sum;
}

}  // namespace lanes_detail

// ln of positive normal numbers.
template <class Values>
STEELYARD_LANES Values lanesLog(Values x)
{
    using namespace lanes_detail;
    using Real = RealOf<Values>;
    using Of = Numbers<Real>;
    // x = 2^e m with m in [sqrt(1/2), sqrt(2)): the offset moves the border from 1 to sqrt(1/2).
    const LaneBits<Real> shifted = asBits(x) - Of::kHalfRootBits;
    const LaneBits<Real> exponent = shifted >> Of::kMantissaBits;
    const Values m = asLanes<Real>(asBits(x) - (exponent << Of::kMantissaBits));
    const Values e = asLanes<Real>(exponent + asBits(lanesOf(Of::kWhole))) - Of::kWhole;
    const Values s = (m - Real(1)) / (m + Real(1));
    const Values s2 = s * s;
    const Values p = polynomial(Of::kLog, s2);  // of the inverse hyperbolic tangent
    return e * Of::kLn2High + (Real(2) * s + (s * s2 * p + e * Of::kLn2Low));
}

// exp; 0 below -700 (-87 for floats), and not for more than 700 (87).
template <class Values>
STEELYARD_LANES Values lanesExp(Values x)
{
    using namespace lanes_detail;
    using Real = RealOf<Values>;
    using Of = Numbers<Real>;
    const Values held = largerLanes(x, lanesOf(Of::kLeastExponent));
    const Values whole = held * Of::kLog2OfE + Of::kWhole;
    const Values k = whole - Of::kWhole;
    const Values r = (held - k * Of::kLn2High) - k * Of::kLn2Low;
    const Values p = polynomial(Of::kExp, r);
    const LaneBits<Real> exponent = (asBits(whole) - asBits(lanesOf(Of::kWhole))) << Of::kMantissaBits;
    const Values value = asLanes<Real>(asBits(p) + exponent);
    return x < Of::kLeastExponent ? lanesOf(Real(0)) : value;
}

// exp(x^2) erfc(x) for x >= 0: a polynomial in (x - 4) / (x + 4) for (1 + 2 x) times it (Chebyshev interpolation in sixty
// digits; of degree 12, within 4e-9, for floats).
template <class Values>
STEELYARD_LANES Values lanesErfcx(Values x)
{
    using Real = RealOf<Values>;
    const Values t = (x - Real(4)) / (x + Real(4));
    return lanes_detail::polynomial(lanes_detail::Numbers<Real>::kErfcx, t) / (Real(1) + Real(2) * x);
}

}  // namespace steelyard
