#include "core/flags/actions.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct ActionEntry {
    const char16_t* word;
    const char* label;
};

constexpr auto kActionTable = std::to_array<ActionEntry>({
    {u"hold_load", QT_TRANSLATE_NOOP("ActionText", "Keep the load")},
    {u"drop_set", QT_TRANSLATE_NOOP("ActionText", "Take out a set")},
    {u"add_set", QT_TRANSLATE_NOOP("ActionText", "Add a set")},
    {u"harder_sets", QT_TRANSLATE_NOOP("ActionText", "Go nearer to failure")},
    {u"move_day", QT_TRANSLATE_NOOP("ActionText", "Move the work to another day")},
    {u"change_band", QT_TRANSLATE_NOOP("ActionText", "Change the rep band")},
    {u"change_grip", QT_TRANSLATE_NOOP("ActionText", "Change the grip")},
    {u"change_variant", QT_TRANSLATE_NOOP("ActionText", "Change the variant")},
    {u"keep_line", QT_TRANSLATE_NOOP("ActionText", "Stay with one way of doing it")},
    {u"start_trial", QT_TRANSLATE_NOOP("ActionText", "Set up a comparison")},
    {u"deload", QT_TRANSLATE_NOOP("ActionText", "Plan an easier week")},
    {u"retest_standard", QT_TRANSLATE_NOOP("ActionText", "Go over the rep standard again")},
    {u"watch_sets", QT_TRANSLATE_NOOP("ActionText", "Watch the next sets")},
    {u"film_check", QT_TRANSLATE_NOOP("ActionText", "Ask for a film of a set")},
    {u"ask_effort", QT_TRANSLATE_NOOP("ActionText", "Ask for repetitions in reserve")},
    {u"correct_entry", QT_TRANSLATE_NOOP("ActionText", "Correct the entry")},
    {u"contact_lifter", QT_TRANSLATE_NOOP("ActionText", "Get in touch")},
    {u"refer_out", QT_TRANSLATE_NOOP("ActionText", "Send to a licensed professional")},
});

}  // namespace

QStringList actionWords()
{
    QStringList words;
    for (const ActionEntry& entry : kActionTable) words.push_back(QString::fromUtf16(entry.word));
    return words;
}

QString actionLabel(QStringView word)
{
    const auto found = std::ranges::find_if(kActionTable, [&](const ActionEntry& entry) { return word == entry.word; });
    return found == kActionTable.end() ? word.toString() : QCoreApplication::translate("ActionText", found->label);
}

}  // namespace steelyard
