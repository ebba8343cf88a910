#include "ui/pages/week/roster_picture_model.h"

#include "ui/format/format.h"
#include "ui/format/people.h"
#include "ui/models/attention_words.h"
#include "ui/pages/week/roster_picture_words.h"

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ShownReview {
    const AthleteReview& review;
    int row;
    QDate asOf;
};

struct PictureColumnRow {
    const char* title;
    const char* tip;
    QString (*text)(const ShownReview&);       // what stands there; empty: it is painted
    QString (*detail)(const ShownReview&);     // the quieter second line
    QStringList (*words)(const ShownReview&);  // all of it
    QVariant (*sortValue)(const ShownReview&);
};

QString paintedText(const ShownReview&)
{
    return {};
}

std::optional<Severity> worstOf(const AthleteReview& review)
{
    std::optional<Severity> worst;
    for (const Flag& flag : review.flags)
        if (!worst || flag.severity > *worst) worst = flag.severity;
    return worst;
}

QString attentionText(const ShownReview& shown)
{
    if (shown.review.finished) return RosterPictureModel::tr("✓ done");
    const auto worst = worstOf(shown.review);
    return format::severityShape(worst) + u' '
           + (worst ? format::severityWord(*worst) : RosterPictureModel::tr("clear"));
}

QString openFlagsText(const ShownReview& shown)
{
    return shown.review.flags.empty()
               ? RosterPictureModel::tr("nothing open")
               : RosterPictureModel::tr("%n open", nullptr, static_cast<int>(shown.review.flags.size()));
}

QString belongsTo(const ShownReview& shown)
{
    QStringList parts{shown.review.group, tagText(shown.review.tags)};
    parts.removeAll(QString());
    return parts.join(QStringLiteral(" · "));
}

QStringList lifterWords(const ShownReview& shown)
{
    QStringList words{format::person(shown.review.name), belongsTo(shown)};
    words.removeAll(QString());
    return words;
}

// Slipping before stalled before unreadable ones; a line more weighs more than any number of lesser ones.
QVariant linesSortValue(const ShownReview& shown)
{
    int score = 0;
    for (const LineReview* line : mainLinesOf(shown.review)) {
        if (line->reading.verdict == Verdict::Slipping) score += 100;
        if (line->reading.verdict == Verdict::Stalled) score += 10;
        if (line->reading.verdict == Verdict::CantTell) score += 1;
    }
    return -score;
}

QVariant setsSortValue(const ShownReview& shown)
{
    const auto isOutside = [](const WeeklyMuscleSets& sets) {
        return aimFit(sets) == AimFit::Under || aimFit(sets) == AimFit::Over;
    };
    return -static_cast<int>(std::ranges::count_if(shown.review.summary.muscles, isOutside));
}

QString discomfortText(const ShownReview& shown)
{
    const AthleteSummary& summary = shown.review.summary;
    if (!summary.discomfortRated) return format::absent();
    if (summary.joints.empty()) return RosterPictureModel::tr("none");
    return RosterPictureModel::tr("%1 %2", "joint and its rating")
        .arg(format::jointWord(summary.joints.front().joint), QString::number(summary.joints.front().rating));
}

QString otherDiscomfort(const ShownReview& shown)
{
    const AthleteSummary& summary = shown.review.summary;
    if (!summary.discomfortRated) return RosterPictureModel::tr("not rated");
    QStringList others;
    for (std::size_t i = 1; i < summary.joints.size(); ++i)
        others << RosterPictureModel::tr("%1 %2", "joint and its rating")
                      .arg(format::jointWord(summary.joints[i].joint), QString::number(summary.joints[i].rating));
    return others.join(QStringLiteral(", "));
}

// Rated high, rated, rated 0, never rated.
QVariant discomfortSortValue(const ShownReview& shown)
{
    const AthleteSummary& summary = shown.review.summary;
    if (!summary.discomfortRated) return 1;
    return summary.joints.empty() ? 0 : -summary.joints.front().rating;
}

// Most sessions missed first.
QVariant sessionsSortValue(const ShownReview& shown)
{
    double missed = 0;
    for (const AttendedWeek& week : shown.review.summary.weeks)
        if (week.expected) missed += *week.expected - week.came;
    return -missed;
}

