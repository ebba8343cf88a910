#include "ui/format/format.h"

#include <QtCore/QCoreApplication>

#include <cmath>

namespace steelyard::format {
namespace {

struct FormatText {
    Q_DECLARE_TR_FUNCTIONS(FormatText)
};

constexpr char16_t kMinus = u'\u2212';
constexpr char16_t kNoBreakSpace = u'\u00a0';

QString withTrueMinus(QString text)
{
    return text.replace(QLatin1Char('-'), QChar(kMinus));
}

QString withUnit(const QString& number, const QString& unit)
{
    return number + QChar(kNoBreakSpace) + unit;
}

}  // namespace

QString absent()
{
    return QStringLiteral("–");
}

QString number(double value, int decimals)
{
    // What rounds to nothing has no sign.
    const double scale = std::pow(10.0, decimals);
    if (std::round(value * scale) == 0) value = 0;
    return withTrueMinus(QLocale().toString(value, 'f', decimals));
}

QString decimal(const Decimal& value)
{
    return number(value.toDouble(), value.decimals());
}

QString signedNumber(double value, int decimals)
{
    const QString text = number(value, decimals);
    const bool isZero = std::round(value * std::pow(10.0, decimals)) == 0;
    return value > 0 && !isZero ? u'+' + text : text;
}

QString shortNumber(double value)
{
    const double hundredths = std::round(value * 100);
    const bool whole = std::fmod(hundredths, 100) == 0;
    const bool tenths = std::fmod(hundredths, 10) == 0;
    return number(value, whole ? 0 : tenths ? 1 : 2);
}

QString percent(double share, int decimals)
{
    return withUnit(number(share * 100, decimals), QStringLiteral("%"));
}

QString signedPercent(double share, int decimals)
{
    return withUnit(signedNumber(share * 100, decimals), QStringLiteral("%"));
}

QString unit(MassUnit unit)
{
    return unit == MassUnit::kg ? QStringLiteral("kg") : QStringLiteral("lb");
}

QString load(const Load& load)
{
    const Decimal amount = load.amount();
    return withUnit(QLocale().toString(amount.toDouble(), 'f', amount.decimals()), unit(load.unit()));
}

double massIn(double kilograms, MassUnit shown)
{
    return shown == MassUnit::kg ? kilograms : kilograms / kKilogramsPerPound;
}

QString mass(double kilograms, MassUnit shown, int decimals)
{
    return withUnit(number(massIn(kilograms, shown), decimals), unit(shown));
}

QString datePattern()
{
    QString pattern = QLocale().dateFormat(QLocale::ShortFormat);
    if (!pattern.contains(QStringLiteral("yyyy"))) pattern.replace(QStringLiteral("yy"), QStringLiteral("yyyy"));
    return pattern;
}

Wording wording()
{
    return {.locale = QLocale(), .datePattern = datePattern(), .minus = kMinus, .unit = {}};
}

QString date(QDate date)
{
    return date.isValid() ? QLocale().toString(date, datePattern()) : absent();
}

QString moment(const QDateTime& utc)
{
    const QDateTime here = utc.toLocalTime();
    return date(here.date()) + u' ' + QLocale().toString(here.time(), QLocale::ShortFormat);
}

QString fileSize(qint64 bytes)
{
    return QLocale().formattedDataSize(bytes, 1, QLocale::DataSizeSIFormat);
}

QString dayMonth(QDate date)
{
    return date.isValid() ? QLocale().toString(date, QStringLiteral("d MMM")) : absent();
}

QString weekday(QDate date)
{
    return QLocale().dayName(date.dayOfWeek());
}

QString ago(QDate date, QDate today)
{
    const auto days = static_cast<int>(date.daysTo(today));
    if (days == 0) return FormatText::tr("today");
    if (days == 1) return FormatText::tr("yesterday");
    if (days == -1) return FormatText::tr("tomorrow");
    const int distance = std::abs(days);
    if (distance < 14)
        return days > 0 ? FormatText::tr("%n day(s) ago", nullptr, days)
                        : FormatText::tr("in %n day(s)", nullptr, -days);
    if (distance < 70)
        return days > 0 ? FormatText::tr("%n week(s) ago", nullptr, distance / 7)
                        : FormatText::tr("in %n week(s)", nullptr, distance / 7);
    return days > 0 ? FormatText::tr("%n month(s) ago", nullptr, distance * 12 / 365)
                    : FormatText::tr("in %n month(s)", nullptr, distance * 12 / 365);
}

}  // namespace steelyard::format
