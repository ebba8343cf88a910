// Finds the sets of a wide sheet among its headings.
#include "core/exchange/column_guess.h"
#include "core/exchange/column_words.h"
#include "core/exchange/logbook_cells.h"
#include "core/keying/set_notation.h"

#include <algorithm>

namespace steelyard {
namespace {

constexpr int kMostSetsSideBySide = 30;

// What a heading says of a set: which one, and what of it. "Set 2 kg" -> 2, load; "Set 2" -> 2, nothing more.
struct SetHeading {
    int number = 0;
    QString column;        // ours; empty: the whole set, or its repetitions
    bool saysSet = false;  // "set" stands there
};

std::optional<SetHeading> setHeading(const QString& heading)
{
    SetHeading found;
    QStringList rest;
    QString words = heading;
    for (const QString& word : headingWords(words.replace(u'(', u' ').replace(u'[', u' '))) {
        bool isNumber = false;
        const int number = word.toInt(&isNumber);
        // "Set1" and "kg1" are words with their number behind.
        qsizetype letters = word.size();
        while (letters > 0 && word[letters - 1].isDigit()) --letters;
        if (isNumber) {
            if (found.number != 0) return std::nullopt;
            found.number = number;
        } else if (letters < word.size() && letters > 0) {
            if (found.number != 0) return std::nullopt;
            found.number = word.mid(letters).toInt();
            rest.append(word.left(letters));
        } else {
            rest.append(word);
        }
    }
    if (found.number < 1 || found.number > kMostSetsSideBySide) return std::nullopt;
    found.saysSet = std::ranges::any_of(rest, isSetWord);
    rest.removeIf([](const QString& word) { return isSetWord(word); });
    if (rest.isEmpty()) return found.saysSet || heading.trimmed().toInt() > 0 ? std::optional(found) : std::nullopt;
    const auto fit = columnFit(rest.join(u' '));
    if (!fit) return std::nullopt;
    static const QStringList ofASet{QStringLiteral("load"), QStringLiteral("reps"), QStringLiteral("rir"),
                                    QStringLiteral("rpe"),  QStringLiteral("off"),  QStringLiteral("note")};
    if (!ofASet.contains(fit->column)) return std::nullopt;
    found.column = fit->column;
    return found;
}

// A set is complete with its repetitions or with a notation.
bool isComplete(const ColumnNames& set)
{
    return set.contains(QStringLiteral("reps")) || set.contains(kNotationColumn);
}

std::vector<ColumnNames> numberedSets(const SampleRows& sample)
{
    std::map<int, ColumnNames> sets;
    bool saysSet = false;
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        const auto heading = setHeading(sample.header[i]);
        if (!heading) continue;
        saysSet = saysSet || heading->saysSet;
        // A bare "Set 1" holds repetitions where a load stands beside it or in the row, else a set in the notation; the
        // notation reads plain repetitions too, with the load of the row.
        const QString column = heading->column.isEmpty() ? QString(kNotationColumn) : heading->column;
        sets[heading->number].try_emplace(column, static_cast<int>(i) + 1);
    }
    std::vector<ColumnNames> complete;
    for (auto& [number, set] : sets) {
        if (set.contains(kNotationColumn) && set.contains(QStringLiteral("load"))) {
            auto whole = set.extract(QString(kNotationColumn));
            set.try_emplace(QStringLiteral("reps"), whole.mapped());
        }
        if (isComplete(set)) complete.push_back(set);
    }
    // "Reps 1" alone is as likely one odd column as a sheet of sets.
    return complete.size() >= 2 || saysSet ? complete : std::vector<ColumnNames>();
}

// kg, reps, kg, reps: the same headings again and again.
std::vector<ColumnNames> repeatedSets(const SampleRows& sample)
{
    std::vector<ColumnNames> sets;
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        const auto fit = columnFit(sample.header[i]);
        const bool ofASet = fit
                            && (fit->column == QStringLiteral("load") || fit->column == QStringLiteral("reps")
                                || fit->column == QStringLiteral("rpe") || fit->column == QStringLiteral("rir"));
        if (!ofASet) continue;
        const auto open =
            std::ranges::find_if(sets, [&](const ColumnNames& set) { return !set.contains(fit->column); });
        if (open == sets.end())
            sets.push_back({{fit->column, static_cast<int>(i) + 1}});
        else
            (*open)[fit->column] = static_cast<int>(i) + 1;
    }
    std::erase_if(sets, [](const ColumnNames& set) { return !isComplete(set) || set.size() < 2; });
    return sets.size() >= 2 ? sets : std::vector<ColumnNames>();
}

// One column with whole sets: "42.5x12; 12; 11".
std::vector<ColumnNames> notationColumn(const SampleRows& sample)
{
    for (qsizetype i = 0; i < sample.header.size(); ++i) {
        const QStringList cells = sample.cells(i);
        const auto inNotation = std::ranges::count_if(cells, [](const QString& cell) {
            const auto parts = splitSets(cell);
            return !parts.empty() && parts[0].contains(u'x', Qt::CaseInsensitive) && readSet(parts[0], {}).has_value();
        });
        if (!cells.isEmpty() && 2 * inNotation > cells.size())
            return {{{QString(kNotationColumn), static_cast<int>(i) + 1}}};
    }
    return {};
}

}  // namespace

std::vector<ColumnNames> guessSets(const SampleRows& sample)
{
    if (auto sets = numberedSets(sample); !sets.empty()) return sets;
    if (auto sets = repeatedSets(sample); !sets.empty()) return sets;
    return notationColumn(sample);
}

}  // namespace steelyard
