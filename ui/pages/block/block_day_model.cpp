#include "ui/pages/block/block_day_model.h"

#include "core/keying/slot_notation.h"
#include "ui/format/format.h"
#include "ui/format/lift_words.h"
#include "ui/format/plan_words.h"
#include "ui/pages/block/block_words.h"

#include <algorithm>

namespace steelyard {
namespace {

// What is typed in a column as a word of the dose line, so that both read alike; nullopt: it can't be one.
std::optional<QString> doseWord(int column, const QString& typed)
{
    if (typed.contains(u' ') || typed.contains(u'"')) return std::nullopt;
    switch (column) {
    case BlockDayModel::Sets:
        return typed.isEmpty() ? std::nullopt : std::optional(typed + u'x');
    case BlockDayModel::Reps:
        // A number alone would be a load.
        return typed.contains(u'x') || !readBand(typed) ? std::nullopt : std::optional(QStringLiteral("1x") + typed);
    case BlockDayModel::Reserve:
        return typed.isEmpty() ? typed : QStringLiteral("rir") + typed;
    case BlockDayModel::LoadColumn:
        return typed.contains(u'x') || typed.contains(u'-') || readRest(typed) ? std::nullopt : std::optional(typed);
    case BlockDayModel::Rest:
        if (typed.isEmpty()) return typed;
        if (QString word = typed.back().isDigit() ? typed + u's' : typed; readRest(word)) return word;
        return std::nullopt;
    default:
        return std::nullopt;
    }
}

bool isWords(int column)
{
    return column == BlockDayModel::Lift || column >= BlockDayModel::GoesOn;
}

}  // namespace

void BlockDayModel::setShown(BlockShownPtr shown, QDate date)
{
    beginResetModel();
    m_shown = std::move(shown);
    m_date = date;
    endResetModel();
}

std::optional<PlanPlace> BlockDayModel::placeOf(int row) const
{
    const auto day = m_shown ? dayOn(m_shown->block(), m_date) : std::nullopt;
    if (!day || row < 0) return std::nullopt;
    const PlanPlace place{day->week, day->day, static_cast<std::size_t>(row)};
    return slotAt(m_shown->block(), place) ? std::optional(place) : std::nullopt;
}

const Slot* BlockDayModel::slotOf(int row) const
{
    const auto place = placeOf(row);
    return place ? slotAt(m_shown->block(), *place) : nullptr;
}

int BlockDayModel::rowCount(const QModelIndex& parent) const
{
    if (parent.isValid() || !m_shown || !m_date.isValid()) return 0;
    const auto day = dayOn(m_shown->block(), m_date);
    return day ? static_cast<int>(m_shown->block().weeks[day->week].days[day->day].slotList.size()) + 1 : 1;
}

int BlockDayModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QString BlockDayModel::text(const Slot& slot, int column) const
{
    switch (column) {
    case Lift:
        return wholeLiftName(liftOf(m_shown->block(), slot), m_shown->library());
    case Reps:
        return slot.band.low == slot.band.high ? QString::number(slot.band.low) : format::band(slot.band);
    case Reserve:
        return slot.plannedRir ? format::decimal(*slot.plannedRir) : format::absent();
    case LoadColumn:
        if (!slot.load) return tr("from the record");
        return slot.loadLocked ? tr("%1 kept").arg(format::load(*slot.load)) : format::load(*slot.load);
    case Rest:
        return slot.restSeconds ? QString::number(*slot.restSeconds) : tr("as usual");
    case GoesOn:
        return otherProgressionWords(slot).isEmpty() ? tr("as usual") : otherProgressionWords(slot);
    case Turns:
        return slot.superset > 0 ? QString(QChar(u'A' + slot.superset - 1)) : QString();
    default:
        return editText(slot, column);
    }
}

QString BlockDayModel::editText(const Slot& slot, int column) const
{
    switch (column) {
    case Sets:
        return QString::number(slot.sets);
    case Reps:
        return writeBand(slot.band);
    case Reserve:
        return slot.plannedRir ? slot.plannedRir->toString() : QString();
    case LoadColumn:
        return slot.load ? writePlainLoad(*slot.load, m_shown->unit()) : QString();
    case Rest:
        return slot.restSeconds ? QString::number(*slot.restSeconds) : QString();
    case Note:
        return slot.note;
    default:
        return {};
    }
}

QString BlockDayModel::hint(int column)
{
    switch (column) {
    case Sets:
        return tr("Type how many sets: 3");
    case Reps:
        return tr("Type the rep band: 8-12, or 10");
    case Reserve:
        return tr("Type the repetitions in reserve: 2; nothing leaves them open");
    case LoadColumn:
        return tr("Type the load: 42.5 or 95lb; nothing leaves it to the record");
    case Rest:
        return tr("Type the seconds of rest: 120; nothing leaves it as usual");
    default:
        return {};
    }
}

std::optional<Slot> BlockDayModel::typedSlot(const QModelIndex& index, const QString& typed) const
{
    const Slot* now = slotOf(index.row());
    if (!now) return std::nullopt;
    Slot slot = *now;
    if (index.column() == Note) {
        slot.note = typed;
        return slot;
    }
    const auto word = doseWord(index.column(), typed.trimmed());
    const auto reading = word ? readDose(*word, *now, m_shown->unit()) : tl::unexpected(NotationProblem());
    if (!reading) return std::nullopt;
    if (index.column() == Sets) slot.sets = reading->sets;
    if (index.column() == Reps) slot.band = reading->band;
    if (index.column() == Reserve) slot.plannedRir = reading->plannedRir;
    if (index.column() == LoadColumn) slot.load = reading->load;
    if (index.column() == Rest) slot.restSeconds = reading->restSeconds;
    return slot;
}

QVariant BlockDayModel::data(const QModelIndex& index, int role) const
{
    const Slot* slot = m_shown ? slotOf(index.row()) : nullptr;
    if (!slot) return {};
    if (role == Qt::DisplayRole) {
        const auto broken = [&](const BrokenLimit& one) {
            const auto place = *placeOf(index.row());
            return one.week == place.week && one.day == place.day && one.slot == place.slot;
        };
        const auto limit = std::ranges::find_if(m_shown->totals.broken, broken);
        const QString words = text(*slot, index.column());
        if (index.column() != Lift) return words;
        const QString pin = m_shown->isPinned(*placeOf(index.row())) ? kPinShape + QStringLiteral(" ") : QString();
        if (limit == m_shown->totals.broken.end()) return pin + words;
        return pin + kLimitShape + QStringLiteral(" %1: ").arg(limitWord(limit->kind)) + words;
    }
    if (role == Qt::EditRole) return editText(*slot, index.column());
    if (role == Qt::ToolTipRole) return format::plainToolTip(text(*slot, index.column()));
    if (role == Qt::TextAlignmentRole) {
        const bool words = isWords(index.column());
        return QVariant::fromValue((words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
    return {};
}

bool BlockDayModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    const auto place = placeOf(index.row());
    if (role != Qt::EditRole || !place) return false;
    const auto slot = typedSlot(index, value.toString());
    if (!slot) {
        Q_EMIT typingSaid(hint(index.column()));
        return false;
    }
    Q_EMIT typed(*place, *slot);
    return true;
}

QVariant BlockDayModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::TextAlignmentRole) {
        const bool words = isWords(section);
        return QVariant::fromValue((words ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    }
    if (role != Qt::DisplayRole) return {};
    switch (section) {
    case Lift:
        return tr("Lift");
    case Sets:
        return tr("Sets");
    case Reps:
        return tr("Reps");
    case Reserve:
        return tr("RIR");
    case LoadColumn:
        return tr("Load");
    case Rest:
        return tr("Rest, s");
    case GoesOn:
        return tr("Goes on");
    case Turns:
        return tr("In turns");
    default:
        return tr("Note");
    }
}

Qt::ItemFlags BlockDayModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    const bool typedHere = index.column() != Lift && index.column() != GoesOn && index.column() != Turns;
    if (typedHere && slotOf(index.row()) && m_shown->isOpen(m_date)) flags |= Qt::ItemIsEditable;
    return flags;
}

}  // namespace steelyard
