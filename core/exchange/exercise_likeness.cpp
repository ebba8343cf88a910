#include "core/exchange/exercise_likeness.h"

#include "core/base/nearest_names.h"
#include "core/base/text.h"

#include <algorithm>

namespace steelyard {
namespace {

// The trade's words for what the library says otherwise, as slugs; longer ones first where one is part of another.
struct SameThing {
    const char* said;
    const char* here;
};
constexpr auto kSameThings = std::to_array<SameThing>({
    // implements
    {"barbell-curl", "arm-curl-straight-bar"},
    {"dumbbell-curl", "arm-curl-dumbbells"},
    {"db-curl", "arm-curl-dumbbells"},
    {"cable-curl", "arm-curl-cable"},
    {"ez-curl", "arm-curl-angled-bar"},
    {"ez-bar", "angled-bar"},
    {"sz-stange", "angled-bar"},
    {"sz", "angled-bar"},
    {"barbell", "straight-bar"},
    {"bb", "straight-bar"},
    {"langhantel", "straight-bar"},
    {"lh", "straight-bar"},
    {"barre", "straight-bar"},
    {"barra", "straight-bar"},
    {"dumbbell", "dumbbells"},
    {"db", "dumbbells"},
    {"kurzhantel", "dumbbells"},
    {"kurzhanteln", "dumbbells"},
    {"kh", "dumbbells"},
    {"halteres", "dumbbells"},
    {"mancuernas", "dumbbells"},
    {"kabel", "cable"},
    {"kabelzug", "cable"},
    {"poulie", "cable"},
    {"polea", "cable"},
    {"maschine", "machine"},
    {"maquina", "machine"},
    {"sitzend", "seated"},
    {"stehend", "standing"},
    {"einarmig", "one-arm"},
    // arms
    {"bizepscurls", "arm-curl"},
    {"bizepscurl", "arm-curl"},
    {"bizeps-curl", "arm-curl"},
    {"biceps-curl", "arm-curl"},
    {"bicep-curl", "arm-curl"},
    {"curl-biceps", "arm-curl"},
    {"curl-de-biceps", "arm-curl"},
    {"preacher-curl", "supported-curl"},
    {"scottcurl", "supported-curl"},
    {"reverse-curl", "overhand-curl"},
    {"trizepsdrucken", "cable-press-down"},
    {"pushdown", "press-down"},
    {"pressdown", "press-down"},
    {"push-down", "press-down"},
    // chest and shoulders
    {"incline-bench-press", "incline-press"},
    {"schragbankdrucken", "incline-press"},
    {"bankdrucken", "bench-press"},
    {"bank-drucken", "bench-press"},
    {"bankdr", "bench-press"},
    {"developpe-couche", "bench-press"},
    {"developpe-incline", "incline-press"},
    {"press-de-banca", "bench-press"},
    {"press-banca", "bench-press"},
    {"schulterdrucken", "overhead-press"},
    {"uberkopfdrucken", "overhead-press"},
    {"developpe-militaire", "overhead-press"},
    {"press-militar", "overhead-press"},
    {"military-press", "overhead-press"},
    {"shoulder-press", "overhead-press"},
    {"ohp", "overhead-press"},
    {"seitheben", "lateral-raise"},
    {"elevations-laterales", "lateral-raise"},
    {"elevaciones-laterales", "lateral-raise"},
    {"side-raise", "lateral-raise"},
    {"fliegende", "chest-fly"},
    {"butterfly", "chest-fly"},
    {"liegestutze", "push-up"},
    {"liegestutz", "push-up"},
    {"pompes", "push-up"},
    {"flexiones", "push-up"},
    {"pushup", "push-up"},
    // back
    {"klimmzuge", "pull-up"},
    {"klimmzug", "pull-up"},
    {"tractions", "pull-up"},
    {"dominadas", "pull-up"},
    {"pullup", "pull-up"},
    {"chinup", "chin-up"},
    {"latziehen", "pulldown"},
    {"latzug", "pulldown"},
    {"tirage-vertical", "pulldown"},
    {"jalon", "pulldown"},
    {"lat-pull-down", "pulldown"},
    {"lat-pulldown", "pulldown"},
    {"pull-down", "pulldown"},
    {"rudern", "row"},
    {"rowing", "row"},
    {"remo", "row"},
    {"ruckenstrecker", "back-extension"},
    // legs
    {"kniebeugen", "back-squat"},
    {"kniebeuge", "back-squat"},
    {"frontkniebeuge", "front-squat"},
    {"sentadillas", "back-squat"},
    {"sentadilla", "back-squat"},
    {"beinpresse", "leg-press"},
    {"presse-a-cuisses", "leg-press"},
    {"prensa", "leg-press"},
    {"ausfallschritte", "lunge"},
    {"ausfallschritt", "lunge"},
    {"fentes", "lunge"},
    {"zancadas", "lunge"},
    {"beinstrecker", "knee-extension"},
    {"leg-extension", "knee-extension"},
    {"beinbeuger", "leg-curl"},
    {"hamstring-curl", "leg-curl"},
    {"rumanisches-kreuzheben", "romanian-deadlift"},
    {"kreuzheben", "deadlift"},
    {"souleve-de-terre", "deadlift"},
    {"peso-muerto", "deadlift"},
    {"rdl", "romanian-deadlift"},
    {"huftheben", "hip-thrust"},
    {"wadenheben", "calf-raise"},
    {"mollets", "calf-raise"},
    {"gemelos", "calf-raise"},
});

constexpr double kWordLikeness = 0.7;  // below it two words have nothing in common
constexpr double kClear = 0.8;
constexpr double kClearLead = 0.08;

QStringList wordsOfName(QStringView name)
{
    QString text = u'-' + slug(name) + u'-';
    for (const SameThing& row : kSameThings) {
        const QString said = QStringLiteral("-%1-").arg(QLatin1StringView(row.said));
        // Replaced once: what stands here already may hold the same words.
        if (const qsizetype at = text.indexOf(said); at >= 0)
            text.replace(at, said.size(), QStringLiteral("-%1-").arg(QLatin1StringView(row.here)));
    }
    static const QStringList fillers{QStringLiteral("with"), QStringLiteral("mit"), QStringLiteral("the"),
                                     QStringLiteral("am"),   QStringLiteral("an"),  QStringLiteral("a"),
                                     QStringLiteral("de"),   QStringLiteral("la"),  QStringLiteral("con"),
                                     QStringLiteral("avec"), QStringLiteral("on"),  QStringLiteral("and")};
    QStringList words;
    for (const QString& word : text.split(u'-', Qt::SkipEmptyParts))
        if (!fillers.contains(word)) words.append(word);
    return words;
}

double wordLikeness(const QString& a, const QString& b)
{
    if (a == b || a + u's' == b || b + u's' == a) return 1;
    const auto longer = std::max(a.size(), b.size());
    const auto shorter = std::min(a.size(), b.size());
    // "pres" is "press" with a letter left out, but "hack" is no mistyped "back".
    if (shorter == 4 && longer == 5 && (a.startsWith(b) || b.startsWith(a))) return 0.8;
    if (shorter < 5) return 0;
    const double like = 1.0 - static_cast<double>(editDistance(a, b)) / static_cast<double>(longer);
    return like >= kWordLikeness ? like : 0;
}

// How much of some words is found among others, 0..1.
double coverage(const QStringList& words, const QStringList& among)
{
    if (words.isEmpty()) return 0;
    double sum = 0;
    for (const QString& word : words) {
        double best = 0;
        for (const QString& other : among) best = std::max(best, wordLikeness(word, other));
        sum += best;
    }
    return sum / static_cast<double>(words.size());
}

class LikenessRanker {
public:
    explicit LikenessRanker(const Library& library)
    {
        for (const auto& exercise : library.exercises)
            m_exercises.push_back({exercise.id, exercise.value.name, wordsOfName(exercise.value.name), {}});
        for (const auto& variant : library.variants) {
            const auto at = std::ranges::find(m_exercises, variant.value.exercise, &KnownExercise::id);
            if (at == m_exercises.end()) continue;
            QStringList words = wordsOfName(variant.value.name);
            if (variant.value.isDefault) at->usual = words;
            at->variants.push_back({variant.value.name, std::move(words)});
        }
    }

