#include "core/exchange/logbook_guess.h"

#include "core/exchange/column_guess.h"
#include "core/exchange/column_words.h"
#include "core/exchange/logbook_cells.h"

#include <QtCore/QRegularExpression>

#include <algorithm>
#include <cmath>

namespace steelyard {
namespace {

constexpr std::size_t kMostSampleRows = 500;
constexpr qsizetype kMostRowsBeforeHeader = 10;

// Whole lines only: the end of a beginning may stand in the middle of a row, or of a character.
QByteArray wholeLines(const QByteArray& beginning)
{
    if (beginning.size() < kGuessBytes) return beginning;
    const qsizetype last = beginning.lastIndexOf('\n');
    return last < 0 ? beginning : beginning.left(last + 1 + (last + 1 < beginning.size() && beginning[last + 1] == 0));
}

TextEncoding guessEncoding(const QByteArray& bytes)
{
    const bool marked = bytes.startsWith("\xFF\xFE") || bytes.startsWith("\xFE\xFF");
    if (marked || 5 * bytes.count('\0') > bytes.size()) return TextEncoding::Utf16;
    for (const TextEncoding encoding : {TextEncoding::Utf8, TextEncoding::Windows1252})
        if (decodeText(bytes, encoding)) return encoding;
    return TextEncoding::Latin1;
}

struct Records {
    std::vector<QStringList> rows;
    bool sound = true;  // no quotation mark out of place
};

Records recordsOf(const QString& text, QChar separator)
{
    Records records;
    CsvReader reader(text, separator);
    while (records.rows.size() < kMostSampleRows) {
        auto record = reader.next();
        records.sound = record.has_value();
        if (!record || !*record) break;
        records.rows.push_back(std::move((*record)->fields));
    }
    return records;
}

qsizetype usualWidth(const Records& records)
{
    std::map<qsizetype, int> widths;
    for (const QStringList& row : records.rows) ++widths[row.size()];
    const auto most = std::ranges::max_element(widths, {}, &std::map<qsizetype, int>::value_type::second);
    return most == widths.end() ? 0 : most->first;
}

// The separator that cuts most rows into the same number of fields, more than one.
QChar guessSeparator(const QString& text)
{
    QChar best = u',';
    double most = 0;
    for (const QChar candidate : {u',', u';', u'\t', u'|'}) {
        const Records records = recordsOf(text, candidate);
        const qsizetype width = usualWidth(records);
        if (width < 2) continue;
        const auto alike = std::ranges::count(records.rows, width, &QStringList::size);
        const double points = static_cast<double>(alike) / static_cast<double>(records.rows.size())
                              * std::log2(static_cast<double>(width)) * (records.sound ? 1.0 : 0.5);
        if (points > most) {
            most = points;
            best = candidate;
        }
    }
    return best;
}

// A title or two may stand above the table: rows with fewer fields than it has.
int rowsBeforeTheTable(const Records& records)
{
    const qsizetype width = usualWidth(records);
    const auto filled = [](const QStringList& row) {
        return std::ranges::count_if(row, [](const QString& cell) { return !cell.trimmed().isEmpty(); });
    };
    for (qsizetype i = 0; i < std::min<qsizetype>(static_cast<qsizetype>(records.rows.size()), kMostRowsBeforeHeader);
         ++i)
        if (2 * filled(records.rows[static_cast<std::size_t>(i)]) > width) return static_cast<int>(i);
    return 0;
}

// Dates and numbers don't head columns, unless a heading beside them is known.
bool looksLikeHeader(const QStringList& row)
{
    bool numbers = false;
    bool known = false;
    for (const QString& cell : row) {
        const QString text = cell.trimmed();
        if (datePartsOf(text)) return false;
        numbers = numbers || readNumberCell(text, {u'.', true});
        const auto fit = columnFit(text);
        known = known || (fit && fit->points >= kSureFit);
    }
    return known || !numbers;
}

bool addsUpOthers(const QStringList& row)
{
    const auto first = std::ranges::find_if(row, [](const QString& cell) { return !cell.trimmed().isEmpty(); });
    return first != row.end() && isTotalsLabel(QStringView(*first).trimmed());
}

struct DateFinding {
    DateOrder order = DateOrder::YearMonthDay;
    bool ambiguous = false;
    QString example;
};

// How many dates stand before the one above them: a log is mostly in order.
int stepsBack(const QStringList& cells, DateOrder order)
{
    int back = 0;
    std::optional<QDate> last;
    for (const QString& cell : cells) {
        const auto day = readDateCell(cell, order);
        if (day && last && *day < *last) ++back;
        if (day) last = day;
    }
    return back;
}

DateFinding guessDates(const QStringList& cells, QDate today)
{
    std::array<bool, 2> possible{true, true};
    constexpr std::array orders{DateOrder::DayMonthYear, DateOrder::MonthDayYear};
    DateFinding finding;
    bool yearFirst = cells.isEmpty();
    bool anyOther = false;
    bool dotted = false;
    for (const QString& cell : cells) {
        const auto parts = datePartsOf(cell);
        if (!parts) continue;
        if ((*parts)[0] > 31) {
            yearFirst = true;
            continue;
        }
        anyOther = true;
        dotted = dotted || cell.contains(u'.');
        for (std::size_t i = 0; i < 2; ++i) {
            const auto day = readDateCell(cell, orders[i]);
            if (!day || (today.isValid() && *day > today.addDays(1))) possible[i] = false;
        }
        if ((*parts)[0] != (*parts)[1] && (*parts)[0] <= 12 && (*parts)[1] <= 12 && finding.example.isEmpty())
            finding.example = cell;
    }
    if (!anyOther) return finding;
    if (yearFirst && !cells.isEmpty() && datePartsOf(cells[0]) && (*datePartsOf(cells[0]))[0] > 31) return finding;
    const bool dayFirst = stepsBack(cells, DateOrder::DayMonthYear) <= stepsBack(cells, DateOrder::MonthDayYear);
    finding.order = possible[0] && (!possible[1] || dotted || dayFirst) ? orders[0] : orders[1];
    if (!possible[0] && !possible[1]) finding.order = orders[0];
    // Nobody writes month.day.year with points; the same day and month read either way.
    finding.ambiguous = possible[0] && possible[1] && !dotted && !finding.example.isEmpty();
    return finding;
}

QChar guessDecimalMark(const SampleRows& sample)
{
    static const QRegularExpression comma(QStringLiteral("^-?\\d+,\\d+\\D*$"));
    static const QRegularExpression point(QStringLiteral("^-?\\d+\\.\\d+\\D*$"));
    int commas = 0;
    int points = 0;
    for (const QStringList& row : sample.rows)
        for (const QString& cell : row) {
            if (cell.trimmed().contains(comma)) ++commas;
            if (cell.trimmed().contains(point)) ++points;
        }
    return commas > points ? u',' : u'.';
}

QString headingOf(const SampleRows& sample, const ColumnName& name)
{
    return sample.header.value(std::get<int>(name) - 1);
}

std::optional<MassUnit> guessUnit(const SampleRows& sample, const LogbookMapping& mapping)
{
    std::vector<ColumnNames> groups = mapping.sets;
    groups.push_back(mapping.columns);
    std::optional<MassUnit> found;
    for (const ColumnNames& group : groups)
        for (const auto& [column, name] : group) {
            if (column != QStringLiteral("load") && column != kNotationColumn) continue;
            const auto unit = unitInHeading(headingOf(sample, name));
            if (unit && found && *unit != *found) return std::nullopt;
            if (unit) found = unit;
        }
    return found;
}

QStringList dateCells(const SampleRows& sample, const LogbookMapping& mapping)
{
    const auto column = mapping.columns.find(QStringLiteral("date"));
    return column == mapping.columns.end() ? QStringList() : sample.cells(std::get<int>(column->second) - 1);
}

}  // namespace

LogbookGuess guessLogbook(const QByteArray& beginning, const KnownNames& known, QDate today)
{
    LogbookGuess guess;
    LogbookMapping& mapping = guess.mapping;
    mapping.byHand = true;
    const QByteArray bytes = wholeLines(beginning);
    mapping.encoding = guessEncoding(bytes);
    const auto text = decodeText(bytes, mapping.encoding);
    if (!text) return guess;
    mapping.separator = guessSeparator(*text);
    Records records = recordsOf(*text, mapping.separator);
    if (records.rows.empty()) return guess;
    mapping.skip = rowsBeforeTheTable(records);
    const auto top = records.rows.begin() + mapping.skip;
    mapping.hasHeader = looksLikeHeader(*top);
    SampleRows sample{*top, {top + (mapping.hasHeader ? 1 : 0), records.rows.end()}};
    std::erase_if(sample.rows, addsUpOthers);
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        guess.header.append(mapping.hasHeader ? sample.header[i].trimmed() : QString::number(i + 1));
        if (!mapping.hasHeader) sample.header[i].clear();
    }
    mapping.sets = guessSets(sample);
    guessColumns(sample, known, guess);
    const DateFinding dates = guessDates(dateCells(sample, mapping), today);
    mapping.dateOrder = dates.order;
    guess.datesAmbiguous = dates.ambiguous;
    guess.exampleDate = dates.example;
    mapping.decimalMark = guessDecimalMark(sample);
    mapping.unit = guessUnit(sample, mapping);
    return guess;
}

LogbookMapping guessMapping(const QByteArray& beginning)
{
    return guessLogbook(beginning, {}, {}).mapping;
}

}  // namespace steelyard
