#include "core/keying/set_notation.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct SetNotationText {
    Q_DECLARE_TR_FUNCTIONS(SetNotationText)
};

struct MarkLetter {
    Mark mark;
    char16_t letter;
};
constexpr auto kMarkLetters = std::to_array<MarkLetter>({{Mark::ShortBottom, u'b'},
                                                         {Mark::ShortTop, u't'},
                                                         {Mark::Swing, u's'},
                                                         {Mark::Dropped, u'd'},
                                                         {Mark::Lean, u'l'},
                                                         {Mark::Assisted, u'a'}});

struct KindWord {
    SetKind kind;
    QStringView word;
};
// "work" is only written where another kind is what a line without a word means.
constexpr auto kKindWords = std::to_array<KindWord>(
    {{SetKind::WarmUp, u"warmup"}, {SetKind::Deload, u"deload"}, {SetKind::Test, u"test"}, {SetKind::Work, u"work"}});

constexpr qsizetype kMostDigits = 9;

bool isDigit(QChar c)
{
    return c >= u'0' && c <= u'9';
}

// One pass over the line. Every step either goes on or leaves a problem, after which nothing more is read.
class SetLineReader {
public:
    SetLineReader(QStringView line, const NotationContext& context) : m_line(line), m_context(context) {}

    NotationReading read()
    {
        m_set.kind = m_context.kind;
        readLoadAndReps();
        while (!m_problem && !atEnd()) readSuffix();
        if (!m_problem) settleOff();
        if (!m_problem) checkWhole();
        if (m_problem) return tl::unexpected(*m_problem);
        return m_set;
    }

private:
    struct Number {
        Decimal value;
        qsizetype at = 0;
        qsizetype length = 0;
        [[nodiscard]] bool isWhole() const { return value.decimals() == 0; }
    };

    bool atEnd()
    {
        while (m_at < m_line.size() && m_line[m_at].isSpace()) ++m_at;
        return m_at >= m_line.size();
    }
    bool take(QStringView word)
    {
        if (!m_line.mid(m_at).startsWith(word, Qt::CaseInsensitive)) return false;
        m_at += word.size();
        return true;
    }
    void stop(qsizetype at, qsizetype length, QString text)
    {
        if (!m_problem) m_problem = NotationProblem{at, length, std::move(text)};
    }
    void stopHere(QString text)
    {
        const bool missing = atEnd();
        stop(missing ? m_line.size() : m_at, missing ? 0 : 1, std::move(text));
    }

    // Digits with at most one decimal mark between them. What looks like a number and is none is a problem.
    std::optional<Number> number()
    {
        if (atEnd() || !isDigit(m_line[m_at])) return std::nullopt;
        const qsizetype at = m_at;
        QString text;
        bool pointSeen = false;
        while (m_at < m_line.size()) {
            const QChar c = m_line[m_at];
            const bool isPoint = c == u'.' || c == u',';
            if (!isDigit(c) && (!isPoint || pointSeen || m_at + 1 >= m_line.size() || !isDigit(m_line[m_at + 1])))
                break;
            pointSeen = pointSeen || isPoint;
            text += isPoint ? QChar(u'.') : c;
            ++m_at;
        }
        const auto value = text.size() <= kMostDigits + 1 ? Decimal::parse(QStringView(text)) : std::nullopt;
        if (!value) {
            stop(at, m_at - at, SetNotationText::tr("This number has too many digits."));
            return std::nullopt;
        }
        return Number{*value, at, m_at - at};
    }

    std::optional<MassUnit> unit()
    {
        if (atEnd()) return std::nullopt;
        if (take(u"kg")) return MassUnit::kg;
        if (take(u"lbs") || take(u"lb")) return MassUnit::lb;
        return std::nullopt;
    }

    bool takeTimes() { return !atEnd() && (take(u"x") || take(u"×") || take(u"*")); }

    void readLoadAndReps()
    {
        if (atEnd()) return stopHere(SetNotationText::tr("Type a set: 42.5x12, or 12 for the same load again."));
        if (takeTimes()) return readReps(number());
        const auto first = number();
        if (!first)
            return stopHere(SetNotationText::tr("A set begins with a number: 42.5x12, or 12 for the same load."));
        const auto said = unit();
        if (!takeTimes()) {
            if (said) return stopHere(SetNotationText::tr("After the load come x and the repetitions: 42.5kg x12."));
            return readReps(first);
        }
        const auto load = Load::make(first->value, said.value_or(m_context.unit));
        if (!load)
            return stop(first->at, first->length,
                        SetNotationText::tr("A load is at most %1 and has at most %2 decimals.")
                            .arg(QString::number(Load::kMaxAmount), QString::number(Load::kMaxDecimals)));
        m_set.load = *load;
        m_loadSaid = true;
        readReps(number());
    }

