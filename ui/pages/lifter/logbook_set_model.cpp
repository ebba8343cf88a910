#include "ui/pages/lifter/logbook_set_model.h"

#include "ui/format/format.h"
#include "ui/pages/lifter/line_list_model.h"
#include "ui/pages/lifter/set_words.h"

#include <QtGui/QFont>
#include <QtGui/QPalette>

#include <algorithm>

namespace steelyard {

QString ratingInWords(const ExerciseRating& rating, const AthleteLog& log)
{
    QStringList parts;
    const auto say = [&](const std::optional<int>& value, const QString& words) {
        if (value) parts += words.arg(*value);
    };
    say(rating.tension, LogbookSetModel::tr("tension %1 of 10"));
    say(rating.burn, LogbookSetModel::tr("burn %1"));
    say(rating.pump, LogbookSetModel::tr("pump %1"));
    if (rating.gaveOut == QStringLiteral("target"))
        parts += LogbookSetModel::tr("the target gave out first");
    else if (!rating.gaveOut.isEmpty()) {
        const QString name = log.muscleName(rating.gaveOut);
        parts += LogbookSetModel::tr("gave out first: %1").arg(name.isEmpty() ? rating.gaveOut : name);
    }
    for (std::size_t joint = 0; joint < kJointCount; ++joint)
        say(rating.discomfort[joint],
            LogbookSetModel::tr("discomfort, %1: %2 of 10").arg(format::jointWord(static_cast<Joint>(joint))));
    say(rating.nextSoreness, LogbookSetModel::tr("soreness the day after %1"));
    say(rating.nextWeakness, LogbookSetModel::tr("weakness the day after %1"));
    return parts.join(QStringLiteral(", "));
}

void LogbookSetModel::setSession(ShownSession session)
{
    beginResetModel();
    m_session = std::move(session);
    m_rows.clear();
    m_draftRow = -1;
    bool wanted = m_session.line.has_value();
    if (m_session.day)
        for (const LogbookPart& part : m_session.day->parts) {
            addRows(part.line, part.exposure);
            if (part.line == m_session.line) wanted = false;
        }
    if (wanted && m_session.editable) addRows(*m_session.line, nullptr);
    endResetModel();
}

void LogbookSetModel::addRows(std::size_t line, const Exposure* exposure)
{
    m_rows.push_back({Kind::Heading, line, exposure});
    if (exposure)
        for (const LoggedSet& set : exposure->sets) m_rows.push_back({Kind::Set, line, exposure, &set});
    if (m_session.editable) m_rows.push_back({Kind::Add, line, exposure});
    if (exposure && (m_session.editable || !exposure->rating.none())) m_rows.push_back({Kind::Rating, line, exposure});
}

LogbookSetModel::Kind LogbookSetModel::kindAt(int row) const
{
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].kind : Kind::Heading;
}

const LoggedSet* LogbookSetModel::setAt(int row) const
{
    return row >= 0 && row < rowCount() ? m_rows[static_cast<std::size_t>(row)].set : nullptr;
}

const LineRecord* LogbookSetModel::lineAt(int row) const
{
    return row >= 0 && row < rowCount() ? &record(m_rows[static_cast<std::size_t>(row)]) : nullptr;
}

int LogbookSetModel::rowOf(Id<SetEntry> set) const
{
    const auto at = std::ranges::find_if(m_rows, [&](const SessionRow& row) { return row.set && row.set->id == set; });
    return at == m_rows.end() ? -1 : static_cast<int>(at - m_rows.begin());
}

int LogbookSetModel::rowOf(Id<LiftLine> line, Kind kind) const
{
    const auto at =
        std::ranges::find_if(m_rows, [&](const SessionRow& row) { return row.kind == kind && record(row).id == line; });
    return at == m_rows.end() ? -1 : static_cast<int>(at - m_rows.begin());
}

// Repetitions alone keep the load of the set before, or of the line's last session.
NotationContext LogbookSetModel::contextOf(const SessionRow& row) const
{
    NotationContext context{.unit = m_session.lifter->log.athlete.value.unit};
    const auto& exposures = record(row).exposures;
    if (row.set)
        context.load = row.set->set.load;
    else if (row.exposure)
        context.load = row.exposure->sets.back().set.load;
    else if (!exposures.empty())
        context.load = exposures.back().sets.back().set.load;
    return context;
}

NotationReading LogbookSetModel::readRow(const SessionRow& row, QStringView text) const
{
    NotationReading reading = readSet(text, contextOf(row));
    if (reading && row.set) reading->number = row.set->set.number;
    return reading;
}

bool LogbookSetModel::keepsDiscomfort() const
{
    return mayKeep(m_session.lifter->log.athlete.value.consents, HealthField::Discomfort);
}

std::optional<NotationProblem> LogbookSetModel::problemOf(int row, const QString& text) const
{
    const SessionRow& at = m_rows.at(static_cast<std::size_t>(row));
    if (at.kind == Kind::Rating) {
        const RatingReading reading = readRating(text, m_session.lifter->log.muscles, keepsDiscomfort());
        return reading ? std::nullopt : std::optional(reading.error());
    }
    if (at.kind == Kind::Add && text.trimmed().isEmpty()) return std::nullopt;
    const NotationReading reading = readRow(at, text);
    return reading ? std::nullopt : std::optional(reading.error());
}

void LogbookSetModel::setDraft(int row, const QString& text)
{
    m_draftRow = row;
    m_draft = text;
    Q_EMIT dataChanged(index(row, Words), index(row, Words));
}

