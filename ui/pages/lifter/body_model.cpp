#include "ui/pages/lifter/body_model.h"

#include "ui/format/body_words.h"
#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"

#include <algorithm>
#include <map>

namespace steelyard {

QString bodyWhat(std::optional<BodyPlace> place)
{
    return place ? format::bodyPlaceWord(*place) : BodyModel::tr("body mass");
}

std::optional<Measurement> parseTape(const QString& text, TapeUnit unit)
{
    QString number = text.trimmed();
    for (const auto& row : EnumText<TapeUnit>::table)
        if (const QString word = toText(row.value); number.endsWith(word, Qt::CaseInsensitive)) {
            unit = row.value;
            number.chop(word.size());
        }
    const auto value = parseDecimalCell(number);
    return value ? std::optional(Measurement{{}, BodyPlace::Waist, *value, unit}) : std::nullopt;
}

void BodyModel::setRecord(const BodyRecord& record, MassUnit unit)
{
    beginResetModel();
    m_unit = unit;
    m_entries.clear();
    std::map<std::optional<BodyPlace>, double> last;
    const auto add = [&](BodyEntry entry, double value) {
        if (const auto before = last.find(entry.place); before != last.end()) entry.change = value - before->second;
        last[entry.place] = value;
        m_entries.push_back(std::move(entry));
    };
    for (const BodyMassEntry& entry : record.mass)
        add({entry.date, {}, format::load(entry.mass), entry.mass.toString()}, entry.mass.kilograms());
    for (const Measurement& one : record.measurements)
        add({one.date, one.place, format::tape(one), one.value.toString() + u' ' + toText(one.unit)},
            one.centimetres());
    std::ranges::stable_sort(m_entries, [](const BodyEntry& a, const BodyEntry& b) {
        return std::pair(b.date, a.place) < std::pair(a.date, b.place);
    });
    endResetModel();
}

const BodyEntry* BodyModel::at(int row) const
{
    return row >= 0 && row < rowCount() ? &m_entries[static_cast<std::size_t>(row)] : nullptr;
}

int BodyModel::rowOf(QDate date, std::optional<BodyPlace> place) const
{
    const auto at = std::ranges::find_if(
        m_entries, [&](const BodyEntry& entry) { return entry.date == date && entry.place == place; });
    return at == m_entries.end() ? -1 : static_cast<int>(at - m_entries.begin());
}

int BodyModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_entries.size());
}

int BodyModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QVariant BodyModel::data(const QModelIndex& index, int role) const
{
    const BodyEntry* entry = at(index.row());
    if (!entry) return {};
    const bool isNumber = index.column() >= Value;
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter) | (isNumber ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    switch (index.column()) {
    case Day:
        return format::date(entry->date);
    case What:
        return bodyWhat(entry->place);
    case Value:
        return entry->value;
    default:
        break;
    }
    if (!entry->change) return format::absent();
    if (!entry->place)
        return QString(format::signedNumber(format::massIn(*entry->change, m_unit), 1) + QChar(0x00A0)
                       + format::unit(m_unit));
    const bool inches = entry->typed.endsWith(QStringLiteral("in"));
    return QString(format::signedNumber(*entry->change / (inches ? kCentimetresPerInch : 1.0), 1) + QChar(0x00A0)
                   + toText(inches ? TapeUnit::in : TapeUnit::cm));
}

QVariant BodyModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (section >= Value ? Qt::AlignRight : Qt::AlignLeft));
    if (role != Qt::DisplayRole) return {};
    switch (section) {
    case Day:
        return tr("day");
    case What:
        return tr("what");
    case Value:
        return tr("value");
    default:
        return tr("change");
    }
}

}  // namespace steelyard
