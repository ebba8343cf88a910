#include "core/exchange/logbook_row_parser.h"

#include "core/base/text.h"
#include "core/exchange/csv_text.h"
#include "core/exchange/logbook_cells.h"
#include "core/keying/set_notation.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <utility>

namespace steelyard {
namespace {

struct LogbookRowText {
    Q_DECLARE_TR_FUNCTIONS(LogbookRowText)
};

constexpr int kMostEqualSets = 50;

constexpr std::size_t placeOf(ColumnPlace column)
{
    return static_cast<std::size_t>(column);
}

QString columnName(std::size_t place)
{
    const std::string_view name = kLogbookColumns[place].name;
    return QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()));
}

}  // namespace

LogbookRowParser::LogbookRowParser(const LogbookMapping& mapping, const SheetColumns& columns,
                                   const QStringList& header, QDate today)
    : m_mapping(mapping), m_columns(columns), m_header(header), m_latest(today.addDays(1)), m_places(&columns.row)
{
    for (std::size_t i = 0; i < kLogbookColumns.size(); ++i)
        if (const auto fixed = mapping.fixed.find(columnName(i)); fixed != mapping.fixed.end())
            m_fixed[i] = fixed->second;
    for (qsizetype i = 0; i < header.size(); ++i)
        if (!columns.uses(i) && header[i] != kProblemColumn) m_unknown.push_back(i);
}

QStringList LogbookRowParser::unknownColumns() const
{
    QStringList names;
    for (const qsizetype i : m_unknown)
        if (!m_mapping.byHand || !m_header[i].isEmpty()) names.append(m_header[i]);
    return names;
}

bool LogbookRowParser::parse(const CsvRecord& record, std::vector<LogbookRow>& sets, std::vector<RowProblem>& problems)
{
    m_record = &record;
    m_problems = &problems;
    m_places = &m_columns.row;
    m_passedOver.clear();
    const std::size_t before = problems.size();
    const std::size_t setsBefore = sets.size();
    if (m_mapping.byHand && passOver()) return true;
    checkLength();
    LogbookRow row = readRow();
    if (m_columns.sets.empty()) {
        readNumbers(row);
        settleRow(row);
        addEqualSets(std::move(row), sets);
    } else {
        readSets(std::move(row), sets);
    }
    // Judged by repetitions that can't be read, everything that counts them would be wrong too.
    if (problems.size() == before)
        for (std::size_t i = setsBefore; i < sets.size(); ++i)
            for (const Problem& problem : validate(sets[i].set)) complain(problem);
    if (problems.size() == before) return true;
    sets.resize(setsBefore);
    return false;
}

// What people leave in a spreadsheet that is no set: lines of separators, and rows that add up others.
bool LogbookRowParser::passOver()
{
    const auto blank = [](const QString& cell) { return QStringView(cell).trimmed().isEmpty(); };
    const auto first = std::ranges::find_if_not(m_record->fields, blank);
    if (first == m_record->fields.end()) return true;
    if (!isTotalsLabel(QStringView(*first).trimmed()) || readDateCell(field("date"_column), m_mapping.dateOrder))
        return false;
    m_passedOver = LogbookRowText::tr("a row of totals, passed over");
    return true;
}

void LogbookRowParser::checkLength()
{
    qsizetype fields = m_record->fields.size();
    if (m_mapping.byHand)
        while (fields > m_header.size() && QStringView(m_record->fields[fields - 1]).trimmed().isEmpty()) --fields;
    if (fields > m_header.size())
        complainOfTheRow(LogbookRowText::tr("this row has %1 fields where the header has %2; is a separator or a "
                                            "quotation mark out of place?")
                             .arg(fields)
                             .arg(m_header.size()));
}

// What all sets of the row have in common.
LogbookRow LogbookRowParser::readRow()
{
    LogbookRow row;
    row.line = m_record->line;
    row.at = m_record->at;
    readNames(row);
    readRating(row.rating);
    return row;
}

// "3 sets of 8": what the row says of effort was said after the last, its note stands with the first.
void LogbookRowParser::addEqualSets(LogbookRow row, std::vector<LogbookRow>& sets)
{
    const QStringView text = fieldAt(m_columns.count).trimmed();
    const bool blank = text.isEmpty() || (m_mapping.byHand && isNothingMark(text));
    const int count = blank ? 1 : readWholeCell(text, style()).value_or(0);
    if (count < 1 || count > kMostEqualSets) {
        m_problems->push_back({m_record->line, kCountColumn, text.toString(),
                               LogbookRowText::tr("how many sets is a whole number from 1 to %1").arg(kMostEqualSets),
                               static_cast<int>(m_columns.count), m_header.value(m_columns.count)});
        return;
    }
    const auto effort = std::exchange(row.set.effort, std::nullopt);
    for (int i = 0; i < count; ++i) {
        sets.push_back(row);
        row.set.note.clear();
        row.numberGiven = false;  // of the first; the others follow it
    }
    sets.back().set.effort = effort;
}

