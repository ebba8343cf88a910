#include "core/exchange/logbook_csv.h"

#include "core/base/text.h"
#include "core/exchange/csv_text.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QHash>
#include <QtCore/QRegularExpression>

#include <set>

namespace steelyard {
namespace {

struct LogbookCsvText {
    Q_DECLARE_TR_FUNCTIONS(LogbookCsvText)
};

// Where each of our columns stands in the file; -1: nowhere.
using Places = std::map<QString, qsizetype>;

// Which of two columns of one name is meant can't be guessed.
Result<void> refuseTwice(const QStringList& header, const QString& name)
{
    if (header.count(name) < 2) return {};
    return fail(ErrorCode::Invalid,
                LogbookCsvText::tr(
                    "Line 1: the column “%1” stands twice. Rename one of them, or choose by number in a mapping.")
                    .arg(name));
}

Result<Places> placeColumns(const LogbookMapping& mapping, const QStringList& header)
{
    Places places;
    for (const QString& column : logbookColumns()) {
        qsizetype place = -1;
        if (mapping.columns.empty()) {
            place = header.indexOf(column);
            if (place >= 0) STEELYARD_CHECK(refuseTwice(header, column));
        } else if (const auto named = mapping.columns.find(column); named != mapping.columns.end()) {
            const auto* name = std::get_if<QString>(&named->second);
            if (name) STEELYARD_CHECK(refuseTwice(header, *name));
            place = name ? header.indexOf(*name) : std::get<int>(named->second) - 1;
            if (place < 0 || place >= header.size())
                return fail(
                    ErrorCode::Invalid,
                    LogbookCsvText::tr("The mapping puts “%1” in a column that the file has not. Its columns are: %2.")
                        .arg(column, header.join(QStringLiteral(", "))));
        }
        places[column] = place;
    }
    for (const char* needed : {"date", "athlete", "exercise", "reps"}) {
        const QString column = QString::fromLatin1(needed);
        if (places[column] < 0 && !mapping.fixed.contains(column))
            return fail(ErrorCode::Invalid,
                        LogbookCsvText::tr(
                            "Line 1: the column “%1” is missing. Add it, or say in a mapping which column it is. "
                            "The file's columns are: %2.")
                            .arg(column, header.join(QStringLiteral(", "))));
    }
    return places;
}

class RowParser {
public:
    RowParser(const LogbookMapping& mapping, const Places& places, const QStringList& header, QDate today)
        : m_mapping(mapping), m_header(header), m_latest(today.addDays(1))
    {
        for (const QString& column : logbookColumns()) {
            m_places.insert(column, places.at(column));
            if (places.at(column) >= 0) m_known.insert(places.at(column));
        }
        for (qsizetype i = 0; i < header.size(); ++i)
            if (!m_known.contains(i) && header[i] != kProblemColumn) m_unknown.push_back(i);
    }

    [[nodiscard]] QStringList unknownColumns() const
    {
        QStringList names;
        for (const qsizetype i : m_unknown) names.append(m_header[i]);
        return names;
    }

    // True when the row is good; else its problems are appended.
    bool parse(const CsvRecord& record, LogbookRow& row, std::vector<RowProblem>& problems)
    {
        m_record = &record;
        m_problems = &problems;
        const std::size_t before = problems.size();
        row.line = record.line;
        row.at = record.at;
        if (record.fields.size() > m_header.size())
            complain({}, {},
                     LogbookCsvText::tr("this row has %1 fields where the header has %2; is a separator or a quotation "
                                        "mark out of place?")
                         .arg(record.fields.size())
                         .arg(m_header.size()));
        readNames(row);
        readNumbers(row);
        readRating(row.rating);
        // Judged by repetitions that can't be read, everything that counts them would be wrong too.
        if (problems.size() == before)
            for (const Problem& problem : validate(row.set))
                complain(problem.field, field(problem.field), problem.text);
        return problems.size() == before;
    }

private:
    QString field(const QString& column) const
    {
        const qsizetype place = m_places.value(column, -1);
        QString text = place >= 0 && place < m_record->fields.size() ? m_record->fields[place].trimmed() : QString();
        if (text.isEmpty())
            if (const auto fixed = m_mapping.fixed.find(column); fixed != m_mapping.fixed.end()) text = fixed->second;
        return text;
    }

