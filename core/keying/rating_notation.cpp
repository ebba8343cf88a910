#include "core/keying/rating_notation.h"

#include "core/base/text.h"
#include "core/domain/gave_out.h"

#include <QtCore/QCoreApplication>

namespace steelyard {
namespace {

struct RatingNotationText {
    Q_DECLARE_TR_FUNCTIONS(RatingNotationText)
};

constexpr int kMostRating = 10;
constexpr QStringView kGaveOut = u"gave out";

// A word of the notation and the number of the rating that it stands for.
struct RatingWord {
    QString word;
    std::optional<int>* number;
};

std::vector<RatingWord> ratingWords(ExerciseRating& rating, bool discomfort = true)
{
    std::vector<RatingWord> words{{QStringLiteral("tension"), &rating.tension},
                                  {QStringLiteral("burn"), &rating.burn},
                                  {QStringLiteral("pump"), &rating.pump}};
    for (const auto& [joint, key] : EnumText<Joint>::table)
        if (discomfort)
            words.push_back({toText(joint).replace(u'_', u' '), &rating.discomfort[static_cast<std::size_t>(joint)]});
    words.push_back({QStringLiteral("soreness"), &rating.nextSoreness});
    words.push_back({QStringLiteral("weakness"), &rating.nextWeakness});
    return words;
}

class RatingLineReader {
public:
    RatingLineReader(QStringView line, const std::vector<Row<Muscle>>& muscles, bool discomfort)
        : m_line(line), m_muscles(muscles), m_words(ratingWords(m_rating, discomfort))
    {}

    [[nodiscard]] RatingReading read()
    {
        qsizetype from = 0;
        while (from <= m_line.size() && !m_problem) {
            qsizetype comma = m_line.indexOf(u',', from);
            if (comma < 0) comma = m_line.size();
            readPart(from, comma);
            from = comma + 1;
        }
        if (m_problem) return tl::unexpected(*m_problem);
        return m_rating;
    }

private:
    void stop(qsizetype at, qsizetype length, const QString& text) { m_problem = NotationProblem{at, length, text}; }

    void readPart(qsizetype from, qsizetype to)
    {
        while (from < to && m_line[from].isSpace()) ++from;
        while (to > from && m_line[to - 1].isSpace()) --to;
        const QStringView part = m_line.mid(from, to - from);
        if (part.isEmpty()) return;
        if (part.startsWith(kGaveOut, Qt::CaseInsensitive)) {
            readMuscle(from, to);
            return;
        }
        qsizetype split = part.size();
        while (split > 0 && part[split - 1].isDigit()) --split;
        RatingWord* word = find(part.first(split).trimmed(), from, split);
        if (word) readNumber(*word, part.mid(split), from + split);
    }

    [[nodiscard]] RatingWord* find(QStringView typed, qsizetype at, qsizetype length)
    {
        std::vector<RatingWord*> found;
        for (RatingWord& word : m_words)
            if (!typed.isEmpty() && word.word.startsWith(typed, Qt::CaseInsensitive)) found.push_back(&word);
        if (found.size() == 1) return found.front();
        QStringList known;
        if (found.empty())
            for (const RatingWord& word : m_words) known += word.word;
        for (const RatingWord* word : found) known += word->word;
        stop(at, std::max<qsizetype>(length, 1),
             RatingNotationText::tr("A word with a number from 0 to 10 is needed: %1, or gave out with a muscle.")
                 .arg(known.join(QStringLiteral(", "))));
        return nullptr;
    }

    void readNumber(const RatingWord& word, QStringView digits, qsizetype at)
    {
        bool isNumber = false;
        const int number = digits.toInt(&isNumber);
        if (!isNumber || number > kMostRating)
            return stop(at, digits.size(), RatingNotationText::tr("“%1” needs a number from 0 to 10.").arg(word.word));
        if (word.number->has_value())
            return stop(at, digits.size(), RatingNotationText::tr("“%1” is said twice.").arg(word.word));
        *word.number = number;
    }

    void readMuscle(qsizetype from, qsizetype to)
    {
        const qsizetype at = from + kGaveOut.size();
        const QStringView typed = m_line.mid(at, to - at).trimmed();
        if (!m_rating.gaveOut.isEmpty())
            return stop(from, to - from, RatingNotationText::tr("What gave out first is one muscle."));
        if (typed.compare(kTargetGaveOut, Qt::CaseInsensitive) == 0) {
            m_rating.gaveOut = kTargetGaveOut.toString();
            return;
        }
        for (const Row<Muscle>& muscle : m_muscles)
            if (searchKey(muscle.value.name) == searchKey(typed) || muscle.value.key == typed)
                m_rating.gaveOut = muscle.value.key;
        if (m_rating.gaveOut.isEmpty())
            stop(at, to - at, RatingNotationText::tr("After “gave out” stands target, or a muscle of the library."));
    }

    QStringView m_line;
    const std::vector<Row<Muscle>>& m_muscles;
    ExerciseRating m_rating;
    std::vector<RatingWord> m_words;  // into m_rating
    std::optional<NotationProblem> m_problem;
};

}  // namespace

RatingReading readRating(QStringView line, const std::vector<Row<Muscle>>& muscles, bool discomfort)
{
    return RatingLineReader(line, muscles, discomfort).read();
}

QString writeRating(const ExerciseRating& rating)
{
    ExerciseRating copy = rating;
    QStringList parts;
    for (const RatingWord& word : ratingWords(copy))
        if (*word.number) parts += word.word + u' ' + QString::number(**word.number);
    if (!rating.gaveOut.isEmpty()) parts += kGaveOut.toString() + u' ' + rating.gaveOut;
    return parts.join(QStringLiteral(", "));
}

}  // namespace steelyard
