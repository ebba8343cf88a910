#include "core/exchange/repetition_csv.h"

#include "core/exchange/column_words.h"
#include "core/exchange/csv_reader.h"
#include "core/exchange/logbook_cells.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <algorithm>

namespace steelyard {
namespace {

struct RepetitionCsvText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionCsvText)
};

struct ColumnWord {
    RepetitionColumn column;
    const char16_t* word;
};

// The trade's own words, in English and German; the first that fits a heading wins, so the special ones stand first.
constexpr auto kWords = std::to_array<ColumnWord>({{RepetitionColumn::Lowering, u"eccentric"},
                                                   {RepetitionColumn::Lowering, u"exzentrisch"},
                                                   {RepetitionColumn::Lowering, u"lowering"},
                                                   {RepetitionColumn::Lowering, u"ablassen"},
                                                   {RepetitionColumn::Lowering, u"down"},
                                                   {RepetitionColumn::Lifting, u"concentric"},
                                                   {RepetitionColumn::Lifting, u"konzentrisch"},
                                                   {RepetitionColumn::Lifting, u"lifting"},
                                                   {RepetitionColumn::Lifting, u"heben"},
                                                   {RepetitionColumn::Lifting, u"up"},
                                                   {RepetitionColumn::Low, u"lowest"},
                                                   {RepetitionColumn::Low, u"bottom"},
                                                   {RepetitionColumn::Low, u"low"},
                                                   {RepetitionColumn::Low, u"min"},
                                                   {RepetitionColumn::High, u"highest"},
                                                   {RepetitionColumn::High, u"top"},
                                                   {RepetitionColumn::High, u"high"},
                                                   {RepetitionColumn::High, u"max"},
                                                   {RepetitionColumn::Travel, u"travel"},
                                                   {RepetitionColumn::Travel, u"range"},
                                                   {RepetitionColumn::Travel, u"rom"},
                                                   {RepetitionColumn::Travel, u"distance"},
                                                   {RepetitionColumn::Travel, u"displacement"},
                                                   {RepetitionColumn::Travel, u"height"},
                                                   {RepetitionColumn::Travel, u"weg"},
                                                   {RepetitionColumn::Travel, u"hub"},
                                                   {RepetitionColumn::Number, u"repetition"},
                                                   {RepetitionColumn::Number, u"rep"},
                                                   {RepetitionColumn::Number, u"reps"},
                                                   {RepetitionColumn::Number, u"wiederholung"},
                                                   {RepetitionColumn::Number, u"wdh"},
                                                   {RepetitionColumn::Set, u"set"},
                                                   {RepetitionColumn::Set, u"satz"},
                                                   {RepetitionColumn::Date, u"date"},
                                                   {RepetitionColumn::Date, u"datum"},
                                                   {RepetitionColumn::Date, u"day"},
                                                   {RepetitionColumn::Athlete, u"athlete"},
                                                   {RepetitionColumn::Athlete, u"lifter"},
                                                   {RepetitionColumn::Athlete, u"name"},
                                                   {RepetitionColumn::Exercise, u"exercise"},
                                                   {RepetitionColumn::Exercise, u"ubung"},
                                                   {RepetitionColumn::Exercise, u"lift"}});

constexpr double kLongestInMetres = 3;
constexpr double kLongestInCentimetres = 300;
constexpr double kLongestInSeconds = 30;

std::optional<Decimal> cellNumber(const QString& cell)
{
    if (const auto plain = Decimal::parse(QStringView(cell))) return plain;
    return cell.count(u',') == 1 ? readNumberCell(cell, {u','}) : std::nullopt;
}

// The largest number of a column; absent: none.
std::optional<double> largest(const RepetitionTable& table, std::optional<int> column)
{
    std::optional<double> most;
    if (!column) return most;
    for (const RepetitionRow& row : table.rows)
        if (const auto number = cellNumber(row.cells.value(*column)))
            most = std::max(most.value_or(0), number->toDouble());
    return most;
}

template <class Unit>
std::optional<Unit> unitAmong(const QString& heading)
{
    static const QRegularExpression words(QStringLiteral("[^a-z]+"));
    for (const QString& word : heading.toLower().split(words, Qt::SkipEmptyParts))
        if (const auto unit = fromKey<Unit>(QStringView(word))) return unit;
    return std::nullopt;
}