const auto kPictureColumns = std::to_array<PictureColumnRow>({
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Lifter"),
     QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Below: group and your own tags; T changes the tags"),
     [](const ShownReview& shown) { return format::person(shown.review.name); }, belongsTo, lifterWords,
     [](const ShownReview& shown) { return QVariant(shown.review.name); }},
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Attention"),
     QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "How soon; hover over a lifter to read why they stand there"),
     attentionText, openFlagsText,
     [](const ShownReview& shown) {
         return QStringList{attentionText(shown), attentionWords(shown.review, shown.asOf)};
     },
     [](const ShownReview& shown) { return QVariant(shown.row); }},
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Main lines"),
     QT_TRANSLATE_NOOP("steelyard::RosterPictureModel",
                       "The lift lines trained most in the last weeks, each with its verdict and its last sessions; "
                       "hollow: nobody watched, small cross: off standard. The bar at the right is capacity today with "
                       "its 90 % interval"),
     paintedText, paintedText, [](const ShownReview& shown) { return verdictLines(shown.review); }, linesSortValue},
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Sets a week"),
     QT_TRANSLATE_NOOP(
         "steelyard::RosterPictureModel",
         "By muscle, mean of the last 3 weeks, helpers by their share; the bracket is what you aim at, an "
         "arrow says too few or too many. Outside the aim first"),
     paintedText, paintedText, [](const ShownReview& shown) { return setLines(shown.review); }, setsSortValue},
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Discomfort"),
     QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "The highest rating of the last 4 weeks by joint, 0–10"),
     discomfortText, otherDiscomfort, [](const ShownReview& shown) { return discomfortLines(shown.review); },
     discomfortSortValue},
    {QT_TRANSLATE_NOOP("steelyard::RosterPictureModel", "Sessions"),
     QT_TRANSLATE_NOOP(
         "steelyard::RosterPictureModel",
         "The last 8 weeks, the newest at the right; a filled dot is a session, a hollow one was expected: "
         "by the block, the days agreed, or what was usual before"),
     paintedText, paintedText, [](const ShownReview& shown) { return sessionLines(shown.review); }, sessionsSortValue},
});

}  // namespace

RosterPictureModel::RosterPictureModel(const ReviewStore& reviews, QObject* parent)
    : QAbstractTableModel(parent), m_reviews(reviews)
{
    readReviews();
}

void RosterPictureModel::readReviews()
{
    beginResetModel();
    m_count = static_cast<int>(m_reviews.reviews().size());
    endResetModel();
}

const AthleteReview* RosterPictureModel::review(int row) const
{
    const auto& all = m_reviews.reviews();
    return row >= 0 && row < std::ssize(all) ? &all[static_cast<std::size_t>(row)] : nullptr;
}

std::optional<int> RosterPictureModel::rowOf(Id<Athlete> athlete) const
{
    const auto& all = m_reviews.reviews();
    const auto at = std::ranges::find(all, athlete, &AthleteReview::athlete);
    const auto row = static_cast<int>(at - all.begin());
    return row < m_count ? std::optional(row) : std::nullopt;
}

QString RosterPictureModel::columnTitle(int column)
{
    return tr(kPictureColumns.at(static_cast<std::size_t>(column)).title);
}

int RosterPictureModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : m_count;
}

int RosterPictureModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(kPictureColumns.size());
}

QVariant RosterPictureModel::data(const QModelIndex& index, int role) const
{
    const AthleteReview* at = checkIndex(index, CheckIndexOption::IndexIsValid) ? review(index.row()) : nullptr;
    if (!at) return {};
    const ShownReview shown{*at, index.row(), m_reviews.asOf()};
    const PictureColumnRow& column = kPictureColumns.at(static_cast<std::size_t>(index.column()));
    switch (role) {
    case Qt::DisplayRole:
        return column.text(shown);
    case DetailRole:
        return column.detail(shown);
    case Qt::ToolTipRole:
        return format::plainToolTip(column.words(shown).join(u'\n'));
    case WordsRole:
    case Qt::AccessibleTextRole:
        return column.words(shown).join(QStringLiteral("; ")).replace(u'\n', QStringLiteral("; "));
    case SortRole:
        return column.sortValue(shown);
    case ReviewRole:
        return QVariant::fromValue(at);
    default:
        return {};
    }
}

QVariant RosterPictureModel::headerData(int section, Qt::Orientation orientation, int role) const
{
    if (orientation != Qt::Horizontal || section < 0 || section >= columnCount()) return {};
    if (role == Qt::DisplayRole) return columnTitle(section);
    if (role == Qt::ToolTipRole)
        return format::plainToolTip(tr(kPictureColumns.at(static_cast<std::size_t>(section)).tip));
    if (role == Qt::TextAlignmentRole) return QVariant::fromValue(Qt::AlignLeft | Qt::AlignVCenter);
    return {};
}

ChartTable pictureTable(const QAbstractItemModel& shown)
{
    ChartTable table;
    for (int column = 0; column < shown.columnCount(); ++column)
        table.header << shown.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    for (int row = 0; row < shown.rowCount(); ++row) {
        QStringList cells;
        for (int column = 0; column < shown.columnCount(); ++column)
            cells << shown.index(row, column).data(RosterPictureModel::WordsRole).toString();
        table.rows.push_back(cells);
    }
    return table;
}

}  // namespace steelyard
