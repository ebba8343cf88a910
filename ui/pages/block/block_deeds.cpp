#include "ui/pages/block/block_deeds.h"

#include "ui/pages/block/block_words.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <cstdlib>

namespace steelyard {
namespace {

struct BlockDeedText {
    Q_DECLARE_TR_FUNCTIONS(BlockDeedText)
};

QString about(const QString& deed, const PlanChoice& choice, const PlanPlaces& places)
{
    return editWords(deed, choice.shown.block(), places, choice.shown.library());
}

PlanPlaces openPlaces(const PlanChoice& choice, PlanPlaces places)
{
    std::erase_if(places,
                  [&](const PlanPlace& place) { return dateOf(choice.shown.block(), place) < choice.shown.firstOpen; });
    return places;
}

QString weekLabel(const QString& deed, const PlanChoice& choice)
{
    return deed.arg(choice.shown.weekIndex + 1);
}

// To the training day before or after; at the end of the week a day further.
int daysToNeighbour(const PlanChoice& choice, int direction)
{
    const QDate from = choice.cursor.date;
    std::optional<QDate> nearest;
    for (const PlannedDay& day : choice.shown.week().days) {
        if (direction > 0 ? day.date <= from : day.date >= from) continue;
        if (!nearest || std::abs(from.daysTo(day.date)) < std::abs(from.daysTo(*nearest))) nearest = day.date;
    }
    return nearest ? static_cast<int>(from.daysTo(*nearest)) : direction;
}

Deed toggleKind(WeekKind kind, const PlanChoice& choice)
{
    const bool isSo = choice.shown.week().kind == kind;
    const QString deed = isSo                       ? BlockDeedText::tr("make week %1 a normal one")
                         : kind == WeekKind::Deload ? BlockDeedText::tr("make week %1 an easier one")
                                                    : BlockDeedText::tr("make week %1 a test week");
    return {setWeekKind(choice.shown.block(), choice.shown.weekIndex, isSo ? WeekKind::Normal : kind),
            weekLabel(deed, choice)};
}

Deed toggleLock(const PlanChoice& choice)
{
    const Block& block = choice.shown.block();
    const PlanPlaces places = choice.places();
    const bool locked = std::ranges::all_of(places, [&](const PlanPlace& at) { return slotAt(block, at)->loadLocked; });
    return {setLoadLocked(block, places, !locked),
            about(locked ? BlockDeedText::tr("leave the load of %1 to the record")
                         : BlockDeedText::tr("keep the load of %1"),
                  choice, places)};
}

std::optional<Deed> slotDeed(const QString& action, const PlanChoice& choice)
{
    const Block& block = choice.shown.block();
    const auto is = [&](const char* name) { return action == QLatin1StringView(name); };
    if (is("block.sets.more") || is("block.sets.fewer")) {
        const bool more = is("block.sets.more");
        const PlanPlaces places = choice.places(true);
        return Deed{changeSets(block, places, more ? 1 : -1),
                    about(more ? BlockDeedText::tr("a set more on %1") : BlockDeedText::tr("a set less on %1"), choice,
                          places)};
    }
    const PlanPlaces places = choice.places();
    if (is("block.remove"))
        return Deed{removeSlots(block, places), about(BlockDeedText::tr("take out %1"), choice, places)};
    if (is("block.superset"))
        return Deed{toggleSuperset(block, places), about(BlockDeedText::tr("superset of %1"), choice, places)};
    if (is("block.lock")) return toggleLock(choice);
    if (is("block.up") || is("block.down"))
        return Deed{stepSlots(block, places, is("block.up") ? -1 : 1),
                    about(BlockDeedText::tr("move %1"), choice, places)};
    if (is("block.earlier") || is("block.later"))
        return carryDeed(daysToNeighbour(choice, is("block.later") ? 1 : -1), std::nullopt, false, choice);
    return std::nullopt;
}

}  // namespace

PlanPlaces PlanChoice::places(bool normalOnly) const
{
    return openPlaces(*this, withLaterWeeks(shown.block(), openPlaces(*this, chosen), scope, normalOnly));
}

std::optional<Deed> deedOf(const QString& action, const PlanChoice& choice)
{
    if (auto deed = slotDeed(action, choice)) return deed;
    const Block& block = choice.shown.block();
    const std::size_t week = choice.shown.weekIndex;
    const auto is = [&](const char* name) { return action == QLatin1StringView(name); };
    if (is("block.week.duplicate"))
        return Deed{duplicateWeek(block, week), weekLabel(BlockDeedText::tr("duplicate week %1"), choice)};
    if (is("block.week.insert"))
        return Deed{insertWeek(block, week + 1), weekLabel(BlockDeedText::tr("an empty week after week %1"), choice)};
    if (is("block.week.remove"))
        return Deed{removeWeek(block, week), weekLabel(BlockDeedText::tr("take out week %1"), choice)};
    if (is("block.week.easier")) return toggleKind(WeekKind::Deload, choice);
    if (is("block.week.test")) return toggleKind(WeekKind::Test, choice);
    return std::nullopt;
}

bool isAboutSlots(const QString& action)
{
    static const QStringList actions{
        QStringLiteral("block.sets.more"), QStringLiteral("block.sets.fewer"),  QStringLiteral("block.remove"),
        QStringLiteral("block.superset"),  QStringLiteral("block.lock"),        QStringLiteral("block.up"),
        QStringLiteral("block.down"),      QStringLiteral("block.earlier"),     QStringLiteral("block.later"),
        QStringLiteral("block.edit"),      QStringLiteral("block.band"),        QStringLiteral("block.reserve"),
        QStringLiteral("block.load"),      QStringLiteral("block.rest"),        QStringLiteral("block.cut"),
        QStringLiteral("block.copy"),      QStringLiteral("block.replace"),     QStringLiteral("block.replaceAll"),
        QStringLiteral("block.note"),      QStringLiteral("block.progression"),
    };
    return actions.contains(action);
}

Slot newSlot(const LiftLine& lift, const BlockShown& shown)
{
    Slot slot{.variant = lift.variant, .grip = lift.grip, .standard = lift.standard};
    if (const auto* variant = shown.library().find(lift.variant)) slot.band = variant->value.band;
    for (const PlanPlace& place : placesOfWeek(shown.block(), shown.weekIndex))
        if (const auto& reserve = slotAt(shown.block(), place)->plannedRir) {
            slot.plannedRir = reserve;
            break;
        }
    return slot;
}

Deed addDeed(const std::vector<Slot>& coming, const PlanChoice& choice)
{
    const Block& block = choice.shown.block();
    std::optional<std::size_t> before;
    if (choice.cursor.slot) before = choice.cursor.slot->slot + 1;
    const bool weekly = choice.scope == WeekScope::ThisAndLater;
    auto after = weekly ? addSlotsWeekly(block, coming, choice.cursor.date, before)
                        : addSlots(block, coming, choice.cursor.date, before);
    const QString name = coming.size() == 1 ? exerciseWords(coming.front(), choice.shown.library())
                                            : BlockDeedText::tr("%n lift(s)", nullptr, static_cast<int>(coming.size()));
    return {std::move(after), BlockDeedText::tr("put in %1").arg(name)};
}

Deed replaceDeed(const LiftLine& to, bool everywhere, const PlanChoice& choice)
{
    const Block& block = choice.shown.block();
    PlanPlaces places = choice.places();
    if (everywhere && !places.empty())
        places = openPlaces(choice, placesOf(block, liftOf(block, *slotAt(block, places.front()))));
    return {replaceLift(block, places, to), about(BlockDeedText::tr("another lift for %1"), choice, places)};
}

Deed carryDeed(int days, std::optional<std::size_t> before, bool copy, const PlanChoice& choice)
{
    const Block& block = choice.shown.block();
    const PlanPlaces places = choice.places();
    if (copy) return {copySlots(block, places, days, before), about(BlockDeedText::tr("copy %1"), choice, places)};
    return {moveSlots(block, places, days, before), about(BlockDeedText::tr("move %1"), choice, places)};
}

Deed doseDeed(const PlanPlace& place, const Slot& typed, const PlanChoice& choice)
{
    PlanChoice one = choice;
    one.chosen = {place};
    const PlanPlaces places = one.places(true);
    return {setDose(choice.shown.block(), places, typed),
            about(BlockDeedText::tr("change the dose of %1"), one, places)};
}

}  // namespace steelyard
