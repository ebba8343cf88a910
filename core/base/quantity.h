// A count of indivisible steps of one kind. Kinds don't mix: a Mass plus a Length does not compile, and a number
// becomes a quantity only through a factory that names its unit.
//
// Here: Mass (steps of 1e-11 kg) and Length (millimetres).
// Why 1e-11 kg: the pound is 0.45359237 kg by definition, so every load of up to three decimals in pounds and every
// load in kilograms is a whole number of steps, and plates of both kinds add up without rounding.
// Deliberately absent: conversion to and from plain integers, and multiplication of two quantities.
#pragma once

#include <compare>
#include <cstdint>

namespace steelyard {

template <class Kind>
class Quantity {
public:
    constexpr Quantity() = default;
    [[nodiscard]] static constexpr Quantity fromSteps(std::int64_t steps)
    {
        Quantity q;
        q.m_steps = steps;
        return q;
    }
    [[nodiscard]] constexpr std::int64_t steps() const { return m_steps; }
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return fromSteps(a.m_steps + b.m_steps); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return fromSteps(a.m_steps - b.m_steps); }
    friend constexpr Quantity operator*(std::int64_t n, Quantity a) { return fromSteps(n * a.m_steps); }
    friend constexpr auto operator<=>(Quantity, Quantity) = default;

private:
    std::int64_t m_steps = 0;
};

using Mass = Quantity<struct MassKind>;
using Length = Quantity<struct LengthKind>;

inline constexpr std::int64_t kStepsPerKilogram = 100'000'000'000;
inline constexpr std::int64_t kStepsPerPound = 45'359'237'000;
inline constexpr double kKilogramsPerPound =
    static_cast<double>(kStepsPerPound) / static_cast<double>(kStepsPerKilogram);

[[nodiscard]] constexpr Mass massFromGrams(std::int64_t grams)
{
    return Mass::fromSteps(grams * (kStepsPerKilogram / 1000));
}
[[nodiscard]] constexpr double toKilograms(Mass mass)
{
    return static_cast<double>(mass.steps()) / static_cast<double>(kStepsPerKilogram);
}
[[nodiscard]] constexpr Length lengthFromMillimetres(std::int64_t millimetres)
{
    return Length::fromSteps(millimetres);
}
[[nodiscard]] constexpr std::int64_t toMillimetres(Length length)
{
    return length.steps();
}

}  // namespace steelyard
