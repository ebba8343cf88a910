#include "core/exchange/pasted_log.h"

#include "core/base/nearest_names.h"
#include "core/base/text.h"
#include "core/exchange/exercise_likeness.h"
#include "core/exchange/logbook_cells.h"
#include "core/keying/set_notation.h"

#include <QtCore/QCoreApplication>

#include <algorithm>

namespace steelyard {
namespace {

struct PastedText {
    Q_DECLARE_TR_FUNCTIONS(PastedText)
};

constexpr int kMostAsked = 20;

// A piece of a line, and where it stands in it.
struct Span {
    QStringView text;
    qsizetype at = 0;

    [[nodiscard]] Span part(qsizetype from, qsizetype length = -1) const
    {
        Span piece{text.mid(from, length), at + from};
        while (!piece.text.isEmpty() && piece.text.front().isSpace()) {
            piece.text = piece.text.mid(1);
            ++piece.at;
        }
        piece.text = piece.text.trimmed();
        return piece;
    }
};

bool looksLikeASet(QStringView text)
{
    if (text.isEmpty()) return false;
    if (text[0].isDigit()) return true;
    return text.size() > 1 && (text[0] == u'x' || text[0] == u'X' || text[0] == u'×') && text[1].isDigit();
}

class PasteReader {
public:
    explicit PasteReader(const PasteContext& context) : m_context(context), m_date(context.date)
    {
        if (!context.athlete.isEmpty()) choose(context.athlete);
    }

    PastedLog read(const QString& text)
    {
        for (const QString& line : text.split(u'\n')) {
            ++m_lineNumber;
            m_line = {};
            readLine(Span{line, 0}.part(0));
            if (m_line.kind == Kind::Wrong) ++m_log.problems;
            m_log.lines.push_back(m_line);
        }
        return std::move(m_log);
    }

private:
    using Kind = PastedLine::Kind;

    void wrong(Span where, const QString& text)
    {
        m_line = {};
        m_line.kind = Kind::Wrong;
        m_line.at = where.at;
        m_line.length = where.text.size();
        m_line.problem = text;
    }

    void readLine(Span line)
    {
        if (line.text.startsWith(u"- ") || line.text.startsWith(u"* ")) line = line.part(2);
        if (line.text.isEmpty() || line.text.startsWith(u'#')) return;
        if (readDay(line)) return;
        if (line.text.endsWith(u':')) return readAthlete(line.part(0, line.text.size() - 1));
        if (line.text.startsWith(u'+')) return readNewExercise(line.part(1));
        if (looksLikeASet(line.text) && !findExercise(line.text)) return readSets(line);
        const qsizetype colon = line.text.indexOf(u':');
        if (colon > 0 && looksLikeASet(line.part(colon + 1).text)) {
            readExercise(line.part(0, colon));
            if (m_line.kind == Kind::Exercise) readSets(line.part(colon + 1));
            return;
        }
        readExercise(line);
    }

    bool readDay(Span line)
    {
        const QStringView text = line.text.endsWith(u':') ? line.text.chopped(1) : line.text;
        if (!datePartsOf(text)) return false;
        auto day = readDateCell(text, DateOrder::YearMonthDay);
        if (!day) day = readDateCell(text, m_context.dateOrder);
        if (!day) {
            wrong(line, PastedText::tr("This is no day in the order %1; write it like 2027-03-01.")
                            .arg(orderInWords(m_context.dateOrder)));
        } else if (*day > m_context.today.addDays(1)) {
            wrong(line, PastedText::tr("This day has not come yet; check day, month and year."));
        } else {
            m_line.kind = Kind::Date;
            m_line.date = *day;
            m_date = *day;
            endExercise();
        }
        return true;
    }

    void choose(const QString& name)
    {
        const QString key = searchKey(name);
        const auto at =
            std::ranges::find_if(m_context.athletes, [&](const PastedBy& one) { return searchKey(one.name) == key; });
        m_athlete = at == m_context.athletes.end() ? std::nullopt : std::optional(*at);
    }

    void readAthlete(Span name)
    {
        choose(name.text.toString());
        endExercise();
        if (m_athlete) {
            m_line.kind = Kind::Athlete;
            m_line.name = m_athlete->name;
            return;
        }
        QStringList names;
        for (const PastedBy& one : m_context.athletes) names.append(one.name);
        const QString nearest = nearestFirst(names, name.text).value(0);
        wrong(name,
              nearest.isEmpty()
                  ? PastedText::tr("Nobody is on the roster yet. Add the lifter first.")
                  : PastedText::tr("Nobody on the roster is called this. The nearest name is “%1”.").arg(nearest));
    }

