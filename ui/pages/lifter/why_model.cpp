#include "ui/pages/lifter/why_model.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/why_words.h"

#include <QtGui/QFont>
#include <QtGui/QGuiApplication>
#include <QtGui/QPalette>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

constexpr Qt::Alignment kWhyLeft = Qt::AlignLeft | Qt::AlignVCenter;
constexpr Qt::Alignment kWhyRight = Qt::AlignRight | Qt::AlignVCenter;

QString nothingTogether(const ExplainedSession&)
{
    return {};
}

struct WhyColumn {
    const char* title;
    const char* tip;
    Qt::Alignment alignment;
    QString (*ofSet)(const ExplainedSet&);
    QString (*ofSession)(const ExplainedSession&);
};

const auto kWhyColumns = std::to_array<WhyColumn>({
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Date"), "", kWhyLeft, [](const ExplainedSet&) { return QString(); },
     [](const ExplainedSession& session) { return format::dayMonth(session.date); }},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Set"), QT_TRANSLATE_NOOP("steelyard::WhyModel", "As it was keyed in"),
     kWhyLeft, [](const ExplainedSet& set) { return briefSetWords(set.logged.set); },
     [](const ExplainedSession& session) { return togetherWords(session); }},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Heard as"),
     QT_TRANSLATE_NOOP("steelyard::WhyModel",
                       "What the set can say: so many repetitions to failure, at least or at most so many"),
     kWhyLeft, [](const ExplainedSet& set) { return heardWords(set); }, nothingTogether},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Reps expected"),
     QT_TRANSLATE_NOOP("steelyard::WhyModel",
                       "Repetitions to failure that were to be expected before the session; in brackets where "
                       "four of five such sets lie"),
     kWhyRight, [](const ExplainedSet& set) { return expectedWords(set); }, nothingTogether},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Reached"),
     QT_TRANSLATE_NOOP("steelyard::WhyModel",
                       "Repetitions to failure that the set stands for, with what was kept in reserve"),
     kWhyRight, [](const ExplainedSet& set) { return reachedWords(set); }, nothingTogether},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Counted"),
     QT_TRANSLATE_NOOP("steelyard::WhyModel",
                       "A set far from what was expected counts less, for it is likelier a slip"),
     kWhyLeft, [](const ExplainedSet& set) { return countedWords(set); }, nothingTogether},
    {QT_TRANSLATE_NOOP("steelyard::WhyModel", "Speaks for"),
     QT_TRANSLATE_NOOP("steelyard::WhyModel", "Which way it moved the odds; strongly: it doubled or halved them"),
     kWhyLeft, [](const ExplainedSet& set) { return isHeard(set) ? pullWords(set.pull) : QString(); },
     [](const ExplainedSession& session) {
         return std::ranges::any_of(session.sets, isHeard) ? pullWords(session.pull()) : QString();
     }},
});

}  // namespace

void WhyModel::setExplanation(LineExplanation explanation)
{
    beginResetModel();
    m_explanation = std::move(explanation);
    m_rows.clear();
    for (std::size_t i = m_explanation.sessions.size(); i-- > 0;) {
        const auto sets = static_cast<int>(m_explanation.sessions[i].sets.size());
        if (sets > 1) m_rows.push_back({i, -1, true});
        for (int set = 0; set < sets; ++set) m_rows.push_back({i, set, sets == 1});
    }
    endResetModel();
}

int WhyModel::exposureAt(int row) const
{
    if (row < 0 || row >= rowCount()) return -1;
    return static_cast<int>(m_explanation.sessions[m_rows[static_cast<std::size_t>(row)].session].exposure);
}

bool WhyModel::isTogether(int row) const
{
    return row >= 0 && row < rowCount() && m_rows[static_cast<std::size_t>(row)].set < 0;
}

int WhyModel::rowOfExposure(int exposure) const
{
    for (int row = 0; row < rowCount(); ++row)
        if (exposureAt(row) == exposure) return row;
    return -1;
}

int WhyModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int WhyModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(kWhyColumns.size());
}

QString WhyModel::text(const TableRow& row, int column) const
{
    const ExplainedSession& session = m_explanation.sessions[row.session];
    const WhyColumn& how = kWhyColumns.at(static_cast<std::size_t>(column));
    if (row.set < 0) return how.ofSession(session);
    if (column == DateColumn && row.dated) return format::dayMonth(session.date);
    return how.ofSet(session.sets[static_cast<std::size_t>(row.set)]);
}

QVariant WhyModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const TableRow& row = m_rows[static_cast<std::size_t>(index.row())];
    const ExplainedSession& session = m_explanation.sessions[row.session];
    const ExplainedSet* set = row.set < 0 ? nullptr : &session.sets[static_cast<std::size_t>(row.set)];
    switch (role) {
    case Qt::DisplayRole:
        return text(row, index.column());
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(kWhyColumns.at(static_cast<std::size_t>(index.column())).alignment);
    case Qt::ToolTipRole:
        if (!set) return {};
        return format::plainToolTip(wholeSetWords(set->logged.set));
    case Qt::AccessibleTextRole:
        return index.column() == DateColumn ? format::date(session.date) : text(row, index.column());
    case Qt::FontRole: {
        QFont font;
        font.setBold(!set);
        return font;
    }
    case Qt::ForegroundRole:
        // What wasn't heard stands back.
        if (set && !isHeard(*set)) return QGuiApplication::palette().brush(QPalette::PlaceholderText);
        return {};
    default:
        return {};
    }
}

QVariant WhyModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    const WhyColumn& column = kWhyColumns.at(static_cast<std::size_t>(section));
    if (role == Qt::DisplayRole) return tr(column.title);
    if (role == Qt::ToolTipRole && *column.tip) return tr(column.tip);
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(column.alignment);
    return {};
}

}  // namespace steelyard