void LogbookSetModel::clearDraft()
{
    const int row = std::exchange(m_draftRow, -1);
    if (row >= 0 && row < rowCount()) Q_EMIT dataChanged(index(row, Words), index(row, Words));
}

int LogbookSetModel::rowCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : static_cast<int>(m_rows.size());
}

int LogbookSetModel::columnCount(const QModelIndex& parent) const
{
    return parent.isValid() ? 0 : ColumnCount;
}

QString LogbookSetModel::typedText(const SessionRow& row) const
{
    if (row.kind == Kind::Set) return writeSet(row.set->set, m_session.lifter->log.athlete.value.unit);
    return row.kind == Kind::Rating ? writeRating(row.exposure->rating) : QString();
}

QString LogbookSetModel::draftWords(const SessionRow& row) const
{
    if (const auto problem = problemOf(m_draftRow, m_draft)) return problem->text;
    if (row.kind == Kind::Rating)
        return ratingInWords(readRating(m_draft, m_session.lifter->log.muscles).value_or(ExerciseRating()),
                             m_session.lifter->log);
    const NotationReading reading = readRow(row, m_draft);
    return reading ? setWords(*reading) : QString();
}

QString LogbookSetModel::words(int row) const
{
    const SessionRow& at = m_rows[static_cast<std::size_t>(row)];
    if (row == m_draftRow) return draftWords(at);
    switch (at.kind) {
    case Kind::Set:
        return setWords(at.set->set);
    case Kind::Add:
        return tr("another set: 42.5x12 w @8");
    case Kind::Rating: {
        const QString rated = ratingInWords(at.exposure->rating, m_session.lifter->log);
        return rated.isEmpty() ? tr("not rated: tension 7, pump 8, elbow 2") : rated;
    }
    case Kind::Heading:
        break;
    }
    return {};
}

QVariant LogbookSetModel::data(const QModelIndex& index, int role) const
{
    if (index.row() < 0 || index.row() >= rowCount()) return {};
    const SessionRow& row = m_rows[static_cast<std::size_t>(index.row())];
    const bool isQuiet =
        index.column() == Words && (row.kind == Kind::Add || (row.kind == Kind::Rating && row.exposure->rating.none()));
    const auto text = [&]() -> QString {
        if (row.kind == Kind::Heading) {
            if (index.column() != Number) return {};
            const QString detail = lineDetail(record(row));
            return detail.isEmpty() ? lineTitle(record(row)) : lineTitle(record(row)) + QStringLiteral(" · ") + detail;
        }
        if (index.column() == Typed) return typedText(row);
        if (index.column() == Words) return words(index.row());
        if (row.kind == Kind::Set) return QString::number(row.set->set.number);
        return row.kind == Kind::Add ? QStringLiteral("+") : QString();
    };
    switch (role) {
    case Qt::DisplayRole:
    case Qt::EditRole:
        return text();
    case Qt::ToolTipRole:
        return format::plainToolTip(text());
    case Qt::FontRole: {
        QFont font;
        font.setBold(true);
        return row.kind == Kind::Heading ? QVariant(font) : QVariant();
    }
    case Qt::ForegroundRole:
        return isQuiet && index.row() != m_draftRow ? QVariant(QPalette().brush(QPalette::PlaceholderText))
                                                    : QVariant();
    case Qt::TextAlignmentRole:
        return QVariant::fromValue(
            Qt::Alignment(Qt::AlignVCenter)
            | (index.column() == Number && row.kind != Kind::Heading ? Qt::AlignRight : Qt::AlignLeft));
    default:
        return {};
    }
}

Qt::ItemFlags LogbookSetModel::flags(const QModelIndex& index) const
{
    Qt::ItemFlags flags = QAbstractTableModel::flags(index);
    if (m_session.editable && index.column() == Typed && kindAt(index.row()) != Kind::Heading)
        flags |= Qt::ItemIsEditable;
    return flags;
}

bool LogbookSetModel::refuse(const NotationProblem& problem)
{
    Q_EMIT refused(tr("%1 Nothing was changed.").arg(problem.text));
    return false;
}

bool LogbookSetModel::storeSet(const SessionRow& row, const QString& text)
{
    if (row.kind == Kind::Add && text.trimmed().isEmpty()) return true;
    const NotationReading reading = readRow(row, text);
    if (!reading) return refuse(reading.error());
    if (!row.set)
        Q_EMIT addWanted(record(row).line, *reading);
    else if (*reading != row.set->set)
        Q_EMIT changeWanted(row.set->id, *reading);
    return true;
}

bool LogbookSetModel::storeRating(const SessionRow& row, const QString& text)
{
    const RatingReading reading = readRating(text, m_session.lifter->log.muscles, keepsDiscomfort());
    if (!reading) return refuse(reading.error());
    if (*reading != row.exposure->rating) Q_EMIT rateWanted(record(row).line, *reading);
    return true;
}

bool LogbookSetModel::setData(const QModelIndex& index, const QVariant& value, int role)
{
    if (role != Qt::EditRole || !(flags(index) & Qt::ItemIsEditable)) return false;
    // By value: who hears of it may set a new session.
    const SessionRow row = m_rows[static_cast<std::size_t>(index.row())];
    const auto session = m_session.lifter;
    return row.kind == Kind::Rating ? storeRating(row, value.toString()) : storeSet(row, value.toString());
}

}  // namespace steelyard