    void readReps(const std::optional<Number>& reps)
    {
        if (m_problem) return;
        if (!reps) return stopHere(SetNotationText::tr("Here the repetitions belong: 42.5x12."));
        if (!reps->isWhole() || reps->value.mantissa() > 200)
            return stop(
                reps->at, reps->length,
                SetNotationText::tr("Repetitions are a whole number from 0 to 200. A load goes before: 42.5x12."));
        m_set.reps = static_cast<int>(reps->value.mantissa());
        m_repsAt = reps->at;
        if (m_loadSaid) return;
        if (!m_context.load)
            return stop(reps->at, reps->length,
                        SetNotationText::tr("There is no earlier load to keep: type the load first, as in 42.5x12."));
        m_set.load = *m_context.load;
    }

    // True when `said` was false till now; a second time is a problem.
    bool once(bool& said, qsizetype from)
    {
        if (said) stop(from, m_at - from, SetNotationText::tr("This was said already in this line."));
        return !std::exchange(said, true);
    }

    void readSuffix()
    {
        const qsizetype from = m_at;
        if (take(u"+")) {
            if (once(m_failedSaid, from)) m_set.failed = true;
        } else if (take(u"\""))
            readNote();
        else if (take(u"-"))
            readOff(from);
        else if (take(u"@"))
            readEffort(from, Effort::Scale::Rpe);
        else if (take(u"rir"))
            readEffort(from, Effort::Scale::Rir);
        else if (take(u"/"))
            readLowering(from);
        else if (take(u"lean"))
            readLean(from);
        else if (!readKind(from) && !readWatched(from) && !readMark(from))
            stop(from, 1,
                 SetNotationText::tr("“%1” means nothing here. Behind the repetitions may stand: w -3 b t s d l a "
                                     "+ @8 rir2 /3 lean12 warmup deload test and \" before a note.")
                     .arg(m_line[from]));
    }

    void readOff(qsizetype from)
    {
        if (!once(m_offSaid, from)) return;
        if (take(u"?")) return;
        m_set.off = wholeNumber(SetNotationText::tr("Here belongs how many repetitions were off: 12-3."));
    }

    bool readWatched(qsizetype from)
    {
        if (!take(u"w")) return false;
        if (once(m_offSaid, from)) m_set.off = 0;
        return true;
    }

    bool readMark(qsizetype from)
    {
        for (const MarkLetter& row : kMarkLetters) {
            if (!take(QStringView(&row.letter, 1))) continue;
            if (m_set.marks.of(row.mark) != 0)
                stop(from, 1, SetNotationText::tr("This mark was counted already in this line."));
            const bool counted = m_at < m_line.size() && isDigit(m_line[m_at]);
            const auto count = counted ? wholeNumber({}) : std::optional(1);
            if (!count) return true;
            if (*count < 1 || *count > m_set.reps)
                stop(from, m_at - from,
                     SetNotationText::tr("A mark counts from 1 to the set's %n repetition(s).", nullptr, m_set.reps));
            else
                m_set.marks.set(row.mark, *count);
            if (m_firstMarkAt < 0) m_firstMarkAt = from;
            return true;
        }
        return false;
    }

    bool readKind(qsizetype from)
    {
        for (const KindWord& row : kKindWords) {
            if (!take(row.word)) continue;
            if (once(m_kindSaid, from)) m_set.kind = row.kind;
            return true;
        }
        return false;
    }

    void readEffort(qsizetype from, Effort::Scale scale)
    {
        if (m_set.effort)
            return stop(from, m_at - from, SetNotationText::tr("The effort was said already: @ or rir, one of them."));
        const auto value = number();
        if (!value)
            return stopHere(scale == Effort::Scale::Rpe
                                ? SetNotationText::tr("Here belongs the effort from 1 to 10: @8.")
                                : SetNotationText::tr("Here belong the repetitions in reserve: rir2."));
        m_set.effort = Effort{scale, value->value};
    }

    void readLowering(qsizetype from)
    {
        if (m_set.loweringSeconds) return stop(from, 1, SetNotationText::tr("This was said already in this line."));
        const auto value = number();
        if (!value) return stopHere(SetNotationText::tr("Here belong the seconds of lowering: /3."));
        m_set.loweringSeconds = value->value;
    }

    void readLean(qsizetype from)
    {
        if (m_set.leanDegrees) return stop(from, 4, SetNotationText::tr("This was said already in this line."));
        const auto value = number();
        if (!value) return stopHere(SetNotationText::tr("Here belong the degrees from upright: lean12."));
        m_set.leanDegrees = value->value;
    }

