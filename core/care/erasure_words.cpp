#include "core/care/erasure_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ErasureWordsText {
    Q_DECLARE_TR_FUNCTIONS(ErasureWordsText)
};

struct TableWord {
    std::string_view table;
    const char* word;  // null: a part of something that is named already
};

// In the order in which they are said.
constexpr auto kTableWords = std::to_array<TableWord>({
    {"athlete", QT_TRANSLATE_NOOP("ErasureWordsText", "Profile")},
    {"session", QT_TRANSLATE_NOOP("ErasureWordsText", "Sessions")},
    {"set_entry", QT_TRANSLATE_NOOP("ErasureWordsText", "Sets")},
    {"set_replaced", QT_TRANSLATE_NOOP("ErasureWordsText", "Former values of sets")},
    {"repetition", QT_TRANSLATE_NOOP("ErasureWordsText", "Repetitions one by one")},
    {"exercise_rating", QT_TRANSLATE_NOOP("ErasureWordsText", "Ratings of exercises, with discomfort")},
    {"lift_line", QT_TRANSLATE_NOOP("ErasureWordsText", "Lift lines")},
    {"rep_standard", QT_TRANSLATE_NOOP("ErasureWordsText", "Rep standards agreed with them")},
    {"block", QT_TRANSLATE_NOOP("ErasureWordsText", "Blocks")},
    {"trial", QT_TRANSLATE_NOOP("ErasureWordsText", "Trials")},
    {"decision", QT_TRANSLATE_NOOP("ErasureWordsText", "Decisions")},
    {"body_mass", QT_TRANSLATE_NOOP("ErasureWordsText", "Entries of body mass")},
    {"measurement", QT_TRANSLATE_NOOP("ErasureWordsText", "Tape measurements")},
    {"athlete_tag", QT_TRANSLATE_NOOP("ErasureWordsText", "Tags")},
    {"athlete_aim", QT_TRANSLATE_NOOP("ErasureWordsText", "Aims")},
    {"health_consent", QT_TRANSLATE_NOOP("ErasureWordsText", "Records of consent")},
    {"block_week", nullptr},
    {"block_day", nullptr},
    {"block_aim", nullptr},
    {"block_days_off", nullptr},
    {"slot", QT_TRANSLATE_NOOP("ErasureWordsText", "Planned exercises")},
    {"trial_arm", nullptr},
    {"trial_outcome", nullptr},
    {"trial_day", nullptr},
    {"trial_look", nullptr},
});

struct PlaceWord {
    std::string_view table;
    const char* word;
};

constexpr auto kPlaceWords = std::to_array<PlaceWord>({
    {"gym", QT_TRANSLATE_NOOP("ErasureWordsText", "a gym")},
    {"gym_bar", QT_TRANSLATE_NOOP("ErasureWordsText", "a gym's bar")},
    {"gym_run", QT_TRANSLATE_NOOP("ErasureWordsText", "a gym's weights")},
    {"block", QT_TRANSLATE_NOOP("ErasureWordsText", "another block or a template")},
    {"block_day", QT_TRANSLATE_NOOP("ErasureWordsText", "a day of another block or template")},
    {"slot", QT_TRANSLATE_NOOP("ErasureWordsText", "a note in another block or template")},
    {"athlete", QT_TRANSLATE_NOOP("ErasureWordsText", "another lifter's profile")},
    {"athlete_tag", QT_TRANSLATE_NOOP("ErasureWordsText", "another lifter's tag")},
    {"set_entry", QT_TRANSLATE_NOOP("ErasureWordsText", "a note on another lifter's set")},
    {"set_replaced", QT_TRANSLATE_NOOP("ErasureWordsText", "what another lifter's set said before")},
    {"decision", QT_TRANSLATE_NOOP("ErasureWordsText", "a decision about another lifter")},
    {"trial", QT_TRANSLATE_NOOP("ErasureWordsText", "another lifter's trial")},
    {"trial_day", QT_TRANSLATE_NOOP("ErasureWordsText", "a remark in another lifter's trial")},
    {"exercise", QT_TRANSLATE_NOOP("ErasureWordsText", "an exercise")},
    {"variant", QT_TRANSLATE_NOOP("ErasureWordsText", "a variant")},
    {"grip", QT_TRANSLATE_NOOP("ErasureWordsText", "a grip")},
    {"rep_standard", QT_TRANSLATE_NOOP("ErasureWordsText", "a rep standard")},
});

}  // namespace

QStringList erasureLines(const std::vector<RowCount>& counts)
{
    QStringList lines;
    for (const TableWord& known : kTableWords) {
        const auto count = std::ranges::find(counts, known.table, &RowCount::table);
        if (count != counts.end() && known.word)
            lines.append(QStringLiteral("%1: %2").arg(ErasureWordsText::tr(known.word), QString::number(count->rows)));
    }
    for (const RowCount& count : counts)
        if (std::ranges::find(kTableWords, count.table, &TableWord::table) == kTableWords.end())
            lines.append(
                QStringLiteral("%1: %2").arg(QString::fromStdString(count.table), QString::number(count.rows)));
    return lines;
}

QString mentionLine(const NameMention& mention)
{
    const auto known = std::ranges::find(kPlaceWords, mention.table, &PlaceWord::table);
    const QString place =
        known == kPlaceWords.end() ? QString::fromStdString(mention.table) : ErasureWordsText::tr(known->word);
    return QStringLiteral("%1: %2").arg(place, mention.text.simplified().left(120));
}

}  // namespace steelyard
