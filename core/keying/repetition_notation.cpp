#include "core/keying/repetition_notation.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct RepetitionNotationText {
    Q_DECLARE_TR_FUNCTIONS(RepetitionNotationText)
};

constexpr qsizetype kMostNumberLength = 9;
constexpr double kPercent = 100;
constexpr std::int64_t kMmPerCm = 10;

bool isLineDigit(QChar c)
{
    return c >= u'0' && c <= u'9';
}

// Centimetres as typed in millimetres: the point moves, no digit is lost. Absent: too many decimals to be written again.
std::optional<Decimal> millimetres(Decimal cm)
{
    if (cm.decimals() > Decimal::kMaxDecimals - 1) return std::nullopt;
    return cm.decimals() > 0 ? Decimal::fromScaled(cm.mantissa(), cm.decimals() - 1)
                             : Decimal::fromScaled(cm.mantissa() * kMmPerCm, 0);
}

QString centimetreText(Decimal mm)
{
    const Decimal cm = Decimal::fromScaled(mm.mantissa(), mm.decimals() + 1);
    // 52.0 is typed as 52, which reads back as the same 520 mm; further zeros were meant.
    return (cm.decimals() == 1 ? cm.trimmed() : cm).toString();
}

class RepetitionLineReader {
public:
    RepetitionLineReader(QStringView line, const RepetitionLineContext& context) : m_line(line), m_context(context) {}

    RepetitionLineReading read()
    {
        while (!m_problem && !atEnd()) readOne();
        if (!m_problem && m_repetitions.empty())
            stop(m_line.size(), 0,
                 RepetitionNotationText::tr("Type the repetitions: 52/3 52/3 51b, or 3*. for three."));
        if (m_problem) return tl::unexpected(*m_problem);
        return m_repetitions;
    }

private:
    bool atEnd()
    {
        while (m_at < m_line.size() && m_line[m_at].isSpace()) ++m_at;
        return m_at >= m_line.size();
    }
    [[nodiscard]] bool isAt(QChar c) const { return m_at < m_line.size() && m_line[m_at] == c; }
    bool take(QChar c)
    {
        if (!isAt(c)) return false;
        ++m_at;
        return true;
    }
    void stop(qsizetype at, qsizetype length, QString text)
    {
        if (!m_problem) m_problem = NotationProblem{at, length, std::move(text)};
    }
    void stopHere(QString text)
    {
        const bool missing = m_at >= m_line.size();
        stop(missing ? m_line.size() : m_at, missing ? 0 : 1, std::move(text));
    }

    std::optional<Decimal> number()
    {
        const qsizetype at = m_at;
        QString text;
        bool pointSeen = false;
        while (m_at < m_line.size()) {
            const QChar c = m_line[m_at];
            const bool isPoint = (c == u'.' || c == u',') && !pointSeen && !text.isEmpty() && m_at + 1 < m_line.size()
                                 && isLineDigit(m_line[m_at + 1]);
            if (!isLineDigit(c) && !isPoint) break;
            pointSeen = pointSeen || isPoint;
            text += isPoint ? QChar(u'.') : c;
            ++m_at;
        }
        if (text.isEmpty()) return std::nullopt;
        const auto value = text.size() <= kMostNumberLength ? Decimal::parse(QStringView(text)) : std::nullopt;
        if (!value) stop(at, m_at - at, RepetitionNotationText::tr("This number has too many digits."));
        return value;
    }

    void readOne()
    {
        const qsizetype at = m_at;
        int times = 1;
        Repetition one;
        auto first = number();
        if (first && take(u'*')) {
            if (first->decimals() != 0 || first->isZero() || first->mantissa() > kMostRepetitions)
                return stop(
                    at, m_at - at,
                    RepetitionNotationText::tr("Before the * stands how many, from 1 to %1.").arg(kMostRepetitions));
            times = static_cast<int>(first->mantissa());
            first = number();
        }
        if (m_problem) return;
        const qsizetype itself = first ? at : m_at;
        if (first) {
            one.travelMm = millimetres(*first);
            if (!one.travelMm)
                return stop(
                    at, m_at - at,
                    RepetitionNotationText::tr("A travel has at most %1 decimals.").arg(Decimal::kMaxDecimals - 1));
        } else {
            take(u'.');
        }
        readRest(one);
        if (m_problem) return;
        if (m_at == itself)
            return stopHere(
                RepetitionNotationText::tr("A repetition is its travel in centimetres, or a point: 52 or ."));
        if (m_at < m_line.size() && !m_line[m_at].isSpace())
            return stopHere(
                RepetitionNotationText::tr("This has no meaning here. After the travel, each once: ^1 lifted, /3 "
                                           "lowered, marks b t s d l a, + for a "
                                           "failure; then a space."));
        append(one, times, at);
    }

