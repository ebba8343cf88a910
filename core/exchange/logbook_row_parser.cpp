#include "core/exchange/logbook_row_parser.h"

#include "core/base/text.h"
#include "core/exchange/csv_text.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct LogbookRowText {
    Q_DECLARE_TR_FUNCTIONS(LogbookRowText)
};

constexpr std::size_t placeOf(ColumnPlace column)
{
    return static_cast<std::size_t>(column);
}

QString columnName(std::size_t place)
{
    const std::string_view name = kLogbookColumns[place].name;
    return QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()));
}

// The three numbers of 2027-03-01, 1/3/2027 or 1.3.2027, as far as digits and separators go.
std::optional<std::array<int, 3>> dateParts(QStringView text)
{
    std::array<int, 3> parts{};
    std::size_t part = 0;
    int digits = 0;
    for (const QChar c : text) {
        if (c >= u'0' && c <= u'9') {
            if (++digits > (part == 1 ? 2 : 4)) return std::nullopt;
            parts[part] = parts[part] * 10 + (c.unicode() - u'0');
        } else if ((c == u'-' || c == u'/' || c == u'.') && digits > 0 && part < 2) {
            ++part;
            digits = 0;
        } else {
            return std::nullopt;
        }
    }
    return part == 2 && digits > 0 ? std::optional(parts) : std::nullopt;
}

}  // namespace

LogbookRowParser::LogbookRowParser(const LogbookMapping& mapping, const Places& places, const QStringList& header,
                                   QDate today)
    : m_mapping(mapping), m_header(header), m_latest(today.addDays(1)), m_places(places)
{
    for (std::size_t i = 0; i < kLogbookColumns.size(); ++i)
        if (const auto fixed = mapping.fixed.find(columnName(i)); fixed != mapping.fixed.end())
            m_fixed[i] = fixed->second;
    for (qsizetype i = 0; i < header.size(); ++i)
        if (std::ranges::find(places, i) == places.end() && header[i] != kProblemColumn) m_unknown.push_back(i);
}

QStringList LogbookRowParser::unknownColumns() const
{
    QStringList names;
    for (const qsizetype i : m_unknown) names.append(m_header[i]);
    return names;
}

bool LogbookRowParser::parse(const CsvRecord& record, LogbookRow& row, std::vector<RowProblem>& problems)
{
    m_record = &record;
    m_problems = &problems;
    const std::size_t before = problems.size();
    row.line = record.line;
    row.at = record.at;
    if (record.fields.size() > m_header.size())
        problems.push_back({record.line,
                            {},
                            {},
                            LogbookRowText::tr("this row has %1 fields where the header has %2; is a separator or a "
                                               "quotation mark out of place?")
                                .arg(record.fields.size())
                                .arg(m_header.size())});
    readNames(row);
    readNumbers(row);
    readRating(row.rating);
    // Judged by repetitions that can't be read, everything that counts them would be wrong too.
    if (problems.size() == before)
        for (const Problem& problem : validate(row.set)) complain(problem);
    return problems.size() == before;
}

QStringView LogbookRowParser::fieldAt(qsizetype place) const
{
    return place >= 0 && place < m_record->fields.size() ? QStringView(m_record->fields[place]) : QStringView();
}

QStringView LogbookRowParser::field(ColumnPlace column) const
{
    const QStringView text = fieldAt(m_places[placeOf(column)]).trimmed();
    return text.isEmpty() ? QStringView(m_fixed[placeOf(column)]) : text;
}

void LogbookRowParser::complain(ColumnPlace column, QStringView value, const QString& text)
{
    m_problems->push_back({m_record->line, columnName(placeOf(column)), value.toString(), text});
}

void LogbookRowParser::complain(const Problem& problem)
{
    const auto& columns = kLogbookColumns;
    for (std::size_t i = 0; i < columns.size(); ++i)
        if (columnName(i) == problem.field) return complain(ColumnPlace{i}, field(ColumnPlace{i}), problem.text);
    m_problems->push_back({m_record->line, problem.field, {}, problem.text});
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
    row.set.note = note();
    for (const qsizetype place : m_unknown) {
        const QString text = fieldAt(place).trimmed().toString();
        if (text.isEmpty()) continue;
        if (!row.set.note.isEmpty()) row.set.note += u'\n';
        row.set.note += cleanName(m_header[place]) + QStringLiteral(": ") + cleanNote(unguardText(text));
    }
}