    void complain(const QString& column, const QString& value, const QString& text)
    {
        m_problems->push_back({m_record->line, column, value, text});
    }

    QString name(const QString& column, bool needed)
    {
        const QString raw = unguardText(field(column));
        const QString clean = cleanName(raw);
        if (needed && clean.isEmpty()) complain(column, raw, LogbookCsvText::tr("this can't be blank; write a name"));
        if (clean.size() > kMaxNameLength)
            complain(column, raw.left(40),
                     LogbookCsvText::tr("a name has at most %1 characters; shorten it").arg(kMaxNameLength));
        return clean;
    }

    void readNames(LogbookRow& row)
    {
        row.date = date();
        row.athlete = name(QStringLiteral("athlete"), true);
        row.exercise = name(QStringLiteral("exercise"), true);
        row.variant = name(QStringLiteral("variant"), false);
        row.grip = name(QStringLiteral("grip"), false);
        row.standard = name(QStringLiteral("standard"), false);
        row.set.note = note();
        for (const qsizetype place : m_unknown) {
            const QString text = place < m_record->fields.size() ? m_record->fields[place].trimmed() : QString();
            if (text.isEmpty()) continue;
            if (!row.set.note.isEmpty()) row.set.note += u'\n';
            row.set.note += cleanName(m_header[place]) + QStringLiteral(": ") + cleanNote(unguardText(text));
        }
    }

    // Not trimmed like the others: a note may begin with spaces.
    QString note() const
    {
        const qsizetype place = m_places.value(QStringLiteral("note"), -1);
        const QString text =
            place >= 0 && place < m_record->fields.size() ? cleanNote(unguardText(m_record->fields[place])) : QString();
        return text.isEmpty() ? cleanNote(unguardText(field(QStringLiteral("note")))) : text;
    }

    QDate date()
    {
        const QString text = field(QStringLiteral("date"));
        static const QRegularExpression pattern(QStringLiteral("^(\\d{1,4})[-/.](\\d{1,2})[-/.](\\d{1,4})$"));
        const auto match = pattern.match(text);
        QDate day;
        if (match.hasMatch()) {
            const int a = match.captured(1).toInt();
            const int b = match.captured(2).toInt();
            const int c = match.captured(3).toInt();
            if (m_mapping.dateOrder == DateOrder::YearMonthDay) day = QDate(a, b, c);
            if (m_mapping.dateOrder == DateOrder::DayMonthYear) day = QDate(c, b, a);
            if (m_mapping.dateOrder == DateOrder::MonthDayYear) day = QDate(c, a, b);
        }
        if (!day.isValid() || day.year() < 1900) {
            complain(QStringLiteral("date"), text,
                     LogbookCsvText::tr("this is no date in the order %1; write it like 2027-03-01")
                         .arg(steelyard::toText(m_mapping.dateOrder)));
            return {};
        }
        if (day > m_latest)
            complain(QStringLiteral("date"), text,
                     LogbookCsvText::tr("this day has not come yet; check day, month and year"));
        return day;
    }

    // A number of ours: the file's decimal mark, no grouping.
    std::optional<Decimal> decimal(const QString& column)
    {
        QString text = field(column);
        if (text.isEmpty()) return std::nullopt;
        // With a decimal comma a point would be grouping: 1.250 is not one and a quarter.
        const bool grouped = m_mapping.decimalMark == u',' && text.contains(u'.');
        if (m_mapping.decimalMark == u',') text.replace(u',', u'.');
        const auto number = grouped ? std::nullopt : Decimal::parse(QStringView(text));
        if (!number)
            complain(column, field(column),
                     LogbookCsvText::tr("this is no plain number; write it like %1")
                         .arg(QStringLiteral("42%15").arg(m_mapping.decimalMark)));
        return number;
    }