    void readNote()
    {
        QString note;
        for (; m_at < m_line.size(); ++m_at) {
            if (m_line[m_at] != u'\\') {
                note += m_line[m_at];
                continue;
            }
            const QChar escaped = m_at + 1 < m_line.size() ? m_line[m_at + 1] : QChar();
            ++m_at;
            if (escaped == u'n')
                note += u'\n';
            else if (escaped == u'\\')
                note += u'\\';
            else {
                stop(m_at - 1, 1, SetNotationText::tr("In a note a backslash is typed twice; \\n is a line break."));
                return;
            }
        }
        m_set.note = note;
    }

    // Without spaces in between: the count belongs to what stands before it.
    std::optional<int> wholeNumber(const QString& missing)
    {
        const auto value = number();
        if (!value) {
            stopHere(missing);
            return std::nullopt;
        }
        if (!value->isWhole() || value->value.mantissa() > m_set.reps) {
            stop(value->at, value->length,
                 SetNotationText::tr("This is a whole number, at most the set's %n repetition(s).", nullptr,
                                     m_set.reps));
            return std::nullopt;
        }
        return static_cast<int>(value->value.mantissa());
    }

    void settleOff()
    {
        if (m_offSaid || m_set.marks.none()) return;
        int kinds = 0;
        for (const MarkLetter& row : kMarkLetters) kinds += m_set.marks.of(row.mark) > 0 ? 1 : 0;
        if (kinds > 1)
            return stop(m_firstMarkAt, m_line.size() - m_firstMarkAt,
                        SetNotationText::tr(
                            "With marks of several kinds, say how many repetitions were off in all: 12-3 s2 t1. "
                            "One repetition may carry two marks."));
        m_set.off = m_set.marks.total();
    }

    // The rest of what a set must be, said where it stands as well as that can be told.
    void checkWhole()
    {
        const Problems problems = validate(m_set);
        if (!problems.empty()) stop(m_repsAt, m_line.size() - m_repsAt, problems.front().text);
    }

    QStringView m_line;
    const NotationContext& m_context;
    SetEntry m_set;
    qsizetype m_at = 0;
    qsizetype m_repsAt = 0;
    qsizetype m_firstMarkAt = -1;
    bool m_loadSaid = false;
    bool m_failedSaid = false;
    bool m_offSaid = false;
    bool m_kindSaid = false;
    std::optional<NotationProblem> m_problem;
};

}  // namespace

NotationReading readSet(QStringView line, const NotationContext& context)
{
    return SetLineReader(line, context).read();
}

QString writeSet(const SetEntry& set, MassUnit usual, SetKind kind)
{
    QString text = set.load.amount().toString();
    if (set.load.unit() != usual) text += toText(set.load.unit());
    text += u'x' + QString::number(set.reps);
    if (set.failed) text += u'+';
    if (set.off && *set.off == 0) text += QStringLiteral(" w");
    if (set.off && *set.off > 0) text += u'-' + QString::number(*set.off);
    if (!set.off && !set.marks.none()) text += QStringLiteral("-?");
    for (const MarkLetter& row : kMarkLetters)
        if (const int count = set.marks.of(row.mark); count > 0) text += u' ' + (row.letter + QString::number(count));
    if (set.effort) {
        text += set.effort->scale == Effort::Scale::Rpe ? QStringLiteral(" @") : QStringLiteral(" rir");
        text += set.effort->value.toString();
    }
    if (set.loweringSeconds) text += QStringLiteral(" /") + set.loweringSeconds->toString();
    if (set.leanDegrees) text += QStringLiteral(" lean") + set.leanDegrees->toString();
    for (const KindWord& row : kKindWords)
        if (row.kind == set.kind && set.kind != kind) text += u' ' + row.word.toString();
    if (!set.note.isEmpty()) {
        QString note = set.note;
        note.replace(u'\\', QStringLiteral("\\\\")).replace(u'\n', QStringLiteral("\\n"));
        text += QStringLiteral(" \"") + note;
    }
    return text;
}

std::vector<QStringView> splitSets(QStringView line)
{
    std::vector<QStringView> parts;
    qsizetype from = 0;
    const auto keep = [&](QStringView part) {
        if (!part.isEmpty()) parts.push_back(part);
    };
    for (qsizetype at = 0; at < line.size(); ++at) {
        if (line[at] == u'"') {
            // Spaces at the end of a note are the note's.
            while (line[from].isSpace()) ++from;
            keep(line.mid(from));
            return parts;
        }
        if (line[at] != u';') continue;
        keep(line.mid(from, at - from).trimmed());
        from = at + 1;
    }
    keep(line.mid(from).trimmed());
    return parts;
}

QChar letterOf(Mark mark)
{
    return std::ranges::find(kMarkLetters, mark, &MarkLetter::mark)->letter;
}

std::optional<Mark> markOfLetter(QChar letter)
{
    const auto found =
        std::ranges::find_if(kMarkLetters, [&](const MarkLetter& one) { return letter.toLower() == one.letter; });
    return found == kMarkLetters.end() ? std::nullopt : std::optional(found->mark);
}

}  // namespace steelyard
