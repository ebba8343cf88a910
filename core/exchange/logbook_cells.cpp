#include "core/exchange/logbook_cells.h"

#include "core/base/text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cmath>
#include <limits>

namespace steelyard {
namespace {

struct CellText {
    Q_DECLARE_TR_FUNCTIONS(CellText)
};

// 18:30, 18:30:05.123, 6:30 PM, with Z or +01:00 behind it.
bool isTimeOfDay(QStringView text)
{
    qsizetype at = 0;
    const auto digits = [&](int most) {
        int count = 0;
        while (at < text.size() && text[at] >= u'0' && text[at] <= u'9' && count < most) {
            ++at;
            ++count;
        }
        return count > 0;
    };
    const auto take = [&](char16_t c) {
        if (at >= text.size() || text[at] != c) return false;
        ++at;
        return true;
    };
    if (!digits(2) || !take(u':') || !digits(2)) return false;
    if (take(u':') && !digits(2)) return false;
    if ((take(u'.') || take(u',')) && !digits(9)) return false;
    const QStringView rest = text.mid(at).trimmed();
    if (rest.isEmpty() || rest.compare(u"Z", Qt::CaseInsensitive) == 0) return true;
    if (rest.compare(u"AM", Qt::CaseInsensitive) == 0 || rest.compare(u"PM", Qt::CaseInsensitive) == 0) return true;
    if (rest[0] != u'+' && rest[0] != u'-') return false;
    return std::all_of(rest.begin() + 1, rest.end(), [](QChar c) { return c.isDigit() || c == u':'; });
}

struct DateDigits {
    std::array<int, 3> parts{};
    std::array<int, 3> digits{};
    QStringView rest;
};

std::optional<DateDigits> dateDigitsOf(QStringView cell)
{
    DateDigits found;
    std::size_t part = 0;
    qsizetype at = 0;
    for (; at < cell.size(); ++at) {
        const QChar c = cell[at];
        if (c >= u'0' && c <= u'9') {
            if (++found.digits[part] > (part == 1 ? 2 : 4)) return std::nullopt;
            found.parts[part] = found.parts[part] * 10 + (c.unicode() - u'0');
        } else if ((c == u'-' || c == u'/' || c == u'.') && found.digits[part] > 0 && part < 2) {
            ++part;
        } else {
            break;
        }
    }
    if (part != 2 || found.digits[2] == 0) return std::nullopt;
    found.rest = cell.mid(at);
    return found;
}

std::optional<DateDigits> dateAndTime(QStringView cell)
{
    auto found = dateDigitsOf(cell);
    if (!found || found->rest.isEmpty()) return found;
    const bool apart = found->rest[0].isSpace() || found->rest[0] == u'T' || found->rest[0] == u',';
    return apart && isTimeOfDay(found->rest.mid(1).trimmed()) ? found : std::nullopt;
}

std::optional<Decimal> withMark(QStringView cell, QChar mark)
{
    if (mark == u'.') return Decimal::parse(cell);
    // With a decimal comma a point would be grouping: 1.250 is not one and a quarter.
    if (cell.contains(u'.')) return std::nullopt;
    return Decimal::parse(QStringView(cell.toString().replace(mark, u'.')));
}

// One mark, and behind it one digit or two.
bool isPlainlyDecimal(QStringView cell)
{
    const qsizetype mark = std::max(cell.lastIndexOf(u'.'), cell.lastIndexOf(u','));
    const qsizetype behind = cell.size() - mark - 1;
    return mark > 0 && cell.count(u'.') + cell.count(u',') == 1 && behind >= 1 && behind <= 2;
}

}  // namespace

std::optional<std::array<int, 3>> datePartsOf(QStringView cell)
{
    const auto found = dateAndTime(cell);
    return found ? std::optional(found->parts) : std::nullopt;
}

std::optional<QDate> readDateCell(QStringView cell, DateOrder order)
{
    const auto found = dateAndTime(cell);
    if (!found) return std::nullopt;
    auto [a, b, c] = found->parts;
    if (order != DateOrder::YearMonthDay && found->digits[2] == 2) c += c < 69 ? 2000 : 1900;
    const QDate day = order == DateOrder::YearMonthDay   ? QDate(a, b, c)
                      : order == DateOrder::DayMonthYear ? QDate(c, b, a)
                                                         : QDate(c, a, b);
    return day.isValid() && day.year() >= 1900 ? std::optional(day) : std::nullopt;
}

QString orderInWords(DateOrder order)
{
    switch (order) {
    case DateOrder::YearMonthDay:
        return CellText::tr("year, month, day");
    case DateOrder::DayMonthYear:
        return CellText::tr("day, month, year");
    case DateOrder::MonthDayYear:
        return CellText::tr("month, day, year");
    }
    return {};
}

std::optional<Decimal> readNumberCell(QStringView cell, NumberStyle style)
{
    if (style.byHand && isPlainlyDecimal(cell)) return withMark(cell, cell.contains(u',') ? u',' : u'.');
    return withMark(cell, style.decimalMark);
}

std::optional<int> readWholeCell(QStringView cell, NumberStyle style)
{
    bool ok = false;
    const int number = cell.toInt(&ok);
    if (ok && !cell.startsWith(u'+')) return number;
    if (!style.byHand) return std::nullopt;
    const auto decimal = readNumberCell(cell, style);
    if (!decimal || decimal->trimmed().decimals() != 0) return std::nullopt;
    const double whole = decimal->toDouble();
    if (std::abs(whole) > std::numeric_limits<int>::max()) return std::nullopt;  // no count of anything
    return static_cast<int>(whole);
}

std::optional<MassUnit> readUnitCell(QStringView cell)
{
    for (const QStringView word :
         {QStringView(u"kg"), QStringView(u"kgs"), QStringView(u"kilograms"), QStringView(u"kilo")})
        if (cell.compare(word, Qt::CaseInsensitive) == 0) return MassUnit::kg;
    for (const QStringView word : {QStringView(u"lb"), QStringView(u"lbs"), QStringView(u"pounds")})
        if (cell.compare(word, Qt::CaseInsensitive) == 0) return MassUnit::lb;
    return std::nullopt;
}

std::optional<LoadCell> readLoadCell(QStringView cell, NumberStyle style)
{
    if (style.byHand)
        for (const QStringView word : {QStringView(u"bw"), QStringView(u"bodyweight"), QStringView(u"body weight")})
            if (cell.compare(word, Qt::CaseInsensitive) == 0) return LoadCell{Decimal(0), std::nullopt};
    qsizetype end = cell.size();
    while (end > 0 && cell[end - 1].isLetter()) --end;
    const auto unit = readUnitCell(cell.mid(end));
    const auto amount = readNumberCell(unit ? cell.left(end).trimmed() : cell, style);
    return amount ? std::optional(LoadCell{*amount, unit}) : std::nullopt;
}

bool isNothingMark(QStringView cell)
{
    static const QStringList marks{QStringLiteral("-"),    QStringLiteral("--"),  QStringLiteral("–"),
                                   QStringLiteral("—"),    QStringLiteral("n/a"), QStringLiteral("N/A"),
                                   QStringLiteral("n.a."), QStringLiteral("#N/A")};
    return cell.size() <= 4 && marks.contains(cell);
}

bool isTotalsLabel(QStringView cell)
{
    static const QStringList words{
        QStringLiteral("total"),        QStringLiteral("totals"),    QStringLiteral("sum"),
        QStringLiteral("average"),      QStringLiteral("mean"),      QStringLiteral("summe"),
        QStringLiteral("gesamt"),       QStringLiteral("insgesamt"), QStringLiteral("schnitt"),
        QStringLiteral("durchschnitt"), QStringLiteral("totaux"),    QStringLiteral("somme"),
        QStringLiteral("moyenne"),      QStringLiteral("suma"),      QStringLiteral("totales"),
        QStringLiteral("promedio"),     QStringLiteral("mittelwert")};
    return words.contains(slug(cell).section(u'-', 0, 0));
}

}  // namespace steelyard