void LogbookRowParser::readSets(LogbookRow row, std::vector<LogbookRow>& sets)
{
    const std::size_t before = sets.size();
    const std::size_t problemsBefore = m_problems->size();
    const auto said = effort();
    for (const SheetColumns::Set& set : m_columns.sets) {
        if (!isThere(set)) continue;
        m_places = &set.places;
        if (set.notation >= 0) {
            readNotation(set, row, sets);
        } else {
            LogbookRow one = row;
            readNumbers(one);
            sets.push_back(std::move(one));
        }
        row.set.note.clear();
    }
    m_places = &m_columns.row;
    if (sets.size() == before) {
        if (m_problems->size() == problemsBefore) m_passedOver = LogbookRowText::tr("no set stands in this row");
        return;
    }
    // What the row says of effort was said after its last set.
    if (said && !sets.back().set.effort) sets.back().set.effort = said;
    for (std::size_t i = before; i < sets.size(); ++i) settleRow(sets[i]);
}

bool LogbookRowParser::isThere(const SheetColumns::Set& set) const
{
    return std::ranges::any_of(set.own, [this](qsizetype place) {
        const QStringView text = fieldAt(place).trimmed();
        return !text.isEmpty() && !(m_mapping.byHand && isNothingMark(text));
    });
}

// "42.5x12; 12; 11-1": the load of a set is that of the one before, or of the row.
void LogbookRowParser::readNotation(const SheetColumns::Set& set, LogbookRow row, std::vector<LogbookRow>& sets)
{
    const QStringView cell = fieldAt(set.notation).trimmed();
    NotationContext context{std::nullopt, m_mapping.unit.value_or(MassUnit::kg), SetKind::Work};
    readMarksAndKind(row.set);
    context.kind = row.set.kind;
    readLoad(row);
    context.unit = row.set.load.unit();
    if (!field("load"_column).isEmpty())
        context.load = row.set.load;
    else if (!sets.empty() && sets.back().line == row.line)
        context.load = sets.back().set.load;
    for (const QStringView part : splitSets(cell)) {
        const NotationReading reading = readSet(part, context);
        if (!reading) {
            m_problems->push_back({m_record->line, kNotationColumn, part.toString(), reading.error().text,
                                   static_cast<int>(set.notation), m_header.value(set.notation)});
            return;
        }
        LogbookRow one = row;
        one.set = *reading;
        if (one.set.note.isEmpty()) one.set.note = row.set.note;
        one.unitGiven =
            row.unitGiven || part.contains(u"kg", Qt::CaseInsensitive) || part.contains(u"lb", Qt::CaseInsensitive);
        context.load = one.set.load;
        row.set.note.clear();
        sets.push_back(std::move(one));
    }
}

void LogbookRowParser::settleRow(LogbookRow& row)
{
    if (!m_mapping.exercises.empty()) rename(row);
}

QStringView LogbookRowParser::fieldAt(qsizetype place) const
{
    return place >= 0 && place < m_record->fields.size() ? QStringView(m_record->fields[place]) : QStringView();
}

QStringView LogbookRowParser::field(ColumnPlace column) const
{
    const QStringView text = fieldAt((*m_places)[placeOf(column)]).trimmed();
    const bool blank = text.isEmpty() || (m_mapping.byHand && isNothingMark(text));
    return blank ? QStringView(m_fixed[placeOf(column)]) : text;
}

void LogbookRowParser::complain(ColumnPlace column, QStringView value, const QString& text)
{
    const QString ours = columnName(placeOf(column));
    const qsizetype place = (*m_places)[placeOf(column)];
    const QString theirs = m_header.value(place);
    m_problems->push_back(
        {m_record->line, ours, value.toString(), text, static_cast<int>(place), theirs == ours ? QString() : theirs});
}

void LogbookRowParser::complain(const Problem& problem)
{
    const auto& columns = kLogbookColumns;
    for (std::size_t i = 0; i < columns.size(); ++i)
        if (columnName(i) == problem.field) return complain(ColumnPlace{i}, field(ColumnPlace{i}), problem.text);
    m_problems->push_back({m_record->line, problem.field, {}, problem.text, -1, {}});
}

void LogbookRowParser::complainOfTheRow(const QString& text)
{
    m_problems->push_back({m_record->line, {}, {}, text, -1, {}});
}