    std::optional<int> whole(const QString& column)
    {
        const QString text = field(column);
        if (text.isEmpty()) return std::nullopt;
        bool ok = false;
        const int number = text.toInt(&ok);
        if (!ok || text.startsWith(u'+')) {
            complain(column, text, LogbookCsvText::tr("this is no whole number; write it like 8"));
            return std::nullopt;
        }
        return number;
    }

    void readLoad(LogbookRow& row)
    {
        const QString unitText = field(QStringLiteral("unit")).toLower();
        row.unitGiven = !unitText.isEmpty();
        MassUnit unit = m_mapping.unit.value_or(MassUnit::kg);
        if (row.unitGiven) {
            const auto read = fromKey<MassUnit>(QStringView(unitText));
            if (!read) complain(QStringLiteral("unit"), unitText, LogbookCsvText::tr("a unit is kg or lb"));
            unit = read.value_or(unit);
        } else if (m_mapping.unit) {
            row.unitGiven = true;
        }
        const std::size_t before = m_problems->size();
        const Decimal amount = decimal(QStringLiteral("load")).value_or(Decimal(0));
        const auto load = Load::make(amount, unit);
        if (!load && m_problems->size() == before)
            complain(QStringLiteral("load"), field(QStringLiteral("load")),
                     LogbookCsvText::tr("a load is from 0 to %1 with at most %2 decimals")
                         .arg(Load::kMaxAmount)
                         .arg(Load::kMaxDecimals));
        row.set.load = load.value_or(Load{});
    }

    void readNumbers(LogbookRow& row)
    {
        SetEntry& set = row.set;
        readLoad(row);
        if (const auto number = whole(QStringLiteral("set"))) {
            set.number = *number;
            row.numberGiven = true;
        }
        if (field(QStringLiteral("reps")).isEmpty())
            complain(QStringLiteral("reps"), {},
                     LogbookCsvText::tr("this can't be blank; write 0 if none was completed"));
        set.reps = whole(QStringLiteral("reps")).value_or(0);
        set.off = whole(QStringLiteral("off"));
        const int failed = whole(QStringLiteral("failed")).value_or(0);
        if (failed != 0 && failed != 1)
            complain(QStringLiteral("failed"), QString::number(failed),
                     LogbookCsvText::tr("write 1 if a further repetition failed part-way, else 0"));
        set.failed = failed == 1;
        readEffort(set);
        const QString marks = field(QStringLiteral("marks"));
        if (const auto parsed = MarkCounts::parse(marks.toStdString()))
            set.marks = *parsed;
        else
            complain(QStringLiteral("marks"), marks,
                     LogbookCsvText::tr("write marks like short_bottom:2;swing:1, each once, out of: %1")
                         .arg(keyList<Mark>()));
        set.loweringSeconds = decimal(QStringLiteral("lowering_s"));
        if (const QString kind = field(QStringLiteral("kind")); !kind.isEmpty()) {
            const auto read = fromKey<SetKind>(QStringView(kind));
            if (!read)
                complain(QStringLiteral("kind"), kind,
                         LogbookCsvText::tr("a kind is one of: %1").arg(keyList<SetKind>()));
            set.kind = read.value_or(SetKind::Work);
        }
    }

    void readEffort(SetEntry& set)
    {
        const auto rir = decimal(QStringLiteral("rir"));
        const auto rpe = decimal(QStringLiteral("rpe"));
        if (rir && rpe)
            complain(QStringLiteral("rpe"), field(QStringLiteral("rpe")),
                     LogbookCsvText::tr("a set has repetitions in reserve or an effort, not both; leave one blank"));
        else if (rir)
            set.effort = Effort{Effort::Scale::Rir, *rir};
        else if (rpe)
            set.effort = Effort{Effort::Scale::Rpe, *rpe};
    }

