#include "core/exchange/column_guess.h"

#include "core/base/enum_text.h"
#include "core/base/text.h"
#include "core/domain/logbook.h"
#include "core/exchange/column_words.h"
#include "core/exchange/logbook_cells.h"

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

constexpr NumberStyle kAnyNumber{u'.', true};
constexpr double kMostOfThem = 0.8;
constexpr double kHalfOfThem = 0.5;  // a heading is believed though rows be bad

template <class Test>
double shareThat(const QStringList& cells, Test test)
{
    if (cells.isEmpty()) return 0;
    return static_cast<double>(std::ranges::count_if(cells, test)) / static_cast<double>(cells.size());
}

bool isDateCell(const QString& cell)
{
    return datePartsOf(cell).has_value();
}

bool isLoadCell(const QString& cell)
{
    return readLoadCell(cell, kAnyNumber).has_value();
}

bool isRepsCell(const QString& cell)
{
    const auto number = readWholeCell(cell, kAnyNumber);
    return number && *number >= 0 && *number <= 200;
}

bool isEffortCell(const QString& cell)
{
    const auto number = readNumberCell(cell, kAnyNumber);
    return number && number->toDouble() >= 0 && number->toDouble() <= 30;
}

// Whether cells can be what the heading says; columns that aren't listed hold any text.
bool canBe(const QString& column, const QStringList& cells)
{
    const auto most = [&](auto test) { return cells.isEmpty() || shareThat(cells, test) >= kHalfOfThem; };
    if (column == QStringLiteral("date")) return most(isDateCell);
    if (column == QStringLiteral("load")) return most(isLoadCell);
    if (column == QStringLiteral("reps") || column == QStringLiteral("set") || column == QStringLiteral("off")
        || column == kCountColumn)
        return most(isRepsCell);
    if (column == QStringLiteral("rir") || column == QStringLiteral("rpe") || column == QStringLiteral("lowering_s"))
        return most(isEffortCell);
    if (column == QStringLiteral("unit"))
        return most([](const QString& cell) { return readUnitCell(cell).has_value(); });
    if (column == QStringLiteral("kind"))
        return most([](const QString& cell) { return fromKey<SetKind>(QStringView(cell)).has_value(); });
    if (column == QStringLiteral("failed"))
        return most([](const QString& cell) { return cell == QStringLiteral("0") || cell == QStringLiteral("1"); });
    return true;
}

class ColumnGuesser {
public:
    ColumnGuesser(const SampleRows& sample, const KnownNames& known, LogbookGuess& guess)
        : m_sample(sample), m_known(known), m_guess(guess)
    {
        for (const ColumnNames& set : guess.mapping.sets)
            for (const auto& [ours, theirs] : set) m_taken.insert(std::get<int>(theirs) - 1);
        for (qsizetype i = 0; i < sample.header.size(); ++i) m_cells.push_back(sample.cells(i));
    }

    void run()
    {
        byHeadings();
        byContent();
    }

private:
    struct Candidate {
        qsizetype place = 0;
        ColumnFit fit;
    };

    void take(const QString& column, qsizetype place, ColumnHint hint)
    {
        m_guess.mapping.columns[column] = static_cast<int>(place) + 1;
        m_guess.hints[column] = hint;
        m_taken.insert(place);
    }
    [[nodiscard]] bool open(const QString& column) const { return !m_guess.mapping.columns.contains(column); }
    [[nodiscard]] const QStringList& cells(qsizetype place) const { return m_cells[static_cast<std::size_t>(place)]; }

    // In a row of several sets these belong to one of them, and which one can't be told.
    [[nodiscard]] bool isOfOneSet(const QString& column) const
    {
        static const QStringList ofOne{QStringLiteral("set"), QStringLiteral("off"), QStringLiteral("failed"),
                                       QStringLiteral("marks"), QString(kCountColumn)};
        return !m_guess.mapping.sets.empty() && ofOne.contains(column);
    }