    [[nodiscard]] std::vector<ExerciseSuggestion> rank(const ExerciseName& name, std::size_t most) const
    {
        const QStringList said = wordsOfName(name.exercise + u' ' + name.variant);
        // Whose name is said in full is meant; it is the variant that isn't known.
        const QString key = searchKey(name.exercise);
        const bool inFull =
            std::ranges::any_of(m_exercises, [&](const auto& one) { return searchKey(one.name) == key; });
        std::vector<ExerciseSuggestion> found;
        for (const KnownExercise& exercise : m_exercises) {
            if (inFull && searchKey(exercise.name) != key) continue;
            const double ofExercise = coverage(exercise.words, said);
            if (ofExercise == 0) continue;
            // Without a variant the default is meant, so its words are as good as said.
            add(found, {exercise.name, {}}, said, exercise.words + exercise.usual, ofExercise, 0);
            for (const auto& [variant, words] : exercise.variants)
                add(found, {exercise.name, variant}, said, exercise.words + words, ofExercise, coverage(words, said));
        }
        std::ranges::stable_sort(found, std::greater(), &ExerciseSuggestion::likeness);
        if (found.size() > most) found.resize(most);
        return found;
    }

private:
    struct KnownExercise {
        Id<Exercise> id;
        QString name;
        QStringList words;
        QStringList usual;  // of the default variant
        std::vector<std::pair<QString, QStringList>> variants = {};
    };

