#include "ui/pages/lifter/set_table_model.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/set_words.h"

namespace steelyard {

void SetTableModel::setSets(std::vector<LoggedSet> sets, bool editable)
{
    beginResetModel();
    m_sets = std::move(sets);
    m_editable = editable;
    endResetModel();
}

const LoggedSet* SetTableModel::at(int row) const
{
    return row >= 0 && row < rowCount() ? &m_sets[static_cast<std::size_t>(row)] : nullptr;
}

int SetTableModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_sets.size());
}

int SetTableModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QString SetTableModel::text(const SetEntry& set, int column) const
{
    switch (column) {
    case Number:
        return QString::number(set.number);
    case LoadColumn:
        return format::load(set.load);
    case Reps:
        return QString::number(set.reps);
    case Off:
        return set.off ? QString::number(*set.off) : tr("not watched");
    case Failed:
        return set.failed ? tr("1 part-way") : QString();
    case EffortColumn:
        return effortWords(set.effort);
    case LeanColumn:
        return set.leanDegrees ? format::decimal(*set.leanDegrees) : QString();
    case Marks:
        return marksWords(set.marks);
    case Kind:
        return format::setKindWord(set.kind);
    case Note:
        return set.note;
    default:
        return {};
    }
}

QString SetTableModel::editText(const SetEntry& set, int column) const
{
    if (column == Off && !set.off) return {};
    return text(set, column);
}

QVariant SetTableModel::data(const QModelIndex& index, int role) const
{
    const LoggedSet* logged = at(index.row());
    if (!logged) return {};
    switch (role) {
    case Qt::DisplayRole:
        return text(logged->set, index.column());
    case Qt::EditRole:
        return editText(logged->set, index.column());
    case Qt::ToolTipRole:
        if (index.column() == Off) return tr("Blank: nobody watched. 0: watched, and all to standard.");
        if (index.column() == LeanColumn)
            return tr("Backward lean of the trunk, measured on a film at the hardest point: degrees from upright.");
        return {};
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (index.column() <= LeanColumn ? Qt::AlignRight : Qt::AlignLeft));
    default:
        return {};
    }
}

QVariant SetTableModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation == Qt::Horizontal && role == Qt::TextAlignmentRole)
        return QVariant::fromValue(Qt::Alignment(Qt::AlignVCenter)
                                   | (section <= LeanColumn ? Qt::AlignRight : Qt::AlignLeft));
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    switch (section) {
    case Number:
        return tr("set");
    case LoadColumn:
        return tr("load");
    case Reps:
        return tr("reps");
    case Off:
        return tr("off standard");
    case Failed:
        return tr("failed");
    case EffortColumn:
        return tr("RIR");
    case LeanColumn:
        return tr("lean, °");
    case Marks:
        return tr("marks");
    case Kind:
        return tr("kind");
    case Note:
        return tr("note");
    default:
        return {};
    }
}

Qt::ItemFlags SetTableModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    const int column = index.column();
    if (m_editable
        && (column == LoadColumn || column == Reps || column == Off || column == EffortColumn || column == LeanColumn))
        flags |= Qt::ItemIsEditable;
    return flags;
}

std::optional<SetEntry> SetTableModel::typed(SetEntry set, int column, const QString& text) const
{
    const QString clean = text.trimmed();
    bool number = true;
    switch (column) {
    case LoadColumn:
        if (const auto load = parseLoadCell(clean, set.load.unit())) {
            set.load = *load;
            return set;
        }
        return std::nullopt;
    case Reps:
        set.reps = clean.toInt(&number);
        break;
    case Off:
        set.off.reset();
        if (!clean.isEmpty()) set.off = clean.toInt(&number);
        break;
    case EffortColumn:
        set.effort.reset();
        if (!clean.isEmpty()) {
            set.effort = parseEffortCell(clean);
            number = set.effort.has_value();
        }
        break;
    case LeanColumn:
        set.leanDegrees.reset();
        if (!clean.isEmpty()) {
            set.leanDegrees = parseDecimalCell(clean);
            number = set.leanDegrees.has_value();
        }
        break;
    default:
        return std::nullopt;
    }
    return number ? std::optional(set) : std::nullopt;
}

bool SetTableModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    const LoggedSet* logged = at(index.row());
    if (role != Qt::EditRole || !logged || !(flags(index) & Qt::ItemIsEditable)) return false;
    // By value: who hears changeWanted may set new sets.
    const Id<SetEntry> id = logged->id;
    const auto set = typed(logged->set, index.column(), value.toString());
    if (!set) {
        Q_EMIT refused(
            tr("“%1” can't be read in the column “%2”. The set stays as it was.")
                .arg(value.toString(), headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString()));
        return false;
    }
    if (*set == logged->set) return true;
    if (const Problems problems = validate(*set); !problems.empty()) {
        Q_EMIT refused(tr("%1 The set stays as it was.").arg(problems.front().text));
        return false;
    }
    Q_EMIT changeWanted(id, *set);
    return true;
}

}  // namespace steelyard