    void readRating(ExerciseRating& rating)
    {
        rating.tension = whole(QStringLiteral("tension"));
        rating.burn = whole(QStringLiteral("burn"));
        rating.pump = whole(QStringLiteral("pump"));
        rating.gaveOut = name(QStringLiteral("gave_out"), false);
        for (const auto& row : EnumText<Joint>::table)
            rating.discomfort[static_cast<std::size_t>(row.value)] =
                whole(QStringLiteral("discomfort_") + steelyard::toText(row.value));
        rating.nextSoreness = whole(QStringLiteral("next_soreness"));
        rating.nextWeakness = whole(QStringLiteral("next_weakness"));
        for (const Problem& problem : validate(rating)) complain(problem.field, field(problem.field), problem.text);
    }

    const LogbookMapping& m_mapping;
    const QStringList& m_header;
    QDate m_latest;
    QHash<QString, qsizetype> m_places;
    std::set<qsizetype> m_known;
    std::vector<qsizetype> m_unknown;
    const CsvRecord* m_record = nullptr;
    std::vector<RowProblem>* m_problems = nullptr;
};

Result<QStringList> readHeader(CsvReader& reader, const LogbookMapping& mapping, std::optional<CsvRecord>& first)
{
    STEELYARD_TRY(first, reader.next());
    if (!first)
        return fail(ErrorCode::Invalid,
                    LogbookCsvText::tr("The file is empty. A logbook has a header line and a row for each set."));
    if (mapping.hasHeader) {
        QStringList header;
        for (const QString& name : first->fields) header.append(name.trimmed());
        first.reset();
        return header;
    }
    QStringList numbers;
    for (qsizetype i = 1; i <= first->fields.size(); ++i) numbers.append(QString::number(i));
    return numbers;
}

}  // namespace

Result<ParsedLogbook> parseLogbook(const QByteArray& bytes, const LogbookMapping& mapping, QDate today,
                                   const Progress& progress)
{
    if (bytes.size() > kMostImportBytes)
        return fail(ErrorCode::Invalid,
                    LogbookCsvText::tr("The file is larger than %1 MB. Split it and import the parts.")
                        .arg(kMostImportBytes / 1024 / 1024));
    ParsedLogbook parsed;
    STEELYARD_TRY(parsed.text, decodeText(bytes, mapping.encoding));
    CsvReader reader(parsed.text, mapping.separator);
    parsed.separator = mapping.separator;
    parsed.encoding = mapping.encoding;
    parsed.hasHeader = mapping.hasHeader;
    std::optional<CsvRecord> record;
    STEELYARD_TRY(parsed.header, readHeader(reader, mapping, record));
    STEELYARD_TRY(const Places places, placeColumns(mapping, parsed.header));
    RowParser parser(mapping, places, parsed.header, today);
    parsed.unknownColumns = parser.unknownColumns();
    while (true) {
        if (!record) {
            STEELYARD_TRY(record, reader.next());
            if (!record) break;
        }
        LogbookRow row;
        if (parser.parse(*record, row, parsed.problems)) {
            parsed.rows.push_back(std::move(row));
        } else {
            parsed.badRecords.push_back(std::move(*record));
        }
        record.reset();
        if ((parsed.rows.size() + parsed.badRecords.size()) % 1000 == 0) {
            progress.report(0.4 * reader.share());
            if (progress.cancelled())
                return fail(ErrorCode::Cancelled, LogbookCsvText::tr("Stopped; nothing was changed."));
        }
    }
    return parsed;
}

CsvRecord recordOf(const ParsedLogbook& parsed, const LogbookRow& row)
{
    auto record = CsvReader(parsed.text, parsed.separator, row.line, row.at).next();
    Q_ASSERT(record && *record);  // it could be read before
    return std::move(**record);
}

QString toText(const RowProblem& problem)
{
    QString where = LogbookCsvText::tr("line %1").arg(problem.line);
    if (!problem.column.isEmpty()) where += LogbookCsvText::tr(", column %1").arg(problem.column);
    if (!problem.value.isEmpty()) where += QStringLiteral(", “%1”").arg(problem.value.left(60));
    return where + QStringLiteral(": ") + problem.text;
}

}  // namespace steelyard
