#include "ui/pages/block/block_words.h"

#include "core/base/text.h"
#include "core/keying/slot_notation.h"
#include "core/planning/comparable.h"
#include "core/planning/progression_registry.h"
#include "ui/format/format.h"
#include "ui/format/plan_words.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QRegularExpression>

#include <algorithm>
#include <set>

namespace steelyard {
namespace {

struct BlockPageText {
    Q_DECLARE_TR_FUNCTIONS(BlockPageText)
};

const QString kBetween = QStringLiteral(" · ");

QString repsWords(const std::vector<LoggedSet>& sets)
{
    QStringList parts;
    std::optional<Load> load;
    for (const LoggedSet& logged : sets) {
        if (logged.set.kind == SetKind::WarmUp) continue;
        const QString reps = QString::number(logged.set.countedReps());
        parts << (load && *load == logged.set.load ? reps
                                                   : format::load(logged.set.load) + QStringLiteral(": ") + reps);
        load = logged.set.load;
    }
    return parts.join(QStringLiteral(", "));
}

std::optional<int> weekdayOf(const QString& typed)
{
    bool isNumber = false;
    const int number = typed.toInt(&isNumber);
    if (isNumber) return number >= 1 && number <= kDaysOfPlanWeek ? std::optional(number) : std::nullopt;
    const QString key = searchKey(typed);
    std::optional<int> found;
    for (int day = 1; day <= kDaysOfPlanWeek; ++day) {
        if (!searchKey(QLocale().dayName(day)).startsWith(key)) continue;
        if (found) return std::nullopt;  // "t" may be Tuesday or Thursday
        found = day;
    }
    return found;
}

bool isUntil(const QString& word)
{
    return word == QStringLiteral("–") || word == QStringLiteral("-") || word == BlockPageText::tr("to");
}

// The most words at the beginning that are a date together; they are taken away.
std::optional<QDate> takeDate(QStringList& words)
{
    constexpr qsizetype kMostWords = 4;
    for (qsizetype count = std::min(kMostWords, words.size()); count > 0; --count)
        if (const auto date = readDate(words.mid(0, count).join(u' '))) {
            words = words.mid(count);
            return date;
        }
    return std::nullopt;
}

// The one muscle whose name is that or begins so.
std::optional<Id<Muscle>> muscleNamed(const QString& typed, const Library& library)
{
    const QString key = searchKey(typed);
    std::optional<Id<Muscle>> found;
    for (const Row<Muscle>& muscle : library.muscles) {
        const QString name = searchKey(muscle.value.name);
        if (name == key) return muscle.id;
        if (key.isEmpty() || !name.startsWith(key)) continue;
        if (found) return std::nullopt;
        found = muscle.id;
    }
    return found;
}

}  // namespace

QString doseWords(const Slot& slot)
{
    QStringList parts{QStringLiteral("%1 × %2").arg(QString::number(slot.sets), slot.band.low == slot.band.high
                                                                                    ? QString::number(slot.band.low)
                                                                                    : format::band(slot.band))};
    if (slot.plannedRir) parts << BlockPageText::tr("RIR %1").arg(format::decimal(*slot.plannedRir));
    if (slot.load)
        parts << (slot.loadLocked ? BlockPageText::tr("%1 kept").arg(format::load(*slot.load))
                                  : format::load(*slot.load));
    if (slot.restSeconds) parts << BlockPageText::tr("%1 s").arg(*slot.restSeconds);
    return parts.join(kBetween);
}

QString exerciseWords(const Slot& slot, const Library& library)
{
    const auto* variant = library.find(slot.variant);
    const auto* exercise = variant ? library.find(variant->value.exercise) : nullptr;
    return exercise ? exercise->value.name : BlockPageText::tr("a lift that the library lacks");
}

QString wayWords(const Slot& slot, const Library& library)
{
    QStringList parts;
    if (const auto* variant = library.find(slot.variant)) parts << variant->value.name;
    if (const auto* grip = library.find(slot.grip)) parts << grip->value.name;
    parts.removeAll(asUsualName());
    return parts.join(kBetween);
}

QString doneWords(const Slot& slot, QDate date, const AthleteLog& log)
{
    const LineRecord* line = lineOf(log, slot);
    if (!line) return {};
    const auto found = std::ranges::find(line->exposures, date, &Exposure::date);
    return found == line->exposures.end() ? QString() : repsWords(found->sets);
}

QString progressionTitle(const Slot& slot)
{
    return progressionFor(slot.progression).title();
}

QString otherProgressionWords(const Slot& slot)
{
    const bool isUsual = &progressionFor(slot.progression) == progressionRules().front();
    return isUsual ? QString() : progressionTitle(slot);
}

QString weekKindWord(WeekKind kind)
{
    switch (kind) {
    case WeekKind::Normal:
        return {};
    case WeekKind::Deload:
        return BlockPageText::tr("easier week");
    case WeekKind::Test:
        return BlockPageText::tr("test week");
    }
    return {};
}

QString weekWords(const Block& block, std::size_t week)
{
    const QDate first = firstDayOf(block, week);
    const QString head = BlockPageText::tr("Week %1 of %2, %3 to %4")
                             .arg(QString::number(week + 1), QString::number(block.weeks.size()),
                                  format::dayMonth(first), format::dayMonth(first.addDays(kDaysOfPlanWeek - 1)));
    const QString kind = weekKindWord(block.weeks[week].kind);
    return kind.isEmpty() ? head : head + QStringLiteral(", ") + kind;
}

QString blockWords(const Block& block)
{
    return BlockPageText::tr("%1, from %2, %n week(s)", nullptr, static_cast<int>(block.weeks.size()))
        .arg(block.name, format::date(block.start));
}

QString limitWord(LimitKind kind)
{
    switch (kind) {
    case LimitKind::FewSets:
        return BlockPageText::tr("too few");
    case LimitKind::ManySets:
        return BlockPageText::tr("too many");
    case LimitKind::LongDay:
        return BlockPageText::tr("too long");
    case LimitKind::BackLoading:
        return BlockPageText::tr("back");
    case LimitKind::ShortSpacing:
        return BlockPageText::tr("too soon");
    case LimitKind::JointComplaint:
        return BlockPageText::tr("joint");
    case LimitKind::DayOff:
        return BlockPageText::tr("day off");
    case LimitKind::SameLiftTwice:
        return BlockPageText::tr("twice");
    }
    return {};
}

QString limitWords(const BrokenLimit& limit, const Block& block, const Library& library)
{
    if (!limit.day) return limit.sentence;
    const PlanPlace place{limit.week, *limit.day, limit.slot.value_or(0)};
    QStringList where{format::shortDay(dateOf(block, place))};
    if (const Slot* slot = limit.slot ? slotAt(block, place) : nullptr) where << exerciseWords(*slot, library);
    return where.join(QStringLiteral(", ")) + QStringLiteral(": ") + limit.sentence;
}

QString editWords(const QString& deed, const Block& block, const PlanPlaces& places, const Library& library)
{
    QStringList names;
    std::set<std::size_t> weeks;
    for (const PlanPlace& place : places)
        if (const Slot* slot = slotAt(block, place)) {
            weeks.insert(place.week);
            if (const QString name = exerciseWords(*slot, library); !names.contains(name)) names << name;
        }
    const QString about =
        names.size() == 1 ? names.front() : BlockPageText::tr("%n lift(s)", nullptr, static_cast<int>(names.size()));
    QString said = deed.arg(about);
    if (weeks.size() < 2) return said;
    return BlockPageText::tr("%1, %n week(s)", nullptr, static_cast<int>(weeks.size())).arg(said);
}

std::optional<QDate> readDate(const QString& text)
{
    const QString clean = text.trimmed();
    for (const QString& pattern : {format::datePattern(), QStringLiteral("yyyy-MM-dd")})
        if (const QDate date = QLocale().toDate(clean, pattern); date.isValid()) return date;
    return std::nullopt;
}

Result<std::vector<DaysOff>> readDaysOff(const QString& text)
{
    std::vector<DaysOff> all;
    for (const QString& part : text.split(u';')) {
        QStringList words = part.split(u' ', Qt::SkipEmptyParts);
        if (words.isEmpty()) continue;
        const auto first = takeDate(words);
        const bool goesOn = !words.isEmpty() && isUntil(words.front());
        if (goesOn) words.removeFirst();
        const auto last = goesOn ? takeDate(words) : first;
        if (!first || !last)
            return fail(ErrorCode::Invalid,
                        BlockPageText::tr("Type days off as %1 – %2 holiday; several with a semicolon between.")
                            .arg(format::date(QDate(2027, 12, 24)), format::date(QDate(2027, 12, 31))));
        all.push_back({*first, *last, words.join(u' ')});
    }
    return all;
}

QString daysOffText(const std::vector<DaysOff>& daysOff)
{
    QStringList parts;
    for (const DaysOff& off : daysOff) {
        QString part = format::date(off.first);
        if (off.last != off.first) part += QStringLiteral(" – ") + format::date(off.last);
        if (!off.reason.isEmpty()) part += u' ' + off.reason;
        parts << part;
    }
    return parts.join(QStringLiteral("; "));
}

Result<std::vector<MuscleAim>> readAims(const QString& text, const Library& library)
{
    std::vector<MuscleAim> aims;
    for (const QString& part : text.split(u';')) {
        QStringList words = part.split(u' ', Qt::SkipEmptyParts);
        if (words.isEmpty()) continue;
        const auto band = readBand(words.takeLast());
        const auto muscle = muscleNamed(words.join(u' '), library);
        if (!band || !muscle)
            return fail(
                ErrorCode::Invalid,
                BlockPageText::tr("“%1”: type a muscle and its sets, such as %2 8-16; several with a semicolon "
                                  "between.")
                    .arg(part.trimmed(), library.muscles.empty() ? QString() : library.muscles.front().value.name));
        aims.push_back({*muscle, band->low, band->high});
    }
    return aims;
}

QString aimsText(const std::vector<MuscleAim>& aims, const Library& library)
{
    QStringList parts;
    for (const MuscleAim& aim : aims)
        if (const auto* muscle = library.find(aim.muscle))
            parts << QStringLiteral("%1 %2-%3").arg(muscle->value.name).arg(aim.weeklySetsLow).arg(aim.weeklySetsHigh);
    return parts.join(QStringLiteral("; "));
}

std::optional<std::vector<int>> readWeekdays(const QString& text)
{
    static const QRegularExpression gap(QStringLiteral("[\\s,]+"));
    std::set<int> days;
    for (const QString& word : text.split(gap, Qt::SkipEmptyParts)) {
        const auto day = weekdayOf(word);
        if (!day) return std::nullopt;
        days.insert(*day);
    }
    if (days.empty()) return std::nullopt;
    return std::vector<int>(days.begin(), days.end());
}

QString weekdaysText(const std::vector<int>& weekdays)
{
    QStringList names;
    for (const int day : weekdays) names << QLocale().dayName(day, QLocale::ShortFormat);
    return names.join(u' ');
}

std::vector<int> weekdaysOf(const PlannedWeek& week)
{
    std::vector<int> days;
    days.reserve(week.days.size());
    for (const PlannedDay& day : week.days) days.push_back(day.date.dayOfWeek());
    return days;
}

}  // namespace steelyard
