// Which exercise of the library a name from elsewhere most likely means.
//
//   likeExercises(library, {u"Bankdrücken Kurzhantel"_qs, {}})[0].name == {"Bench press", "dumbbells, flat"}
//   const auto names = namesInFile(library, reader->exercises());      // which are known, and what the others are like
//
// Compared word by word, with the trade's usual words for the same thing in English, German, French and Spanish, and with room
// for mistyped letters. A proposal: only a coach knows. No failures.
#pragma once

#include "core/domain/library.h"
#include "core/exchange/logbook_mapping.h"

namespace steelyard {

struct ExerciseSuggestion {
    ExerciseName name;      // as the library has it; without a variant: its default
    double likeness = 0.0;  // 0..1
    friend bool operator==(const ExerciseSuggestion&, const ExerciseSuggestion&) = default;
};

struct NameInFile {
    ExerciseName name;
    int rows = 0;
    bool known = false;                           // the library has it
    std::vector<ExerciseSuggestion> suggestions;  // of what isn't known, likest first
    bool clear = false;                           // the first of them is much likelier than any other exercise
    friend bool operator==(const NameInFile&, const NameInFile&) = default;
};

// At most `most`, likest first; nothing that has no word in common.
[[nodiscard]] std::vector<ExerciseSuggestion> likeExercises(const Library& library, const ExerciseName& name,
                                                            std::size_t most = 8);
// Unknown ones first, and of these those in most rows.
[[nodiscard]] std::vector<NameInFile> namesInFile(const Library& library, const std::map<ExerciseName, int>& names);
// The same for people (their name stands in `exercise`): clear is only what differs in case and accents, for nobody's record
// may land in another's by likeness.
[[nodiscard]] std::vector<NameInFile> athletesInFile(const QStringList& roster, const std::map<QString, int>& names);

}  // namespace steelyard
