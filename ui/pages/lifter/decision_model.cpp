#include "ui/pages/lifter/decision_model.h"

#include "core/flags/registry.h"
#include "core/flags/snapshot.h"
#include "ui/format/format.h"

#include <array>

namespace steelyard {
namespace {

struct DecisionColumn {
    const char* title;
    const char* tip;
    QString (*text)(const DecisionOutcome&, const AthleteLog&);
    QString (*detail)(const DecisionOutcome&, const AthleteLog&);
};

QString aboutText(const DecisionOutcome& one, const AthleteLog& log)
{
    return one.line ? lineName(log.lines[*one.line]) : DecisionModel::tr("the lifter as a whole");
}

QString answerWord(const DecisionOutcome& one, const AthleteLog&)
{
    return format::decisionAnswer(one.decision->value);
}

QString saidThen(const DecisionOutcome& one, const AthleteLog&)
{
    return one.decision->value.said;
}

QString capacityAfter(const DecisionOutcome& one, const AthleteLog& log)
{
    if (!one.decision->value.line)
        return DecisionModel::tr("%1, before: %2")
            .arg(DecisionModel::tr("%n session(s)", nullptr, one.after.sessions), QString::number(one.before.sessions));
    if (!one.capacityAfter) return one.after.sessions == 0 ? DecisionModel::tr("not trained") : format::absent();
    const MassUnit unit = log.athlete.value.unit;
    if (!one.capacityBefore) return DecisionModel::tr("capacity %1").arg(format::mass(one.capacityAfter->kg, unit));
    return DecisionModel::tr("%1: %2 to %3")
        .arg(format::signedPercent(one.capacityAfter->kg / one.capacityBefore->kg - 1, 1),
             format::number(format::massIn(one.capacityBefore->kg, unit), 1),
             format::mass(one.capacityAfter->kg, unit));
}

QString qualityAfter(const DecisionOutcome& one, const AthleteLog&)
{
    QStringList parts;
    if (one.decision->value.line) parts += DecisionModel::tr("%n session(s)", nullptr, one.after.sessions);
    if (one.before.offShare && one.after.offShare)
        parts += DecisionModel::tr("off standard %1 to %2")
                     .arg(format::percent(*one.before.offShare), format::percent(*one.after.offShare));
    if (one.before.worstDiscomfort || one.after.worstDiscomfort) {
        const auto worst = [](const OutcomeSpell& spell) {
            return spell.worstDiscomfort ? QString::number(*spell.worstDiscomfort) : format::absent();
        };
        parts += DecisionModel::tr("discomfort %1 to %2").arg(worst(one.before), worst(one.after));
    }
    if (!one.isOver) parts += DecisionModel::tr("so far");
    return parts.join(QStringLiteral(" · "));
}

const auto kDecisionColumns = std::to_array<DecisionColumn>({
    {QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Decided"), "",
     [](const DecisionOutcome& one, const AthleteLog&) { return format::date(one.decision->value.madeOn); },
     [](const DecisionOutcome&, const AthleteLog&) { return QString(); }},
    {QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Flag"),
     QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Below: the lift it was about"),
     [](const DecisionOutcome& one, const AthleteLog&) { return ruleTitle(one.decision->value.rule); }, aboutText},
    {QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Answer"),
     QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Below: what the flag said then"), answerWord, saidThen},
    {QT_TRANSLATE_NOOP("steelyard::DecisionModel", "Four weeks after"),
     QT_TRANSLATE_NOOP(
         "steelyard::DecisionModel",
         "Capacity as it was known at the decision and four weeks later; below: the four weeks before beside "
         "those after"),
     capacityAfter, qualityAfter},
});

const DecisionColumn& columnAt(int section)
{
    return kDecisionColumns.at(static_cast<std::size_t>(section));
}

}  // namespace

void DecisionModel::setOutcomes(std::vector<DecisionOutcome> outcomes, const AthleteLog* log)
{
    beginResetModel();
    m_outcomes = std::move(outcomes);
    m_log = log;
    endResetModel();
}

const DecisionOutcome* DecisionModel::at(int row) const
{
    return row >= 0 && row < rowCount() ? &m_outcomes[static_cast<std::size_t>(row)] : nullptr;
}

ChartTable DecisionModel::table() const
{
    ChartTable table;
    for (const DecisionColumn& column : kDecisionColumns) table.header += tr(column.title);
    for (const DecisionOutcome& one : m_outcomes) {
        QStringList cells;
        for (const DecisionColumn& column : kDecisionColumns) {
            QStringList lines{column.text(one, *m_log), column.detail(one, *m_log)};
            lines.removeAll(QString());
            cells += lines.join(QStringLiteral("; "));
        }
        table.rows.push_back(std::move(cells));
    }
    return table;
}

int DecisionModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_outcomes.size());
}

int DecisionModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(kDecisionColumns.size());
}

QVariant DecisionModel::data(const QModelIndex& index, int role) const
{
    const DecisionOutcome* one = at(index.row());
    if (!one) return {};
    const DecisionColumn& column = columnAt(index.column());
    switch (role) {
    case Qt::DisplayRole:
        return column.text(*one, *m_log);
    case DetailRole:
        return column.detail(*one, *m_log);
    case Qt::ToolTipRole: {
        const QString detail = column.detail(*one, *m_log);
        return format::plainToolTip(column.text(*one, *m_log)
                                    + (detail.isEmpty() ? QString() : QStringLiteral("\n") + detail));
    }
    default:
        return {};
    }
}

QVariant DecisionModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal) return {};
    if (role == Qt::DisplayRole) return tr(columnAt(section).title);
    if (role == Qt::ToolTipRole && *columnAt(section).tip != '\0') return tr(columnAt(section).tip);
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::Alignment(Qt::AlignLeft | Qt::AlignVCenter));
    return {};
}

}  // namespace steelyard
