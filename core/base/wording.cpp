#include "core/base/wording.h"

#include "core/base/enum_text.h"

namespace steelyard {
namespace {

QString decimalText(const Wording& wording, Decimal number)
{
    QString text = wording.locale.toString(number.toDouble(), 'f', number.decimals());
    if (number.isNegative()) text.replace(wording.locale.negativeSign(), QString(wording.minus));
    return text;
}

}  // namespace

QString Wording::day(QDate date) const
{
    return date.isValid() ? locale.toString(date, datePattern) : QString();
}

QString Wording::number(double value, int mostDecimals) const
{
    return decimalText(*this, Decimal::nearest(value, mostDecimals).trimmed());
}

QString Wording::fixed(double value, int decimals) const
{
    const Decimal nearest = Decimal::nearest(value, decimals);
    QString text = locale.toString(nearest.toDouble(), 'f', decimals);
    if (nearest.isNegative()) text.replace(locale.negativeSign(), QString(minus));
    return text;
}

QString Wording::load(const Load& load) const
{
    return decimalText(*this, load.amount()) + u' ' + toText(load.unit());
}

double Wording::massIn(double kilograms, MassUnit own) const
{
    return unitFor(own) == MassUnit::kg ? kilograms : kilograms / kKilogramsPerPound;
}

QString Wording::mass(double kilograms, MassUnit own, int mostDecimals) const
{
    return number(massIn(kilograms, own), mostDecimals) + u' ' + toText(unitFor(own));
}

}  // namespace steelyard