// Not trimmed like the others: a note may begin with spaces.
QString LogbookRowParser::note() const
{
    const auto clean = [](QStringView text) {
        return text.isEmpty() ? QString() : cleanNote(unguardText(text.toString()));
    };
    const QString text = clean(fieldAt(m_places[placeOf("note"_column)]));
    return text.isEmpty() ? clean(field("note"_column)) : text;
}

QDate LogbookRowParser::date()
{
    const QStringView text = field("date"_column);
    QDate day;
    if (const auto parts = dateParts(text)) {
        const auto [a, b, c] = *parts;
        if (m_mapping.dateOrder == DateOrder::YearMonthDay) day = QDate(a, b, c);
        if (m_mapping.dateOrder == DateOrder::DayMonthYear) day = QDate(c, b, a);
        if (m_mapping.dateOrder == DateOrder::MonthDayYear) day = QDate(c, a, b);
    }
    if (!day.isValid() || day.year() < 1900) {
        complain("date"_column, text,
                 LogbookRowText::tr("this is no date in the order %1; write it like 2027-03-01")
                     .arg(steelyard::toText(m_mapping.dateOrder)));
        return {};
    }
    if (day > m_latest)
        complain("date"_column, text, LogbookRowText::tr("this day has not come yet; check day, month and year"));
    return day;
}

// A number of ours: the file's decimal mark, no grouping.
std::optional<Decimal> LogbookRowParser::decimal(ColumnPlace column)
{
    const QStringView text = field(column);
    if (text.isEmpty()) return std::nullopt;
    std::optional<Decimal> number;
    if (m_mapping.decimalMark != u',')
        number = Decimal::parse(text);
    else if (!text.contains(u'.'))  // with a decimal comma a point would be grouping: 1.250 is not one and a quarter
        number = Decimal::parse(QStringView(text.toString().replace(u',', u'.')));
    if (!number)
        complain(column, text,
                 LogbookRowText::tr("this is no plain number; write it like %1")
                     .arg(QStringLiteral("42%15").arg(m_mapping.decimalMark)));
    return number;
}

std::optional<int> LogbookRowParser::whole(ColumnPlace column)
{
    const QStringView text = field(column);
    if (text.isEmpty()) return std::nullopt;
    bool ok = false;
    const int number = text.toInt(&ok);
    if (!ok || text.startsWith(u'+')) {
        complain(column, text, LogbookRowText::tr("this is no whole number; write it like 8"));
        return std::nullopt;
    }
    return number;
}

void LogbookRowParser::readLoad(LogbookRow& row)
{
    const QStringView unitText = field("unit"_column);
    row.unitGiven = !unitText.isEmpty();
    MassUnit unit = m_mapping.unit.value_or(MassUnit::kg);
    if (row.unitGiven) {
        const QString lower = unitText.toString().toLower();
        const auto read = fromKey<MassUnit>(QStringView(lower));
        if (!read) complain("unit"_column, lower, LogbookRowText::tr("a unit is kg or lb"));
        unit = read.value_or(unit);
    } else if (m_mapping.unit) {
        row.unitGiven = true;
    }
    const std::size_t before = m_problems->size();
    const Decimal amount = decimal("load"_column).value_or(Decimal(0));
    const auto load = Load::make(amount, unit);
    if (!load && m_problems->size() == before)
        complain("load"_column, field("load"_column),
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
    readEffort(set);
    readMarksAndKind(set);
    set.loweringSeconds = decimal("lowering_s"_column);
    set.leanDegrees = decimal("lean_deg"_column);
}

void LogbookRowParser::readEffort(SetEntry& set)
{
    const auto rir = decimal("rir"_column);
    const auto rpe = decimal("rpe"_column);
    if (rir && rpe)
        complain("rpe"_column, field("rpe"_column),
                 LogbookRowText::tr("a set has repetitions in reserve or an effort, not both; leave one blank"));
    else if (rir)
        set.effort = Effort{Effort::Scale::Rir, *rir};
    else if (rpe)
        set.effort = Effort{Effort::Scale::Rpe, *rpe};
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