LengthUnit guessLength(const RepetitionTable& table, const RepetitionMapping& mapping)
{
    std::optional<double> most;
    for (const auto column : {RepetitionColumn::Travel, RepetitionColumn::High, RepetitionColumn::Low}) {
        if (!mapping.of(column)) continue;
        if (const auto said = unitAmong<LengthUnit>(table.header.value(*mapping.of(column)))) return *said;
        if (!most) most = largest(table, mapping.of(column));
    }
    if (!most) return LengthUnit::mm;
    if (*most <= kLongestInMetres) return LengthUnit::m;
    return *most <= kLongestInCentimetres ? LengthUnit::cm : LengthUnit::mm;
}

TimeUnit guessTime(const RepetitionTable& table, const RepetitionMapping& mapping)
{
    std::optional<double> most;
    for (const auto column : {RepetitionColumn::Lifting, RepetitionColumn::Lowering}) {
        if (!mapping.of(column)) continue;
        if (const auto said = unitAmong<TimeUnit>(table.header.value(*mapping.of(column)))) return *said;
        if (const auto number = largest(table, mapping.of(column))) most = std::max(most.value_or(0), *number);
    }
    return most.value_or(0) > kLongestInSeconds ? TimeUnit::ms : TimeUnit::s;
}

QChar separatorOf(const QString& text)
{
    const QStringView line = QStringView(text).left(text.indexOf(u'\n'));
    QChar best = u',';
    for (const QChar separator : {u';', u'\t'})
        if (line.count(separator) > line.count(best)) best = separator;
    return best;
}

// Rows to sets, with what is wrong noted by row and column.
class RepetitionRows {
public:
    RepetitionRows(const RepetitionTable& table, const RepetitionMapping& mapping) : m_table(table), m_mapping(mapping)
    {}

    [[nodiscard]] RepetitionReading read()
    {
        for (const RepetitionRow& row : m_table.rows) take(row);
        for (ReadRepetitions& set : m_reading.sets) judge(set);
        return std::move(m_reading);
    }

private:
    [[nodiscard]] QString cell(RepetitionColumn column) const
    {
        const auto at = m_mapping.of(column);
        return at ? m_row->cells.value(*at).trimmed() : QString();
    }
    void fault(RepetitionColumn column, const QString& text)
    {
        m_reading.problems.push_back({m_row->row, m_table.header.value(m_mapping.of(column).value_or(-1)), text});
        m_rowSound = false;
    }
    std::optional<Decimal> scaled(RepetitionColumn column, double factor, int decimals)
    {
        const QString text = cell(column);
        if (text.isEmpty() || isNothingMark(text)) return std::nullopt;
        const auto number = cellNumber(text);
        if (!number || number->isNegative()) {
            fault(column, RepetitionCsvText::tr("“%1” is no number from 0 on. Mend the cell, or empty it if it isn't "
                                                "known.")
                              .arg(text));
            return std::nullopt;
        }
        return Decimal::nearest(number->toDouble() * factor, decimals);
    }
    std::optional<int> whole(RepetitionColumn column)
    {
        const QString text = cell(column);
        if (text.isEmpty()) return std::nullopt;
        const auto number = readWholeCell(text, {u'.', true});
        if (!number || *number < 1)
            fault(column, RepetitionCsvText::tr("“%1” is no whole number from 1 on.").arg(text));
        return number;
    }
    RepetitionPlace placeOf()
    {
        RepetitionPlace place;
        place.athlete = cell(RepetitionColumn::Athlete);
        place.exercise = cell(RepetitionColumn::Exercise);
        place.set = whole(RepetitionColumn::Set);
        const QString date = cell(RepetitionColumn::Date);
        if (date.isEmpty()) return place;
        place.date = readDateCell(date, DateOrder::YearMonthDay);
        if (!place.date) place.date = readDateCell(date, DateOrder::DayMonthYear);
        if (!place.date)
            fault(RepetitionColumn::Date,
                  RepetitionCsvText::tr("“%1” is no date. Year-month-day or day.month.year is read.").arg(date));
        return place;
    }
    void take(const RepetitionRow& row)
    {
        m_row = &row;
        m_rowSound = true;
        const RepetitionPlace place = placeOf();
        const auto number = whole(RepetitionColumn::Number);
        auto& sets = m_reading.sets;
        const bool another = sets.empty() || sets.back().place != place || (number && m_number && *number <= *m_number);
        if (another) sets.push_back({place, {}, {}, true});
        m_number = number;
        Repetition one{.number = static_cast<int>(sets.back().repetitions.size()) + 1,
                       .source = RepetitionSource::Measured};
        const double toMm = m_mapping.length == LengthUnit::m ? 1000 : m_mapping.length == LengthUnit::cm ? 10 : 1;
        const double toSeconds = m_mapping.time == TimeUnit::ms ? 0.001 : 1;
        one.travelMm = scaled(RepetitionColumn::Travel, toMm, 1);
        one.lowMm = scaled(RepetitionColumn::Low, toMm, 1);
        one.highMm = scaled(RepetitionColumn::High, toMm, 1);
        one.liftingSeconds = scaled(RepetitionColumn::Lifting, toSeconds, 3);
        one.loweringSeconds = scaled(RepetitionColumn::Lowering, toSeconds, 3);
        sets.back().repetitions.push_back(one);
        sets.back().rows.push_back(row.row);
        sets.back().sound = sets.back().sound && m_rowSound;
    }
    // What only the whole repetition shows: too far, too long, upside down.
    void judge(ReadRepetitions& set)
    {
        if (!set.sound) return;
        for (const Problem& problem : validate(set.repetitions)) {
            const int number = problem.field.section(u' ', 1).toInt();  // "travel_mm 7"; 0: the set as a whole
            const int row = set.rows.at(static_cast<std::size_t>(std::max(number, 1)) - 1);
            m_reading.problems.push_back({row, heading(problem.field.section(u' ', 0, 0)), problem.text});
            set.sound = false;
        }
    }
    [[nodiscard]] QString heading(const QString& field) const
    {
        for (const auto& [name, column] : {std::pair("travel_mm", RepetitionColumn::Travel),
                                           {"low_mm", RepetitionColumn::Low},
                                           {"high_mm", RepetitionColumn::High},
                                           {"lifting_s", RepetitionColumn::Lifting},
                                           {"lowering_s", RepetitionColumn::Lowering}})
            if (field == QLatin1StringView(name)) return m_table.header.value(m_mapping.of(column).value_or(-1));
        return {};
    }

