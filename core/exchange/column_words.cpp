#include "core/exchange/column_words.h"

#include "core/base/nearest_names.h"
#include "core/base/text.h"
#include "core/exchange/logbook_cells.h"

#include <QtCore/QRegularExpression>

#include <algorithm>

namespace steelyard {
namespace {

struct ColumnWords {
    const char* column;
    // Slugs, separated by spaces: each is the whole heading, or one of its words.
    const char* words;
    // These are a heading only when nothing else stands there: "name" may be anybody's or anything's.
    const char* alone = "";
};
constexpr auto kColumnWords = std::to_array<ColumnWords>(
    {{"date", "date datum day jour fecha dia", "tag"},
     {"athlete", "athlete lifter client trainee athlet sportler sportif athlet-in atleta cliente deportista person",
      "name nom nombre who wer"},
     {"exercise", "exercise lift movement ubung uebung bewegung exercice mouvement ejercicio movimiento", "was what"},
     {"variant", "variant variation variante", ""},
     {"grip", "grip griff prise agarre", ""},
     {"standard", "standard", ""},
     {"load", "load weight gewicht charge poids peso carga kilos", "last kg kgs lb lbs"},
     {"unit", "unit units einheit unite unidad", ""},
     {"set", "set-no set-nr set-number satz-nr no-serie", "set satz serie no nr"},
     {"sets", "sets satze saetze series anzahl-satze nb-series", ""},
     {"reps", "reps rep repetitions repetition wdh wiederholungen wiederholung repeticiones", ""},
     {"off", "off-standard", "off"},
     {"failed", "failed", ""},
     {"rir", "rir reserve reps-left reps-in-reserve", ""},
     {"rpe", "rpe effort anstrengung esfuerzo effort-percu", ""},
     {"lowering_s", "lowering lowering-s", ""},
     {"kind", "set-type satzart", "kind type art"},
     {"note",
      "note notes comment comments remark remarks notiz notizen bemerkung bemerkungen kommentar commentaire "
      "commentaires remarque remarques nota notas comentario comentarios observaciones",
      ""}});

constexpr int kWholePoints = 100;
constexpr int kOneWordPoints = 75;
constexpr int kLikePoints = 60;
constexpr int kBeginningPoints = 50;

QString withoutBrackets(QStringView heading)
{
    static const QRegularExpression bracketed(QStringLiteral("[(\\[][^)\\]]*[)\\]]?"));
    return heading.toString().remove(bracketed);
}

bool isUnitWord(const QString& word)
{
    return readUnitCell(word).has_value() || word == QStringLiteral("in");
}

// How many letters may be mistyped before a word is another one.
int mostMistakes(qsizetype letters)
{
    return letters < 5 ? 0 : letters < 8 ? 1 : 2;
}

int pointsOfWord(const QString& word, const QStringList& known)
{
    if (known.contains(word)) return kOneWordPoints;
    for (const QString& one : known) {
        if (one.contains(u'-')) continue;  // several words, which only a whole heading can be
        if (std::abs(one.size() - word.size()) <= 2 && editDistance(one, word) <= mostMistakes(one.size()))
            return kLikePoints;
        if (word.size() >= 3 && one.startsWith(word) && one.size() > 4) return kBeginningPoints;
    }
    return 0;
}

int pointsOf(const QString& whole, const QStringList& parts, const ColumnWords& row)
{
    const QStringList words = QString::fromLatin1(row.words).split(u' ');
    const QStringList alone = QString::fromLatin1(row.alone).split(u' ', Qt::SkipEmptyParts);
    QStringList bare;
    for (const QString& part : parts)
        if (!isUnitWord(part)) bare.append(part);
    const QString withoutUnits = bare.join(u'-');
    for (const QString& name : {whole, withoutUnits})
        if (!name.isEmpty() && (words.contains(name) || alone.contains(name))) return kWholePoints;
    int best = 0;
    for (const QString& part : bare) best = std::max(best, pointsOfWord(part, words));
    // Words around it make it less sure, and a set's number belongs to a wide sheet.
    return best == 0 ? 0 : best - std::min<int>(20, 5 * static_cast<int>(bare.size() - 1));
}

}  // namespace

QStringList headingWords(QStringView heading)
{
    return slug(withoutBrackets(heading)).split(u'-', Qt::SkipEmptyParts);
}

std::optional<ColumnFit> columnFit(QStringView heading)
{
    const QString own = searchKey(heading.trimmed());
    if (logbookColumns().contains(own)) return ColumnFit{own, kWholePoints};
    const QStringList parts = headingWords(heading);
    ColumnFit best;
    for (const ColumnWords& row : kColumnWords) {
        const int points = pointsOf(parts.join(u'-'), parts, row);
        if (points > best.points) best = {QString::fromLatin1(row.column), points};
    }
    // "(kg)" alone is a load.
    if (parts.isEmpty() && unitInHeading(heading)) return ColumnFit{QStringLiteral("load"), kWholePoints};
    return best.points > 0 ? std::optional(best) : std::nullopt;
}

std::optional<MassUnit> unitInHeading(QStringView heading)
{
    std::optional<MassUnit> found;
    for (const QString& word : slug(heading).split(u'-')) {
        const auto unit = readUnitCell(word);
        if (unit && found && *found != *unit) return std::nullopt;  // "kg/lb"
        if (unit) found = unit;
    }
    return found;
}

bool isSetWord(const QString& word)
{
    static const QStringList words{QStringLiteral("set"), QStringLiteral("satz"), QStringLiteral("serie"),
                                   QStringLiteral("s")};
    return words.contains(word);
}

}  // namespace steelyard
