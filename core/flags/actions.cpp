#include "core/flags/actions.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ActionEntry {
    const char16_t* word;
    const char* label;
    const char* note = nullptr;
};

struct ActionCautionText {
    Q_DECLARE_TR_FUNCTIONS(ActionCautionText)
};

constexpr auto kActionTable = std::to_array<ActionEntry>({
    {u"hold_load", QT_TRANSLATE_NOOP("ActionText", "Keep the load"),
     QT_TRANSLATE_NOOP("ActionText", "Stay at the load of last time.")},
    {u"drop_set", QT_TRANSLATE_NOOP("ActionText", "Take out a set"),
     QT_TRANSLATE_NOOP("ActionText", "One set less than last time.")},
    {u"add_set", QT_TRANSLATE_NOOP("ActionText", "Add a set"),
     QT_TRANSLATE_NOOP("ActionText", "One set more than last time.")},
    {u"harder_sets", QT_TRANSLATE_NOOP("ActionText", "Go nearer to failure"),
     QT_TRANSLATE_NOOP("ActionText", "End each set one repetition nearer to failure than last time.")},
    {u"move_day", QT_TRANSLATE_NOOP("ActionText", "Move the work to another day"),
     QT_TRANSLATE_NOOP("ActionText", "Do it on another day of the week.")},
    {u"change_band", QT_TRANSLATE_NOOP("ActionText", "Change the rep band"),
     QT_TRANSLATE_NOOP("ActionText", "Another rep band, with a load that fits it.")},
    {u"change_grip", QT_TRANSLATE_NOOP("ActionText", "Change the grip"),
     QT_TRANSLATE_NOOP("ActionText", "Another grip. A new lift line starts: find the load afresh.")},
    {u"change_variant", QT_TRANSLATE_NOOP("ActionText", "Change the variant"),
     QT_TRANSLATE_NOOP("ActionText", "Another variant. A new lift line starts: find the load afresh.")},
    {u"keep_line", QT_TRANSLATE_NOOP("ActionText", "Stay with one way of doing it"),
     QT_TRANSLATE_NOOP("ActionText", "Stay with this variant, grip and standard.")},
    {u"start_trial", QT_TRANSLATE_NOOP("ActionText", "Set up a comparison")},
    {u"deload", QT_TRANSLATE_NOOP("ActionText", "Plan an easier week"),
     QT_TRANSLATE_NOOP("ActionText", "An easier week: half the sets, and two more in reserve.")},
    {u"retest_standard", QT_TRANSLATE_NOOP("ActionText", "Go over the rep standard again"),
     QT_TRANSLATE_NOOP("ActionText", "Go over the rep standard before the first set, and film one set to check it.")},
    {u"watch_sets", QT_TRANSLATE_NOOP("ActionText", "Watch the next sets"),
     QT_TRANSLATE_NOOP("ActionText", "Every set is watched today: write the repetitions off standard.")},
    {u"film_check", QT_TRANSLATE_NOOP("ActionText", "Ask for a film of a set"),
     QT_TRANSLATE_NOOP("ActionText", "Film one working set from the side.")},
    {u"ask_effort", QT_TRANSLATE_NOOP("ActionText", "Ask for repetitions in reserve"),
     QT_TRANSLATE_NOOP("ActionText", "Write the repetitions in reserve after every set.")},
    {u"correct_entry", QT_TRANSLATE_NOOP("ActionText", "Correct the entry")},
    {u"contact_lifter", QT_TRANSLATE_NOOP("ActionText", "Get in touch")},
    {u"refer_out", QT_TRANSLATE_NOOP("ActionText", "Send to a licensed professional")},
});

const ActionEntry* actionEntry(QStringView word)
{
    const auto found = std::ranges::find_if(kActionTable, [&](const ActionEntry& entry) { return word == entry.word; });
    return found == kActionTable.end() ? nullptr : &*found;
}

}  // namespace

QStringList actionWords()
{
    QStringList words;
    for (const ActionEntry& entry : kActionTable) words.push_back(QString::fromUtf16(entry.word));
    return words;
}

QString actionLabel(QStringView word)
{
    const ActionEntry* entry = actionEntry(word);
    return entry ? QCoreApplication::translate("ActionText", entry->label) : word.toString();
}

QString actionNote(QStringView word)
{
    const ActionEntry* entry = actionEntry(word);
    return entry && entry->note ? QCoreApplication::translate("ActionText", entry->note) : QString();
}

QString referralCaution()
{
    return ActionCautionText::tr(
        "Please let a licensed health professional look at this. Until then keep to what feels comfortable, and stop "
        "if it stays or grows.");
}

}  // namespace steelyard