    void endExercise()
    {
        m_exercise.reset();
        m_load.reset();
    }

    struct Names {
        QString exercise;
        QString variant;
        QString grip;
        QString standard;
    };

    // "Arm curl" or "Arm curl, cable, upright".
    [[nodiscard]] std::optional<ExerciseName> findExercise(QStringView text) const
    {
        const QString key = searchKey(cleanName(text));
        for (const auto& exercise : m_context.library.exercises)
            if (searchKey(exercise.value.name) == key) return ExerciseName{exercise.value.name, {}};
        for (const auto& variant : m_context.library.variants) {
            if (searchKey(m_context.library.fullName(variant.value)) != key) continue;
            const auto* exercise = m_context.library.find(variant.value.exercise);
            return ExerciseName{exercise->value.name, variant.value.name};
        }
        return std::nullopt;
    }

    void take(const Names& names, bool isNew)
    {
        endExercise();
        m_exercise = names;
        m_line.kind = Kind::Exercise;
        m_line.isNew = isNew;
        m_line.name = names.exercise;
        for (const QString& more : {names.variant, names.grip, names.standard})
            if (!more.isEmpty()) m_line.name += QStringLiteral(", ") + more;
    }

    void readExercise(Span line)
    {
        const QList<QStringView> parts = line.text.split(u'/');
        const auto found = findExercise(parts[0]);
        if (!found) {
            endExercise();
            const Span name = line.part(0, parts[0].size());
            // A long text of another kind is no reason to keep anybody waiting.
            std::vector<ExerciseSuggestion> like;
            if (++m_asked <= kMostAsked) like = likeExercises(m_context.library, {name.text.toString(), {}}, 1);
            const QString word = like.empty() ? QString() : fullName(like[0].name);
            return wrong(name,
                         word.isEmpty()
                             ? PastedText::tr("The library has no such exercise. For a new one, type + before it.")
                             : PastedText::tr("The library has no such exercise. Did you mean “%1”? For a new one, "
                                              "type + before it.")
                                   .arg(word));
        }
        take({found->exercise, found->variant, cleanName(parts.value(1)), cleanName(parts.value(2))}, false);
    }

    static QString fullName(const ExerciseName& name)
    {
        return name.variant.isEmpty() ? name.exercise : name.exercise + QStringLiteral(", ") + name.variant;
    }

    void readNewExercise(Span name)
    {
        const QString clean = cleanName(name.text);
        if (clean.isEmpty() || clean.size() > kMaxNameLength)
            return wrong(name, PastedText::tr("A name has from 1 to %1 characters.").arg(kMaxNameLength));
        const auto known = findExercise(clean);
        take(known ? Names{known->exercise, known->variant, {}, {}} : Names{clean, {}, {}, {}}, !known);
    }

    void readSets(Span line)
    {
        if (!m_athlete)
            return wrong(line, PastedText::tr("Say first whose sets these are, in a line such as “Ada Fulcrum:”."));
        if (!m_exercise) return wrong(line, PastedText::tr("Say first which exercise this is, in a line of its own."));
        const std::size_t before = m_log.rows.size();
        for (const QStringView part : splitSets(line.text)) {
            const NotationReading reading = readSet(part, {m_load, m_athlete->unit, SetKind::Work});
            if (!reading) {
                m_log.rows.resize(before);
                const qsizetype at = line.at + (part.data() - line.text.data()) + reading.error().at;
                wrong({}, reading.error().text);
                m_line.at = at;
                m_line.length = reading.error().length;
                return;
            }
            add(*reading);
        }
        m_line.kind = Kind::Sets;
    }

    void add(const SetEntry& set)
    {
        m_load = set.load;
        m_line.sets.push_back(set);
        LogbookRow row;
        row.line = m_lineNumber;
        row.date = m_date;
        row.athlete = m_athlete->name;
        row.exercise = m_exercise->exercise;
        row.variant = m_exercise->variant;
        row.grip = m_exercise->grip;
        row.standard = m_exercise->standard;
        row.set = set;
        row.unitGiven = true;
        m_log.rows.push_back(std::move(row));
    }

    const PasteContext& m_context;
    PastedLog m_log;
    PastedLine m_line;
    int m_lineNumber = 0;
    int m_asked = 0;  // what a name is like
    std::optional<PastedBy> m_athlete;
    QDate m_date;
    std::optional<Names> m_exercise;
    std::optional<Load> m_load;
};

}  // namespace

ParsedLogbook PastedLog::asLogbook() const
{
    ParsedLogbook log;
    log.rows = rows;
    return log;
}

PastedLog readPastedLog(const QString& text, const PasteContext& context)
{
    return PasteReader(context).read(text);
}

}  // namespace steelyard
