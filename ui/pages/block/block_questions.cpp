#include "ui/pages/block/block_deeds.h"

#include "core/base/text.h"
#include "core/keying/slot_notation.h"
#include "core/planning/progression_registry.h"
#include "ui/format/format.h"
#include "ui/pages/block/block_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <algorithm>
#include <cstdlib>

namespace steelyard {
namespace {

struct BlockQuestionText {
    Q_DECLARE_TR_FUNCTIONS(BlockQuestionText)
};

tl::unexpected<Error> again(const QString& what)
{
    return fail(ErrorCode::Invalid, what);
}

std::optional<Decimal> readReserve(const QString& text)
{
    return Decimal::parse(QStringView(text.trimmed().replace(u',', u'.')));
}

Asking about(const QString& question, const QString& text, const QString& deed, const PlanChoice& choice,
             const PlanPlaces& places, std::function<Result<Block>(const QString&)> answer)
{
    return {question, text, editWords(deed, choice.shown.block(), places, choice.shown.library()), std::move(answer)};
}

const Slot* firstChosen(const PlanChoice& choice)
{
    return choice.chosen.empty() ? nullptr : slotAt(choice.shown.block(), choice.chosen.front());
}

std::optional<Asking> askBand(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places();
    return about(BlockQuestionText::tr("Rep band"), writeBand(firstChosen(choice)->band),
                 BlockQuestionText::tr("change the rep band of %1"), choice, places,
                 [block = choice.shown.block(), places](const QString& typed) -> Result<Block> {
                     const auto band = readBand(typed);
                     if (!band) return again(BlockQuestionText::tr("Type it as 8-12, or 10 for one number."));
                     return setBand(block, places, *band);
                 });
}

std::optional<Asking> askReserve(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places(true);
    const auto& now = firstChosen(choice)->plannedRir;
    return about(BlockQuestionText::tr("Repetitions in reserve; nothing leaves them open"),
                 now ? now->toString() : QString(), BlockQuestionText::tr("change the reserve of %1"), choice, places,
                 [block = choice.shown.block(), places](const QString& typed) -> Result<Block> {
                     if (typed.trimmed().isEmpty()) return setReserve(block, places, std::nullopt);
                     const auto reserve = readReserve(typed);
                     if (!reserve) return again(BlockQuestionText::tr("Type a number, such as 2 or 1.5."));
                     return setReserve(block, places, reserve);
                 });
}

std::optional<Asking> askLoad(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places();
    const auto& now = firstChosen(choice)->load;
    const MassUnit unit = choice.shown.unit();
    return about(BlockQuestionText::tr("Load, kept as it is; nothing leaves it to the record"),
                 now ? writePlainLoad(*now, unit) : QString(), BlockQuestionText::tr("change the load of %1"), choice,
                 places,
                 [block = choice.shown.block(), places, unit,
                  like = *firstChosen(choice)](const QString& typed) -> Result<Block> {
                     const auto reading = readDose(typed, like, unit);
                     const bool isLoad = reading && (typed.trimmed().isEmpty() || reading->load);
                     if (!isLoad) return again(BlockQuestionText::tr("Type a load, such as 42.5 or 95lb."));
                     return setLoad(block, places, reading->load);
                 });
}

std::optional<Asking> askRest(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places();
    const auto& now = firstChosen(choice)->restSeconds;
    return about(BlockQuestionText::tr("Rest after a set in seconds; nothing leaves it as usual"),
                 now ? QString::number(*now) : QString(), BlockQuestionText::tr("change the rest of %1"), choice,
                 places, [block = choice.shown.block(), places](const QString& typed) -> Result<Block> {
                     const QString clean = typed.trimmed();
                     if (clean.isEmpty()) return setRest(block, places, std::nullopt);
                     const auto rest = readRest(clean.back().isDigit() ? clean + u's' : clean);
                     if (!rest) return again(BlockQuestionText::tr("Type seconds, such as 120, or 2min."));
                     return setRest(block, places, rest);
                 });
}

std::optional<Asking> askNote(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places();
    return about(
        BlockQuestionText::tr("Note, as it stands on the sheet"), firstChosen(choice)->note,
        BlockQuestionText::tr("change the note of %1"), choice, places,
        [block = choice.shown.block(), places](const QString& typed) { return setNote(block, places, typed); });
}

// By its number among those that are offered, or by the beginning of its title. Empty: the usual one, which slots don't name.
std::optional<QString> readProgression(const QString& typed)
{
    const auto rules = progressionRules();
    const QString key = searchKey(typed);
    if (key.isEmpty()) return QString();
    bool isNumber = false;
    const auto number = static_cast<std::size_t>(key.toUInt(&isNumber));
    const ProgressionRule* found = isNumber && number >= 1 && number <= rules.size() ? rules[number - 1] : nullptr;
    for (const ProgressionRule* rule : rules) {
        if (isNumber || !searchKey(rule->title()).startsWith(key)) continue;
        if (found) return std::nullopt;
        found = rule;
    }
    if (!found) return std::nullopt;
    return found == rules.front() ? QString() : found->id();
}

QString progressionChoices()
{
    QStringList choices;
    for (const ProgressionRule* rule : progressionRules())
        choices << QStringLiteral("%1 %2").arg(QString::number(choices.size() + 1), rule->title());
    return choices.join(QStringLiteral(" · "));
}

std::optional<Asking> askProgression(const PlanChoice& choice)
{
    const PlanPlaces places = choice.places();
    Asking asking =
        about(BlockQuestionText::tr("How it goes on: a number or a name; nothing takes the usual way"),
              progressionFor(firstChosen(choice)->progression).title(), BlockQuestionText::tr("how %1 goes on"), choice,
              places, [block = choice.shown.block(), places](const QString& typed) -> Result<Block> {
                  const auto rule = readProgression(typed);
                  if (!rule) return again(progressionChoices());
                  return setProgression(block, places, *rule);
              });
    asking.help = progressionChoices();
    return asking;
}

std::optional<Asking> askAboutSlots(const QString& action, const PlanChoice& choice)
{
    if (!firstChosen(choice)) return std::nullopt;
    if (action == QLatin1StringView("block.band")) return askBand(choice);
    if (action == QLatin1StringView("block.reserve")) return askReserve(choice);
    if (action == QLatin1StringView("block.load")) return askLoad(choice);
    if (action == QLatin1StringView("block.rest")) return askRest(choice);
    if (action == QLatin1StringView("block.note")) return askNote(choice);
    if (action == QLatin1StringView("block.progression")) return askProgression(choice);
    return std::nullopt;
}

// The first week that can be changed whole, not before the one in sight.
std::size_t firstWholeWeek(const BlockShown& shown)
{
    for (std::size_t week = shown.weekIndex; week < shown.block().weeks.size(); ++week)
        if (std::ranges::none_of(shown.block().weeks[week].days,
                                 [&](const PlannedDay& day) { return day.date < shown.firstOpen; }))
            return week;
    return shown.block().weeks.size();
}

Asking askRamp(const PlanChoice& choice)
{
    return {
        BlockQuestionText::tr("Reserve of week %1, and of the last normal week").arg(firstWholeWeek(choice.shown) + 1),
        QStringLiteral("3-1"), BlockQuestionText::tr("reserve over the weeks"),
        [block = choice.shown.block(), week = firstWholeWeek(choice.shown)](const QString& typed) -> Result<Block> {
            const QStringList ends = QString(typed).replace(u'–', u'-').split(u'-');
            const auto first = readReserve(ends.value(0));
            const auto last = readReserve(ends.value(1));
            if (!first || !last || ends.size() != 2)
                return again(BlockQuestionText::tr("Type it as 3-1: three in reserve at first, one at last."));
            return rampReserve(block, week, *first, *last);
        }};
}

Asking askWeekdays(const PlanChoice& choice)
{
    const std::size_t week = firstWholeWeek(choice.shown);
    return {BlockQuestionText::tr("Training days from week %1 on").arg(week + 1),
            weekdaysText(weekdaysOf(choice.shown.week())), BlockQuestionText::tr("other training days"),
            [block = choice.shown.block(), week](const QString& typed) -> Result<Block> {
                const auto weekdays = readWeekdays(typed);
                if (!weekdays)
                    return again(BlockQuestionText::tr("Type days such as %1.").arg(weekdaysText({1, 3, 5})));
                return setWeekdays(block, *weekdays, week);
            }};
}

Asking askStart(const PlanChoice& choice)
{
    return {BlockQuestionText::tr("First day of the block"), format::date(choice.shown.block().start),
            BlockQuestionText::tr("another start"),
            [block = choice.shown.block()](const QString& typed) -> Result<Block> {
                const auto start = readDate(typed);
                if (!start)
                    return again(BlockQuestionText::tr("Type a date such as %1.").arg(format::date(block.start)));
                return setStart(block, *start);
            }};
}

Asking askShift(const PlanChoice& choice)
{
    const QDate from = std::max(choice.shown.firstOpen, firstDayOf(choice.shown.block(), choice.shown.weekIndex));
    return {BlockQuestionText::tr("Sessions from %1 on move by how many days (back: −)").arg(format::date(from)),
            QStringLiteral("7"), BlockQuestionText::tr("move the sessions on"),
            [block = choice.shown.block(), from](const QString& typed) -> Result<Block> {
                bool isNumber = false;
                const int days = QString(typed).replace(QChar(0x2212), u'-').trimmed().toInt(&isNumber);
                if (!isNumber || days == 0 || std::abs(days) > 365)
                    return again(BlockQuestionText::tr("Type a number of days: 7, or -1."));
                return shiftDays(block, from, days);
            }};
}

Asking askDaysOff(const PlanChoice& choice)
{
    return {BlockQuestionText::tr("Days off"), daysOffText(choice.shown.block().daysOff),
            BlockQuestionText::tr("days off"),
            [block = choice.shown.block(), open = choice.shown.firstOpen](const QString& typed) -> Result<Block> {
                STEELYARD_TRY(auto daysOff, readDaysOff(typed));
                return setDaysOff(block, std::move(daysOff), open);
            }};
}

Asking askName(const PlanChoice& choice)
{
    return {BlockQuestionText::tr("Name of the block"), choice.shown.block().name,
            BlockQuestionText::tr("rename the block"),
            [block = choice.shown.block()](const QString& typed) -> Result<Block> {
                Block named = block;
                named.name = cleanName(typed);
                if (named.name.isEmpty()) return again(BlockQuestionText::tr("A name is needed."));
                return named;
            }};
}

Asking askMinutes(const PlanChoice& choice)
{
    const auto now = choice.shown.totals.minutesWanted;
    return {BlockQuestionText::tr("Minutes a day; nothing takes the lifter's own"),
            now ? QString::number(*now) : QString(), BlockQuestionText::tr("minutes a day"),
            [block = choice.shown.block()](const QString& typed) -> Result<Block> {
                Block changed = block;
                bool isNumber = false;
                changed.minutesPerDay = typed.trimmed().toInt(&isNumber);
                if (typed.trimmed().isEmpty())
                    changed.minutesPerDay.reset();
                else if (!isNumber)
                    return again(BlockQuestionText::tr("Type a number of minutes."));
                const Problems problems = validate(changed);
                if (!problems.empty()) return again(problems.front().text);
                return changed;
            }};
}

Asking askAims(const PlanChoice& choice)
{
    const Block& now = choice.shown.block();
    const auto& aims = now.aims.empty() ? choice.shown.log().athlete.value.aims : now.aims;
    return {BlockQuestionText::tr("Sets wanted a week in this block; a muscle that isn't named keeps the lifter's"),
            aimsText(aims, choice.shown.library()), BlockQuestionText::tr("bands of weekly sets"),
            [block = now, record = choice.shown.record](const QString& typed) -> Result<Block> {
                Block changed = block;
                STEELYARD_TRY(changed.aims, readAims(typed, record->library));
                const Problems problems = validate(changed);
                if (!problems.empty()) return again(problems.front().text);
                return changed;
            }};
}

}  // namespace

std::optional<Asking> askingOf(const QString& action, const PlanChoice& choice)
{
    if (auto asking = askAboutSlots(action, choice)) return asking;
    if (action == QLatin1StringView("block.ramp")) return askRamp(choice);
    if (action == QLatin1StringView("block.weekdays")) return askWeekdays(choice);
    if (action == QLatin1StringView("block.start")) return askStart(choice);
    if (action == QLatin1StringView("block.shift")) return askShift(choice);
    if (action == QLatin1StringView("block.daysOff")) return askDaysOff(choice);
    if (action == QLatin1StringView("block.rename")) return askName(choice);
    if (action == QLatin1StringView("block.aims")) return askAims(choice);
    if (action == QLatin1StringView("block.minutes")) return askMinutes(choice);
    return std::nullopt;
}

}  // namespace steelyard