QString LogbookRowParser::name(ColumnPlace column, bool needed)
{
    const QStringView found = field(column);
    if (found.isEmpty() && !needed) return {};
    const QString raw = unguardText(found.toString());
    const auto known = m_cleanNames.constFind(raw);
    const QString clean = known != m_cleanNames.cend() ? *known : cleanName(raw);
    if (needed && clean.isEmpty()) complain(column, raw, LogbookRowText::tr("this can't be blank; write a name"));
    if (clean.size() > kMaxNameLength)
        complain(column, QStringView(raw).left(40),
                 LogbookRowText::tr("a name has at most %1 characters; shorten it").arg(kMaxNameLength));
    else if (known == m_cleanNames.cend())
        m_cleanNames.insert(raw, clean);
    return clean;
}

void LogbookRowParser::readNames(LogbookRow& row)
{
    row.date = date();
    row.athlete = name("athlete"_column, true);
    row.exercise = name("exercise"_column, true);
    row.variant = name("variant"_column, false);
    row.grip = name("grip"_column, false);
    row.standard = name("standard"_column, false);
    countNames(row);
    if (const auto ours = m_mapping.athletes.find(row.athlete); ours != m_mapping.athletes.end())
        row.athlete = ours->second;
    row.set.note = note();
    for (const qsizetype place : m_unknown) {
        const QString text = fieldAt(place).trimmed().toString();
        if (text.isEmpty() || (m_mapping.byHand && isNothingMark(text))) continue;
        if (!row.set.note.isEmpty()) row.set.note += u'\n';
        const QString header = cleanName(m_header[place]);
        row.set.note += (header.isEmpty() ? LogbookRowText::tr("column %1").arg(place + 1) : header)
                        + QStringLiteral(": ") + cleanNote(unguardText(text));
    }
}

// Most rows have the names of the row before.
void LogbookRowParser::countNames(const LogbookRow& row)
{
    if (row.exercise.isEmpty() || row.athlete.isEmpty()) return;
    if (!m_lastExercise || m_lastExercise->first.exercise != row.exercise
        || m_lastExercise->first.variant != row.variant)
        m_lastExercise = &*m_exercises.try_emplace({row.exercise, row.variant}, 0).first;
    ++m_lastExercise->second;
    if (!m_lastAthlete || m_lastAthlete->first != row.athlete)
        m_lastAthlete = &*m_athletes.try_emplace(row.athlete, 0).first;
    ++m_lastAthlete->second;
}

// Names that were matched by hand, or stand in a kept mapping.
void LogbookRowParser::rename(LogbookRow& row)
{
    const auto ours = m_mapping.exercises.find({row.exercise, row.variant});
    if (ours == m_mapping.exercises.end()) return;
    row.exercise = ours->second.exercise;
    row.variant = ours->second.variant;
}

// Not trimmed like the others: a note may begin with spaces.
QString LogbookRowParser::note() const
{
    const auto clean = [this](QStringView text) {
        const bool nothing = text.isEmpty() || (m_mapping.byHand && isNothingMark(text.trimmed()));
        return nothing ? QString() : cleanNote(unguardText(text.toString()));
    };
    const QString text = clean(fieldAt((*m_places)[placeOf("note"_column)]));
    return text.isEmpty() ? clean(field("note"_column)) : text;
}

QDate LogbookRowParser::date()
{
    const QStringView text = field("date"_column);
    const auto day = readDateCell(text, m_mapping.dateOrder);
    if (!day) {
        complain("date"_column, text,
                 LogbookRowText::tr("this is no date in the order %1; write it like 2027-03-01")
                     .arg(orderInWords(m_mapping.dateOrder)));
        return {};
    }
    if (*day > m_latest)
        complain("date"_column, text, LogbookRowText::tr("this day has not come yet; check day, month and year"));
    return *day;
}

// A number of ours: the file's decimal mark, no grouping.
std::optional<Decimal> LogbookRowParser::decimal(ColumnPlace column)
{
    const QStringView text = field(column);
    if (text.isEmpty()) return std::nullopt;
    const auto number = readNumberCell(text, style());
    if (!number) complainOfNumber(column, text);
    return number;
}

void LogbookRowParser::complainOfNumber(ColumnPlace column, QStringView value)
{
    complain(column, value,
             LogbookRowText::tr("this is no plain number; write it like %1")
                 .arg(QStringLiteral("42") + m_mapping.decimalMark + u'5'));
}

std::optional<int> LogbookRowParser::whole(ColumnPlace column)
{
    const QStringView text = field(column);
    if (text.isEmpty()) return std::nullopt;
    const auto number = readWholeCell(text, style());
    if (!number) complain(column, text, LogbookRowText::tr("this is no whole number; write it like 8"));
    return number;
}

