#include "ui/models/roster_model.h"

#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/models/attention_words.h"

#include <algorithm>

namespace steelyard {

RosterModel::RosterModel(const Book& book, const ReviewStore& reviews, QObject* parent)
    : QAbstractListModel(parent), m_book(book), m_reviews(reviews)
{
    connect(&m_reviews, &ReviewStore::reviewsChanged, this, &RosterModel::readReviews);
    readRoster();
}

int RosterModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

QVariant RosterModel::data(const QModelIndex& index, int role) const
{
    if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
    const RosterRow& at = row(index);
    switch (role) {
    case Qt::DisplayRole:
        return format::person(at.name);
    case NameRole:
        return at.name;
    case GroupRole:
        return at.group;
    case OrderRole:
        return at.order;
    case RowRole:
        return QVariant::fromValue(&at);
    case Qt::ToolTipRole:
        return format::plainToolTip(explained(at));
    case Qt::AccessibleTextRole:
        return QStringLiteral("%1, %2").arg(format::person(at.name), inWords(at));
    default:
        return {};
    }
}

// The name and what is known, then why the lifter stands in this place.
QString RosterModel::explained(const RosterRow& row) const
{
    QString text = format::person(row.name) + QLatin1Char('\n') + inWords(row);
    if (const AthleteReview* review = m_reviews.find(row.athlete))
        text += QLatin1Char('\n') + attentionWords(*review, m_reviews.asOf());
    return text;
}

QString RosterModel::inWords(const RosterRow& row)
{
    if (!row.reviewed) return tr("not read yet");
    QStringList parts{row.worst ? tr("%n flag(s) open", nullptr, row.openFlags) : tr("nothing open")};
    for (const Verdict verdict :
         {Verdict::Slipping, Verdict::Stalled, Verdict::CantTell, Verdict::Holding, Verdict::Progressing}) {
        const int count = row.verdicts.at(static_cast<std::size_t>(verdict));
        if (count > 0)
            parts.push_back(QStringLiteral("%1 %2").arg(QString::number(count), format::verdictWord(verdict)));
    }
    if (row.finished) parts.push_back(tr("finished"));
    return parts.join(QStringLiteral(", "));
}

std::optional<int> RosterModel::rowOf(Id<Athlete> athlete) const
{
    const auto at = std::ranges::find(m_rows, athlete, &RosterRow::athlete);
    if (at == m_rows.end()) return std::nullopt;
    return static_cast<int>(at - m_rows.begin());
}

QStringList RosterModel::groups() const
{
    QStringList names;
    for (const RosterRow& row : m_rows)
        if (!row.group.isEmpty() && !names.contains(row.group)) names.push_back(row.group);
    std::ranges::sort(names, [](const QString& a, const QString& b) { return a.localeAwareCompare(b) < 0; });
    return names;
}

void RosterModel::readRoster()
{
    const auto athletes = m_book.athletes().all();
    if (!athletes) return;  // the rows shown stay; whoever changed the roster has told the error
    std::vector<RosterRow> rows;
    for (const Row<Athlete>& athlete : *athletes) {
        if (athlete.value.archived) continue;
        RosterRow row{.athlete = athlete.id, .name = athlete.value.name, .group = athlete.value.group};
        if (const auto known = rowOf(athlete.id)) row.order = m_rows.at(static_cast<std::size_t>(*known)).order;
        fill(row);
        rows.push_back(std::move(row));
    }
    take(std::move(rows));
}

void RosterModel::fill(RosterRow& row) const
{
    const AthleteReview* review = m_reviews.find(row.athlete);
    row.reviewed = review != nullptr;
    if (!review) return;
    row.openFlags = static_cast<int>(review->flags.size());
    row.worst.reset();
    for (const Flag& flag : review->flags)
        if (!row.worst || flag.severity > *row.worst) row.worst = flag.severity;
    row.verdicts.fill(0);
    for (const LineReview& line : review->lines) ++row.verdicts.at(static_cast<std::size_t>(line.reading.verdict));
    row.lastSession = review->lastSession;
    row.finished = review->finished;
}

void RosterModel::readReviews()
{
    std::vector<RosterRow> rows = m_rows;
    for (RosterRow& row : rows) fill(row);
    take(std::move(rows));
    if (m_stacked || !m_reviews.isReady()) return;
    restack();
    Q_EMIT firstStacked();
}

void RosterModel::restack()
{
    m_stacked = true;
    const auto& reviews = m_reviews.reviews();
    for (RosterRow& row : m_rows) {
        const auto at = std::ranges::find(reviews, row.athlete, &AthleteReview::athlete);
        row.order = static_cast<double>(reviews.end() - at);
    }
    if (!m_rows.empty()) Q_EMIT dataChanged(index(0), index(rowCount() - 1));
}

void RosterModel::take(std::vector<RosterRow> rows)
{
    if (std::ranges::equal(rows, m_rows, {}, &RosterRow::athlete, &RosterRow::athlete)) {
        for (std::size_t i = 0; i < rows.size(); ++i) {
            if (rows[i] == m_rows[i]) continue;
            m_rows[i] = std::move(rows[i]);
            Q_EMIT dataChanged(index(static_cast<int>(i)), index(static_cast<int>(i)));
        }
        return;
    }
    beginResetModel();
    m_rows = std::move(rows);
    endResetModel();
}

}  // namespace steelyard
