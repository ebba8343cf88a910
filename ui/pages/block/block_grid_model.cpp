#include "ui/pages/block/block_grid_model.h"

#include "core/keying/slot_notation.h"
#include "ui/format/format.h"
#include "ui/format/lift_words.h"
#include "ui/format/plan_words.h"
#include "ui/pages/block/block_words.h"
#include "ui/shell/theme.h"

#include <QtGui/QGuiApplication>

#include <algorithm>
#include <cmath>

namespace steelyard {

void BlockGridModel::setShown(BlockShownPtr shown)
{
    beginResetModel();
    m_shown = std::move(shown);
    endResetModel();
}

int BlockGridModel::rowCount(const QModelIndex& parent) const
{
    if (parent.isValid() || !m_shown || !m_shown->hasWeek()) return 0;
    std::size_t longest = 0;
    for (const PlannedDay& day : m_shown->week().days) longest = std::max(longest, day.slotList.size());
    return static_cast<int>(longest) + 1;
}

int BlockGridModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() || !m_shown || !m_shown->hasWeek() ? 0 : kDays;
}

QDate BlockGridModel::dateOf(int column) const
{
    return m_shown && column >= 0 && column < kDays ? m_shown->dateOfColumn(column) : QDate();
}

std::optional<std::size_t> BlockGridModel::dayOf(int column) const
{
    if (!m_shown || !m_shown->hasWeek()) return std::nullopt;
    const auto& days = m_shown->week().days;
    const auto found = std::ranges::find(days, dateOf(column), &PlannedDay::date);
    if (found == days.end()) return std::nullopt;
    return static_cast<std::size_t>(found - days.begin());
}

std::optional<PlanPlace> BlockGridModel::placeOf(const QModelIndex& index) const
{
    const auto day = dayOf(index.column());
    if (!day || index.row() < 0) return std::nullopt;
    const PlanPlace place{m_shown->weekIndex, *day, static_cast<std::size_t>(index.row())};
    return slotAt(m_shown->block(), place) ? std::optional(place) : std::nullopt;
}

const Slot* BlockGridModel::slotOf(const QModelIndex& index) const
{
    const auto place = placeOf(index);
    return place ? slotAt(m_shown->block(), *place) : nullptr;
}

QModelIndex BlockGridModel::indexOf(QDate date, std::size_t slot) const
{
    if (!m_shown || !m_shown->hasWeek()) return {};
    const auto column = static_cast<int>(m_shown->dateOfColumn(0).daysTo(date));
    if (column < 0 || column >= kDays) return {};
    return index(std::min(static_cast<int>(slot), rowCount() - 1), column);
}

std::vector<const BrokenLimit*> BlockGridModel::limitsOf(const PlanPlace& place) const
{
    std::vector<const BrokenLimit*> found;
    for (const BrokenLimit& one : m_shown->totals.broken)
        if (one.week == place.week && one.day == place.day && one.slot == place.slot) found.push_back(&one);
    return found;
}

std::vector<const BrokenLimit*> BlockGridModel::limitsOfDay(std::size_t day) const
{
    std::vector<const BrokenLimit*> found;
    for (const BrokenLimit& one : m_shown->totals.broken)
        if (one.week == m_shown->weekIndex && one.day == day && !one.slot) found.push_back(&one);
    return found;
}

QString BlockGridModel::done(const QModelIndex& index) const
{
    const Slot* slot = slotOf(index);
    const QDate date = dateOf(index.column());
    return slot && date <= m_shown->today ? doneWords(*slot, date, m_shown->log()) : QString();
}

QString BlockGridModel::cellWords(const QModelIndex& index) const
{
    const Slot* slot = slotOf(index);
    if (!slot) return {};
    QStringList words{exerciseWords(*slot, m_shown->library()), doseWords(*slot), otherProgressionWords(*slot)};
    words.removeAll(QString());
    if (m_shown->isPinned(*placeOf(index))) words << tr("fixed for the next proposal");
    if (const QString did = done(index); !did.isEmpty()) words << tr("done %1").arg(did);
    for (const BrokenLimit* limit : limitsOf(*placeOf(index))) words << limit->sentence;
    return words.join(QStringLiteral(", "));
}

