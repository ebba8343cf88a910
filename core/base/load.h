// A load as it was typed: a decimal number and its unit. 95 lb stays 95 lb; kilograms are derived for computing.
//
//   Load::parse(u"42.50", MassUnit::kg)->toString()  == "42.50 kg"
//   Load::pounds(Decimal(45)).kilograms()            == 20.41165665
//
// Invariants: 0 <= amount <= 2000 in its unit, at most three decimals (so that mass() is exact, see quantity.h).
// Equality is equality of what was typed; compare mass() to compare amounts.
#pragma once

#include "core/base/decimal.h"
#include "core/base/quantity.h"

namespace steelyard {

enum class MassUnit { kg, lb };

class Load {
public:
    static constexpr int kMaxDecimals = 3;
    static constexpr int kMaxAmount = 2000;

    constexpr Load() = default;  // 0 kg
    // Fails (nullopt) when the amount is negative, too large, or has too many decimals.
    [[nodiscard]] static std::optional<Load> make(Decimal amount, MassUnit unit);
    [[nodiscard]] static std::optional<Load> parse(QStringView amount, MassUnit unit);
    [[nodiscard]] static std::optional<Load> parse(std::string_view amount, MassUnit unit);
    // "42.5 kg", "95 lb": the form written in JSON and in data files.
    [[nodiscard]] static std::optional<Load> parseWithUnit(QStringView text);
    // The load in that unit nearest to a mass, with at most that many decimals and no trailing zeros.
    [[nodiscard]] static Load nearest(Mass mass, MassUnit unit, int decimals = 2);

    [[nodiscard]] Decimal amount() const { return m_amount; }
    [[nodiscard]] MassUnit unit() const { return m_unit; }
    [[nodiscard]] Mass mass() const;
    [[nodiscard]] double kilograms() const { return toKilograms(mass()); }
    [[nodiscard]] QString toString() const;  // C locale, "42.50 kg"; for people use ui/format

    friend constexpr bool operator==(Load, Load) = default;

private:
    Decimal m_amount;
    MassUnit m_unit = MassUnit::kg;
};

}  // namespace steelyard
