#include "ui/models/lines_model.h"

#include "ui/format/format.h"

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct LineColumn {
    const char* title;  // "%1" takes the unit of mass
    const char* tip;
    Qt::Alignment alignment;
    QString (*text)(const LineReview&, MassUnit);
    QString (*detail)(const LineReview&, MassUnit);  // the quieter second line
    QVariant (*sortValue)(const LineReview&);
};

QString rateText(const LineReview& line, MassUnit)
{
    return line.reading.rate ? format::signedNumber(line.reading.rate->perWeek * 100, 2) : format::absent();
}

QString rateInterval(const LineReview& line, MassUnit)
{
    if (!line.reading.rate) return {};
    return LinesModel::tr("%1 to %2")
        .arg(format::signedNumber(line.reading.rate->low90 * 100, 2),
             format::signedNumber(line.reading.rate->high90 * 100, 2));
}

QString capacityText(const LineReview& line, MassUnit unit)
{
    return line.reading.capacity ? format::number(format::massIn(line.reading.capacity->kg, unit), 1)
                                 : format::absent();
}

QString capacityInterval(const LineReview& line, MassUnit unit)
{
    if (!line.reading.capacity) return {};
    return LinesModel::tr("%1 to %2")
        .arg(format::number(format::massIn(line.reading.capacity->low90Kg, unit), 1),
             format::number(format::massIn(line.reading.capacity->high90Kg, unit), 1));
}

QString lineTitleText(const LineReview& line, MassUnit)
{
    return line.variant.isEmpty() ? line.exercise : line.exercise + QStringLiteral(", ") + line.variant;
}

QString lineDetailText(const LineReview& line, MassUnit)
{
    QStringList parts{line.grip, line.standard};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QString watchedText(const LineReview& line, MassUnit)
{
    return LinesModel::tr("%1 watched").arg(format::number(line.reading.watchedShare * 100, 0));
}

QString noDetail(const LineReview&, MassUnit)
{
    return {};
}

QVariant nothingToSort(const LineReview&)
{
    return {};
}

constexpr Qt::Alignment kLeft = Qt::AlignLeft | Qt::AlignVCenter;
constexpr Qt::Alignment kRight = Qt::AlignRight | Qt::AlignVCenter;

const auto kLineColumns = std::to_array<LineColumn>({
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Verdict"), QT_TRANSLATE_NOOP("steelyard::LinesModel", "Y says why"),
     kLeft,
     [](const LineReview& line, MassUnit) {
         return format::verdictShape(line.reading.verdict) + QLatin1Char(' ')
                + format::verdictWord(line.reading.verdict);
     },
     noDetail, [](const LineReview& line) { return QVariant(static_cast<int>(line.reading.verdict)); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Lift line"),
     QT_TRANSLATE_NOOP("steelyard::LinesModel", "Exercise and variant; below: grip and standard"), kLeft, lineTitleText,
     lineDetailText, [](const LineReview& line) { return QVariant(lineTitleText(line, MassUnit::kg)); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Rate, %/week"),
     QT_TRANSLATE_NOOP("steelyard::LinesModel", "Below: where the true rate lies with 90 % confidence"), kRight,
     rateText, rateInterval,
     [](const LineReview& line) { return line.reading.rate ? QVariant(line.reading.rate->perWeek) : QVariant(); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Capacity, %1"),
     QT_TRANSLATE_NOOP("steelyard::LinesModel",
                       "Strength now, as the load for one repetition; below: where it lies with 90 % confidence"),
     kRight, capacityText, capacityInterval,
     [](const LineReview& line) { return line.reading.capacity ? QVariant(line.reading.capacity->kg) : QVariant(); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Counted, %"),
     QT_TRANSLATE_NOOP("steelyard::LinesModel",
                       "Repetitions to the standard, of those completed lately; below: how much of the "
                       "working sets somebody watched"),
     kRight, [](const LineReview& line, MassUnit) { return format::number(line.reading.countedShare * 100, 0); },
     watchedText, [](const LineReview& line) { return QVariant(line.reading.countedShare); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Sessions"), "", kRight,
     [](const LineReview& line, MassUnit) { return format::number(line.reading.exposures, 0); }, noDetail,
     [](const LineReview& line) { return QVariant(line.reading.exposures); }},
    {QT_TRANSLATE_NOOP("steelyard::LinesModel", "Capacity lately"),
     QT_TRANSLATE_NOOP("steelyard::LinesModel", "The last sessions; hollow: nobody watched, small cross: off standard"),
     kLeft, noDetail, noDetail, nothingToSort},
});

}  // namespace

void LinesModel::setLines(std::vector<LineReview> lines, MassUnit unit)
{
    beginResetModel();
    m_lines = std::move(lines);
    m_unit = unit;
    endResetModel();
}

std::optional<int> LinesModel::rowOf(Id<LiftLine> line) const
{
    const auto at = std::ranges::find(m_lines, line, &LineReview::id);
    if (at == m_lines.end()) return std::nullopt;
    return static_cast<int>(at - m_lines.begin());
}

int LinesModel::nameColumn()
{
    return 1;
}

int LinesModel::sparklineColumn()
{
    return static_cast<int>(kLineColumns.size()) - 1;
}

int LinesModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_lines.size());
}

int LinesModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(kLineColumns.size());
}

QVariant LinesModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const LineReview& line = m_lines.at(static_cast<std::size_t>(index.row()));
    const LineColumn& column = kLineColumns.at(static_cast<std::size_t>(index.column()));
    switch (role) {
    case Qt::DisplayRole:
        return column.text(line, m_unit);
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(column.alignment);
    case DetailRole:
        return column.detail(line, m_unit);
    case Qt::ToolTipRole:
        return format::plainToolTip(lineTitleText(line, m_unit) + QStringLiteral(", ") + lineDetailText(line, m_unit)
                                    + QStringLiteral(": ") + line.reading.why);
    case Qt::AccessibleTextRole:
        return QString(column.text(line, m_unit) + QLatin1Char(' ') + column.detail(line, m_unit)).trimmed();
    case SortRole:
        return column.sortValue(line);
    case PointsRole:
        return QVariant::fromValue(&line.reading.points);
    default:
        return {};
    }
}

QVariant LinesModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    const LineColumn& column = kLineColumns.at(static_cast<std::size_t>(section));
    if (role == Qt::DisplayRole) {
        const QString title = tr(column.title);
        return title.contains(QStringLiteral("%1")) ? title.arg(format::unit(m_unit)) : title;
    }
    if (role == Qt::ToolTipRole && *column.tip) return tr(column.tip);
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(column.alignment);
    return {};
}

}  // namespace steelyard