QString BlockGridModel::cellToolTip(const QModelIndex& index) const
{
    const Slot* slot = slotOf(index);
    if (!slot) return {};
    QStringList lines{wholeLiftName(liftOf(m_shown->block(), *slot), m_shown->library()), doseWords(*slot)};
    lines << progressionTitle(*slot);
    if (m_shown->isPinned(*placeOf(index))) lines << kPinShape + tr(" Fixed for the next proposal");
    if (slot->loadLocked) lines << tr("The load is the coach's own.");
    if (!slot->note.isEmpty()) lines << slot->note;
    if (const QString did = done(index); !did.isEmpty()) lines << tr("Done: %1").arg(did);
    for (const BrokenLimit* limit : limitsOf(*placeOf(index)))
        lines << kLimitShape + QStringLiteral(" ") + limit->sentence;
    return format::plainToolTip(lines.join(u'\n'));
}

QString BlockGridModel::headerText(int column) const
{
    const QDate date = dateOf(column);
    const auto day = dayOf(column);
    if (!day)
        return QLocale().dayName(date.dayOfWeek(), QLocale::ShortFormat).left(2) + u'\n' + QString::number(date.day());
    const DayTotal& total = m_shown->totals.weeks[m_shown->weekIndex].days[*day];
    const PlannedDay& planned = m_shown->week().days[*day];
    QString head = format::shortDay(date);
    if (!planned.title.isEmpty()) head += QStringLiteral(", ") + planned.title;
    QString sums = tr("%1 min, %2 sets").arg(static_cast<int>(std::lround(total.minutes))).arg(total.sets);
    const auto limits = limitsOfDay(*day);
    if (!limits.empty()) sums += QStringLiteral(" %1 %2").arg(kLimitShape).arg(limitWord(limits.front()->kind));
    return head + u'\n' + sums;
}

QString BlockGridModel::headerToolTip(int column) const
{
    const auto day = dayOf(column);
    if (!day)
        return isDayOff(m_shown->block(), dateOf(column))
                   ? tr("A day off")
                   : tr("A day without training; drop a lift here to make it one.");
    QStringList lines{headerText(column)};
    for (const BrokenLimit* limit : limitsOfDay(*day)) lines << kLimitShape + QStringLiteral(" ") + limit->sentence;
    return format::plainToolTip(lines.join(u'\n'));
}

QVariant BlockGridModel::data(const QModelIndex& index, int role) const
{
    if (!m_shown) return {};
    if (role == Qt::DisplayRole || role == Qt::AccessibleTextRole) return cellWords(index);
    if (role == Qt::ToolTipRole) return cellToolTip(index);
    if (role == Qt::EditRole)
        if (const Slot* slot = slotOf(index)) return writeDose(*slot, m_shown->unit());
    return {};
}

QVariant BlockGridModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (!m_shown || orientation != Qt::Horizontal) return {};
    if (role == Qt::DisplayRole) return headerText(section);
    if (role == Qt::ToolTipRole) return headerToolTip(section);
    if (role == Qt::TextAlignmentRole)
        return QVariant::fromValue(dayOf(section) ? Qt::AlignLeft | Qt::AlignVCenter : Qt::AlignCenter);
    if (role == Qt::ForegroundRole) {
        const ThemeColours& colours = themeColours(QGuiApplication::palette());
        const auto day = dayOf(section);
        if (day && !limitsOfDay(*day).empty()) return colours.warm;
        return day && dateOf(section) >= m_shown->firstOpen ? colours.text : colours.quiet;
    }
    return {};
}

Qt::ItemFlags BlockGridModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    if (slotOf(index) && m_shown->isOpen(dateOf(index.column()))) flags |= Qt::ItemIsEditable;
    return flags;
}

}  // namespace steelyard