    static void add(std::vector<ExerciseSuggestion>& found, ExerciseName name, const QStringList& said,
                    const QStringList& here, double ofExercise, double ofVariant)
    {
        const double likeness =
            0.55 * coverage(said, here) + 0.42 * ofExercise + 0.02 * ofVariant + (name.variant.isEmpty() ? 0.03 : 0.0);
        found.push_back({std::move(name), std::min(1.0, likeness)});
    }

    std::vector<KnownExercise> m_exercises;
};

bool hasVariant(const Library& library, Id<Exercise> exercise, const QString& key)
{
    return key.isEmpty() || std::ranges::any_of(library.variants, [&](const Row<Variant>& row) {
               return row.value.exercise == exercise && searchKey(row.value.name) == key;
           });
}

bool isKnown(const Library& library, const ExerciseName& name)
{
    const QString key = searchKey(name.exercise);
    return std::ranges::any_of(library.exercises, [&](const Row<Exercise>& row) {
        return searchKey(row.value.name) == key && hasVariant(library, row.id, searchKey(name.variant));
    });
}

void unknownFirst(std::vector<NameInFile>& names)
{
    std::ranges::stable_sort(names, [](const NameInFile& a, const NameInFile& b) {
        return std::pair(a.known, -a.rows) < std::pair(b.known, -b.rows);
    });
}

bool isClear(const std::vector<ExerciseSuggestion>& suggestions)
{
    if (suggestions.empty() || suggestions[0].likeness < kClear) return false;
    return std::ranges::none_of(suggestions, [&](const ExerciseSuggestion& other) {
        return other.name.exercise != suggestions[0].name.exercise
               && other.likeness > suggestions[0].likeness - kClearLead;
    });
}

}  // namespace

std::vector<ExerciseSuggestion> likeExercises(const Library& library, const ExerciseName& name, std::size_t most)
{
    return LikenessRanker(library).rank(name, most);
}

std::vector<NameInFile> namesInFile(const Library& library, const std::map<ExerciseName, int>& names)
{
    constexpr std::size_t mostSuggestions = 8;
    const LikenessRanker ranker(library);
    std::vector<NameInFile> found;
    for (const auto& [name, rows] : names) {
        NameInFile one{name, rows, isKnown(library, name), {}, false};
        if (!one.known) one.suggestions = ranker.rank(name, mostSuggestions);
        one.clear = isClear(one.suggestions);
        found.push_back(std::move(one));
    }
    unknownFirst(found);
    return found;
}

std::vector<NameInFile> athletesInFile(const QStringList& roster, const std::map<QString, int>& names)
{
    constexpr double alike = 0.7;
    std::vector<NameInFile> found;
    for (const auto& [name, rows] : names) {
        NameInFile one{{name, {}}, rows, roster.contains(name), {}, false};
        const QString key = searchKey(name);
        for (const QString& other : one.known ? QStringList() : roster) {
            const QString otherKey = searchKey(other);
            const auto longer = static_cast<double>(std::max<qsizetype>(1, std::max(key.size(), otherKey.size())));
            const double likeness = 1.0 - editDistance(key, otherKey) / longer;
            if (likeness >= alike) one.suggestions.push_back({{other, {}}, likeness});
            one.clear = one.clear || key == otherKey;
        }
        std::ranges::stable_sort(one.suggestions, std::greater(), &ExerciseSuggestion::likeness);
        found.push_back(std::move(one));
    }
    unknownFirst(found);
    return found;
}

}  // namespace steelyard