    void byHeadings()
    {
        std::vector<Candidate> candidates;
        for (qsizetype i = 0; i < m_sample.header.size(); ++i)
            if (const auto fit = columnFit(m_sample.header[i]);
                fit && !m_taken.contains(i) && !isOfOneSet(fit->column) && canBe(fit->column, cells(i)))
                candidates.push_back({i, *fit});
        // Of two columns of one name that with something in it.
        std::ranges::stable_sort(candidates, [this](const Candidate& a, const Candidate& b) {
            return std::pair(a.fit.points, !cells(a.place).isEmpty())
                   > std::pair(b.fit.points, !cells(b.place).isEmpty());
        });
        for (const Candidate& one : candidates)
            if (open(one.fit.column))
                take(one.fit.column, one.place,
                     one.fit.points >= kSureFit ? ColumnHint::Heading : ColumnHint::Likeness);
    }

    template <class Points>
    void takeBest(const char* column, Points points)
    {
        if (!open(QString::fromLatin1(column))) return;
        qsizetype best = -1;
        double most = 0;
        for (qsizetype i = 0; i < m_sample.header.size(); ++i) {
            if (m_taken.contains(i) || cells(i).isEmpty()) continue;
            const double here = points(cells(i));
            // Of two alike the later one: athletes stand before their exercises.
            if (here > 0 && here >= most) {
                most = here;
                best = i;
            }
        }
        if (best >= 0) take(QString::fromLatin1(column), best, ColumnHint::Content);
    }

    static double known(const QStringList& cells, const QStringList& names)
    {
        return shareThat(cells, [&](const QString& cell) {
            const QString key = searchKey(cell);
            return std::ranges::any_of(names, [&](const QString& name) { return searchKey(name) == key; });
        });
    }

    static double isWords(const QStringList& cells)
    {
        return shareThat(cells, [](const QString& cell) {
            return std::ranges::any_of(cell, [](QChar c) { return c.isLetter(); }) && !isLoadCell(cell)
                   && !isDateCell(cell);
        });
    }

    void byContent()
    {
        takeBest("date", [](const QStringList& cells) {
            const double share = shareThat(cells, isDateCell);
            return share >= kMostOfThem ? share : 0;
        });
        takeBest("athlete", [this](const QStringList& cells) {
            const double share = known(cells, m_known.athletes);
            return share > 0.3 ? share : 0;
        });
        takeBest("exercise", [this](const QStringList& cells) {
            // A column of words that the library knows, else the one with the most different ones that come again.
            const double share = isWords(cells);
            if (share < kMostOfThem) return 0.0;
            const std::set<QString> different(cells.begin(), cells.end());
            return known(cells, m_known.exercises) + 0.01 * std::min<double>(static_cast<double>(different.size()), 50);
        });
        takeBest("athlete", [](const QStringList& cells) {
            const std::set<QString> different(cells.begin(), cells.end());
            const bool comesAgain = different.size() * 2 <= static_cast<std::size_t>(cells.size());
            return isWords(cells) >= kMostOfThem && comesAgain ? 1.0 : 0.0;
        });
        if (m_guess.mapping.sets.empty()) numbersByContent();
    }

    // Loads are the larger numbers, repetitions the smaller whole ones.
    void numbersByContent()
    {
        takeBest("load", [](const QStringList& cells) {
            if (shareThat(cells, isLoadCell) < kMostOfThem) return 0.0;
            double sum = 0;
            for (const QString& cell : cells)
                if (const auto load = readLoadCell(cell, kAnyNumber)) sum += load->amount.toDouble();
            const double mean = sum / static_cast<double>(cells.size());
            return mean <= 500 ? mean : 0;
        });
        takeBest("reps", [](const QStringList& cells) {
            const double share = shareThat(cells, [](const QString& cell) {
                const auto number = readWholeCell(cell, kAnyNumber);
                return number && *number >= 1 && *number <= 50;
            });
            return share >= kMostOfThem ? share : 0;
        });
    }

    const SampleRows& m_sample;
    const KnownNames& m_known;
    LogbookGuess& m_guess;
    std::set<qsizetype> m_taken;
    std::vector<QStringList> m_cells;
};

}  // namespace

QStringList SampleRows::cells(qsizetype column) const
{
    QStringList found;
    for (const QStringList& row : rows) {
        const QString cell = row.value(column).trimmed();
        if (!cell.isEmpty() && !isNothingMark(cell)) found.append(cell);
    }
    return found;
}

void guessColumns(const SampleRows& sample, const KnownNames& known, LogbookGuess& guess)
{
    ColumnGuesser(sample, known, guess).run();
}

}  // namespace steelyard