// Of the row, as far as the row says one.
MassUnit LogbookRowParser::readUnit(LogbookRow& row)
{
    const QStringView text = field("unit"_column);
    row.unitGiven = !text.isEmpty() || m_mapping.unit.has_value();
    const MassUnit usual = m_mapping.unit.value_or(MassUnit::kg);
    if (text.isEmpty()) return usual;
    const auto read = readUnitCell(text);
    if (!read) complain("unit"_column, text, LogbookRowText::tr("a unit is kg or lb"));
    return read.value_or(usual);
}

void LogbookRowParser::readLoad(LogbookRow& row)
{
    MassUnit unit = readUnit(row);
    const QStringView text = field("load"_column);
    if (text.isEmpty()) {
        row.set.load = Load::make(Decimal(0), unit).value_or(Load{});
        return;
    }
    const auto cell = readLoadCell(text, style());
    if (!cell) return complainOfNumber("load"_column, text);
    if (cell->unit) {
        if (*cell->unit != unit && !field("unit"_column).isEmpty())
            return complain(
                "load"_column, text,
                LogbookRowText::tr("the load has another unit than its column of units; leave one of them"));
        unit = *cell->unit;
        row.unitGiven = true;
    }
    const auto load = Load::make(cell->amount, unit);
    if (!load)
        complain("load"_column, text,
                 LogbookRowText::tr("a load is from 0 to %1 with at most %2 decimals")
                     .arg(Load::kMaxAmount)
                     .arg(Load::kMaxDecimals));
    row.set.load = load.value_or(Load{});
}

void LogbookRowParser::readNumbers(LogbookRow& row)
{
    SetEntry& set = row.set;
    readLoad(row);
    if (const auto number = whole("set"_column)) {
        set.number = *number;
        row.numberGiven = true;
    }
    if (field("reps"_column).isEmpty())
        complain("reps"_column, {}, LogbookRowText::tr("this can't be blank; write 0 if none was completed"));
    set.reps = whole("reps"_column).value_or(0);
    set.off = whole("off"_column);
    const int failed = whole("failed"_column).value_or(0);
    if (failed != 0 && failed != 1)
        complain("failed"_column, QString::number(failed),
                 LogbookRowText::tr("write 1 if a further repetition failed part-way, else 0"));
    set.failed = failed == 1;
    set.effort = effort();
    readMarksAndKind(set);
    set.loweringSeconds = decimal("lowering_s"_column);
    set.leanDegrees = decimal("lean_deg"_column);
}

std::optional<Effort> LogbookRowParser::effort()
{
    const auto rir = decimal("rir"_column);
    const auto rpe = decimal("rpe"_column);
    if (rir && rpe)
        complain("rpe"_column, field("rpe"_column),
                 LogbookRowText::tr("a set has repetitions in reserve or an effort, not both; leave one blank"));
    else if (rir)
        return Effort{Effort::Scale::Rir, *rir};
    else if (rpe)
        return Effort{Effort::Scale::Rpe, *rpe};
    return std::nullopt;
}

void LogbookRowParser::readMarksAndKind(SetEntry& set)
{
    const QStringView marks = field("marks"_column);
    if (!marks.isEmpty()) {
        const QByteArray bytes = marks.toUtf8();
        const auto read = MarkCounts::parse({bytes.data(), static_cast<std::size_t>(bytes.size())});
        if (!read)
            complain("marks"_column, marks,
                     LogbookRowText::tr("write marks like short_bottom:2;swing:1, each once, out of: %1")
                         .arg(keyList<Mark>()));
        set.marks = read.value_or(MarkCounts{});
    }
    const QStringView kind = field("kind"_column);
    if (kind.isEmpty()) return;
    const auto read = fromKey<SetKind>(kind);
    if (!read) complain("kind"_column, kind, LogbookRowText::tr("a kind is one of: %1").arg(keyList<SetKind>()));
    set.kind = read.value_or(SetKind::Work);
}

void LogbookRowParser::readRating(ExerciseRating& rating)
{
    rating.tension = whole("tension"_column);
    rating.burn = whole("burn"_column);
    rating.pump = whole("pump"_column);
    rating.gaveOut = name("gave_out"_column, false);
    for (std::size_t joint = 0; joint < kJointCount; ++joint)  // their columns stand in the order of Joint
        rating.discomfort[joint] = whole(ColumnPlace{placeOf("discomfort_elbow"_column) + joint});
    rating.nextSoreness = whole("next_soreness"_column);
    rating.nextWeakness = whole("next_weakness"_column);
    for (const Problem& problem : validate(rating)) complain(problem);
}

}  // namespace steelyard