    const RepetitionTable& m_table;
    const RepetitionMapping& m_mapping;
    const RepetitionRow* m_row = nullptr;
    bool m_rowSound = true;
    std::optional<int> m_number;
    RepetitionReading m_reading;
};

}  // namespace

Result<RepetitionTable> readRepetitionTable(const QByteArray& bytes)
{
    auto decoded = decodeText(bytes, TextEncoding::Utf8);
    if (!decoded) decoded = decodeText(bytes, TextEncoding::Windows1252);
    if (!decoded) return fail(decoded.error());
    const QChar separator = separatorOf(*decoded);
    CsvReader reader(*std::move(decoded), separator);
    RepetitionTable table;
    while (true) {
        STEELYARD_TRY(auto record, reader.next());
        if (!record) break;
        for (QString& cell : record->fields) cell = cell.trimmed();
        if (table.header.isEmpty())
            table.header = record->fields;
        else
            table.rows.push_back({record->line, record->fields});
    }
    if (!table.rows.empty()) return table;
    return fail(ErrorCode::Invalid,
                RepetitionCsvText::tr("This file has no rows. A heading is needed, and below it one "
                                      "row a repetition."));
}

RepetitionMapping guessRepetitionColumns(const RepetitionTable& table)
{
    RepetitionMapping mapping;
    std::vector<QStringList> headings;
    for (const QString& heading : table.header) headings.push_back(headingWords(heading));
    std::vector<bool> taken(headings.size());
    for (const ColumnWord& known : kWords) {
        if (mapping.of(known.column)) continue;
        for (std::size_t at = 0; at < headings.size(); ++at) {
            if (taken[at] || !headings[at].contains(QString::fromUtf16(known.word))) continue;
            mapping.set(known.column, static_cast<int>(at));
            taken[at] = true;
            break;
        }
    }
    mapping.length = guessLength(table, mapping);
    mapping.time = guessTime(table, mapping);
    return mapping;
}

RepetitionReading readRepetitions(const RepetitionTable& table, const RepetitionMapping& mapping)
{
    return RepetitionRows(table, mapping).read();
}

bool tellsAnything(const RepetitionMapping& mapping)
{
    return mapping.of(RepetitionColumn::Travel) || mapping.of(RepetitionColumn::Lifting)
           || mapping.of(RepetitionColumn::Lowering)
           || (mapping.of(RepetitionColumn::Low) && mapping.of(RepetitionColumn::High));
}

}  // namespace steelyard
