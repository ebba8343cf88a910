#include "core/base/load.h"

#include "core/base/enum_text.h"

#include <cmath>

namespace steelyard {

std::optional<Load> Load::make(Decimal amount, MassUnit unit)
{
    if (amount.decimals() > kMaxDecimals) amount = amount.trimmed();
    if (amount.isNegative() || amount.decimals() > kMaxDecimals || amount.toDouble() > kMaxAmount) return std::nullopt;
    Load load;
    load.m_amount = amount;
    load.m_unit = unit;
    return load;
}

std::optional<Load> Load::parse(QStringView amount, MassUnit unit)
{
    const auto decimal = Decimal::parse(amount);
    return decimal ? make(*decimal, unit) : std::nullopt;
}

std::optional<Load> Load::parse(std::string_view amount, MassUnit unit)
{
    const auto decimal = Decimal::parse(amount);
    return decimal ? make(*decimal, unit) : std::nullopt;
}

std::optional<Load> Load::parseWithUnit(QStringView text)
{
    const auto space = text.lastIndexOf(u' ');
    if (space < 0) return std::nullopt;
    const auto unit = fromKey<MassUnit>(text.mid(space + 1));
    return unit ? parse(text.left(space), *unit) : std::nullopt;
}

Load Load::nearest(Mass mass, MassUnit unit, int decimals)
{
    const double perUnit =
        unit == MassUnit::kg ? static_cast<double>(kStepsPerKilogram) : static_cast<double>(kStepsPerPound);
    Load load;
    load.m_amount = Decimal::nearest(static_cast<double>(mass.steps()) / perUnit, decimals);
    load.m_unit = unit;
    return load;
}

Mass Load::mass() const
{
    std::int64_t perStep = m_unit == MassUnit::kg ? kStepsPerKilogram : kStepsPerPound;
    for (int i = 0; i < m_amount.decimals(); ++i) perStep /= 10;  // exact: at most three decimals
    return Mass::fromSteps(m_amount.mantissa() * perStep);
}

QString Load::toString() const
{
    return m_amount.toString() + QLatin1Char(' ') + toText(m_unit);
}

}  // namespace steelyard