    // Times, marks and failure in any order, each once.
    void readRest(Repetition& one)
    {
        while (!m_problem && m_at < m_line.size()) {
            const QChar c = m_line[m_at];
            if (c == u'^') {
                readSeconds(one.liftingSeconds);
            } else if (c == u'/') {
                readSeconds(one.loweringSeconds);
            } else if (c == u'+' && !one.partWay) {
                one.partWay = take(c);
            } else if (const auto mark = markOfLetter(c.toLower()); mark && !one.marks.has(*mark)) {
                one.marks.set(*mark);
                ++m_at;
            } else {
                return;
            }
        }
    }

    void readSeconds(std::optional<Decimal>& into)
    {
        if (into) return stopHere(RepetitionNotationText::tr("This time stands here already."));
        ++m_at;
        into = number();
        if (!into) stopHere(RepetitionNotationText::tr("Here come the seconds: /3 lowered, ^1 lifted."));
    }

    [[nodiscard]] bool isShortOfTheStandard(const Repetition& one) const
    {
        if (!m_context.full || !m_context.leastPercent || one.partWay || !one.travelMm) return false;
        return one.travelMm->toDouble() < m_context.full->mm * *m_context.leastPercent / kPercent;
    }

    void append(Repetition one, int times, qsizetype at)
    {
        const qsizetype length = m_at - at;
        if (isShortOfTheStandard(one) && !one.marks.has(Mark::ShortBottom) && !one.marks.has(Mark::ShortTop))
            return stop(at, length,
                        RepetitionNotationText::tr("This is under the %1 % of the full travel that count here. Say at "
                                                   "which end it was short: b behind it for the bottom, t for the top.")
                            .arg(*m_context.leastPercent));
        for (int i = 0; i < times; ++i) {
            one.number = static_cast<int>(m_repetitions.size()) + 1;
            m_repetitions.push_back(one);
            if (const Problems problems = validate(m_repetitions); !problems.empty())
                return stop(at, length, problems.front().text);
        }
    }

    QStringView m_line;
    const RepetitionLineContext& m_context;
    qsizetype m_at = 0;
    std::vector<Repetition> m_repetitions;
    std::optional<NotationProblem> m_problem;
};

QString wordOf(const Repetition& one)
{
    QString word = one.travelMm ? centimetreText(*one.travelMm) : QStringLiteral(".");
    if (one.liftingSeconds) word += u'^' + one.liftingSeconds->toString();
    if (one.loweringSeconds) word += u'/' + one.loweringSeconds->toString();
    for (const auto& [mark, key] : EnumText<Mark>::table)
        if (one.marks.has(mark)) word += letterOf(mark);
    if (one.partWay) word += u'+';
    return word;
}

}  // namespace

RepetitionLineReading readRepetitionLine(QStringView line, const RepetitionLineContext& context)
{
    return RepetitionLineReader(line, context).read();
}

QString writeRepetitionLine(std::span<const Repetition> repetitions)
{
    QStringList words;
    for (std::size_t i = 0; i < repetitions.size();) {
        const QString word = wordOf(repetitions[i]);
        std::size_t same = i + 1;
        while (same < repetitions.size() && wordOf(repetitions[same]) == word) ++same;
        // Two points are as quick to read as 2*.
        if (same - i > 2) {
            words << QString::number(same - i) + u'*' + word;
            i = same;
        } else {
            words << word;
            ++i;
        }
    }
    return words.join(u' ');
}

bool canBeTyped(std::span<const Repetition> repetitions)
{
    return std::ranges::all_of(repetitions, [](const Repetition& one) {
        const bool fits = !one.travelMm || one.travelMm->decimals() < Decimal::kMaxDecimals;
        return one.source != RepetitionSource::Measured && !one.lowMm && !one.highMm && fits;
    });
}

QString emptyRepetitionLine(const SetEntry& set)
{
    std::vector<Repetition> repetitions(static_cast<std::size_t>(std::clamp(set.reps, 0, kMostRepetitions - 1)));
    if (set.failed) repetitions.push_back({.partWay = true});
    return writeRepetitionLine(repetitions);
}

}  // namespace steelyard
