#include "core/sheets/session_sheet.h"

#include "core/analysis/counting.h"
#include "core/planning/comparable.h"
#include "core/planning/lift_traits.h"
#include "core/planning/progression_registry.h"
#include "core/planning/progression_support.h"
#include "core/planning/trial_in_block.h"
#include "core/planning/warm_up.h"
#include "core/sheets/coach_notes.h"
#include "core/sheets/sheet_cautions.h"
#include "core/sheets/sheet_code.h"
#include "core/sheets/sheet_target.h"
#include "core/sheets/sheet_trial.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

constexpr int kWeekdayDays = 35;

// One exercise as the plan or the earlier session wants it.
struct Wanted {
    LiftLine lift;
    const Row<Exercise>* exercise = nullptr;  // null: the library lost it
    const Variant* variant = nullptr;
    const Grip* grip = nullptr;
    const RepStandard* standard = nullptr;
    const LineRecord* line = nullptr;  // null: never done before
    RepBand band;
    std::optional<int> sets;
    std::optional<double> reserve;
    std::optional<Load> load;
    std::optional<int> restSeconds;
    QString note;
    QString progression;
    Easing easing;  // the block's
    int superset = 0;
    const SlotLoad* likely = nullptr;
};

// Absent: the library lost a part of it.
std::optional<Wanted> wantedBySlot(const AthleteLog& log, const Library& library, const Slot& slot,
                                   const Easing& easing)
{
    const auto* variant = library.find(slot.variant);
    const auto* grip = library.find(slot.grip);
    const auto* standard = library.find(slot.standard);
    if (!variant || !grip || !standard) return std::nullopt;
    Wanted wanted{.lift = {log.athlete.id, slot.variant, slot.grip, slot.standard}};
    wanted.exercise = library.find(variant->value.exercise);
    wanted.variant = &variant->value;
    wanted.grip = &grip->value;
    wanted.standard = &standard->value;
    wanted.line = lineOf(log, slot);
    wanted.band = slot.band;
    wanted.sets = slot.sets;
    if (slot.plannedRir) wanted.reserve = slot.plannedRir->toDouble();
    wanted.load = slot.load;
    wanted.restSeconds = slot.restSeconds;
    wanted.note = slot.note;
    wanted.progression = slot.progression;
    wanted.easing = easing;
    wanted.superset = slot.superset;
    return wanted;
}

std::vector<Wanted> wantedByPlan(const AthleteLog& log, const Library& library, const PlannedDay& day,
                                 const Easing& easing, const std::vector<SlotLoad>& likely)
{
    std::vector<Wanted> all;
    for (std::size_t i = 0; i < day.slotList.size(); ++i) {
        auto wanted = wantedBySlot(log, library, day.slotList[i], easing);
        if (!wanted) continue;
        if (i < likely.size()) wanted->likely = &likely[i];
        all.push_back(*std::move(wanted));
    }
    return all;
}

// The drawn arm stands on the sheet whatever the day was made from: in the place of the same exercise, else first. A plan that has
// the lift says itself how it is to be done.
void addTrialArms(std::vector<Wanted>& all, const AthleteLog& log, const Library& library, const SessionSheet& sheet)
{
    for (const TrialSession& session : trialSessionsOn(log, sheet.date)) {
        auto arm = wantedBySlot(log, library, slotOfArm(session.trial->value, session.day->arm), {});
        if (!arm) continue;
        const auto lift = std::ranges::find(all, arm->lift, &Wanted::lift);
        if (lift != all.end() && sheet.source == SheetSource::PlannedDay) continue;
        const auto isSameExercise = [&](const Wanted& other) {
            return arm->exercise && other.exercise && arm->exercise->id == other.exercise->id;
        };
        const auto same = lift != all.end() ? lift : std::ranges::find_if(all, isSameExercise);
        if (same == all.end()) {
            all.insert(all.begin(), *std::move(arm));
            continue;
        }
        arm->restSeconds = same->restSeconds;
        arm->note = same->note;
        arm->progression = same->progression;
        arm->easing = same->easing;
        *same = *std::move(arm);
    }
}

// Lines trained on that day, in the order of their first set; warm-up alone is no training.
std::vector<Wanted> wantedBySession(const AthleteLog& log, QDate session)
{
    std::vector<std::pair<int, Wanted>> found;
    for (const LineRecord& line : log.lines)
        for (const Exposure& exposure : line.exposures) {
            if (exposure.date != session) continue;
            const auto sets = std::ranges::count_if(
                exposure.sets, [](const LoggedSet& logged) { return logged.set.kind != SetKind::WarmUp; });
            if (sets == 0) continue;
            Wanted wanted{.lift = line.line};
            wanted.exercise = &line.exercise;
            wanted.variant = &line.variant.value;
            wanted.grip = &line.grip.value;
            wanted.standard = &line.standard.value;
            wanted.line = &line;
            wanted.band = line.variant.value.band;
            wanted.sets = static_cast<int>(sets);
            found.emplace_back(exposure.sets.front().position, std::move(wanted));
        }
    std::ranges::stable_sort(found, {}, [](const auto& entry) { return entry.first; });
    std::vector<Wanted> all;
    all.reserve(found.size());
    for (auto& entry : found) all.push_back(std::move(entry.second));
    return all;
}

std::optional<QDate> latestDay(const AthleteLog& log, QDate date, bool sameWeekday)
{
    for (auto at = log.sessionDates.rbegin(); at != log.sessionDates.rend(); ++at) {
        if (*at >= date) continue;
        if (sameWeekday && at->daysTo(date) > kWeekdayDays) return std::nullopt;
        if (sameWeekday && at->dayOfWeek() != date.dayOfWeek()) continue;
        if (!wantedBySession(log, *at).empty()) return *at;
    }
    return std::nullopt;
}

std::vector<RepCue> cuesOf(const RepStandard& standard)
{
    std::vector<RepCue> cues;
    const std::pair<CueKind, const QString&> texts[] = {{CueKind::Start, standard.start},
                                                        {CueKind::End, standard.end},
                                                        {CueKind::Path, standard.path},
                                                        {CueKind::Body, standard.body},
                                                        {CueKind::Lowering, standard.lowering}};
    for (const auto& [kind, text] : texts)
        if (!text.trimmed().isEmpty()) cues.push_back({kind, text.trimmed()});
    if (standard.leastTravelPercent)
        cues.push_back({CueKind::LeastTravel, QString::number(*standard.leastTravelPercent)});
    return cues;
}

void addWarmUps(SheetExercise& exercise, const Variant& variant, const SheetEquipment& equipment)
{
    if (!exercise.target.load) return;
    for (const WarmUpSet& set : warmUpSets(exercise.target.load->load, variant, equipment.loads()))
        exercise.warmUps.push_back({equipment.setUp(set.load, variant), set.reps});
}

// The first rule alone says what comes after a full band.
void addAfterwards(SheetExercise& exercise, const TargetInput& input, const SheetEquipment& equipment)
{
    const ProgressionRule& rule = progressionFor(input.progression);
    if (!exercise.target.load || &rule != progressionRules().front()) return;
    ProgressionInput asked;
    asked.moreTrained = input.moreTrained;
    asked.lowerBody = input.lowerBody;
    const Mass wish = wishedStep(asked, RuleParameters(rule, input.settings));
    exercise.afterwards =
        AfterwardsNote{exercise.band.high, steppedLoad(equipment.loads(), input.variant, exercise.target.load->load,
                                                       LoadChange::Harder, wish, input.bodyKg)};
}

// The day that a sheet is for, and what is known beside the record.
struct SheetDay {
    QDate date;
    WeekKind week = WeekKind::Normal;
    const RuleSettings& settings;
};

SheetExercise makeExercise(const Wanted& wanted, const AthleteLog& log, const SheetEquipment& equipment,
                           const SheetDay& day)
{
    const QDate date = day.date;
    SheetExercise exercise;
    exercise.asksDiscomfort = mayKeep(log.athlete.value.consents, HealthField::Discomfort);
    exercise.lift = wanted.lift;
    exercise.exercise = wanted.exercise ? wanted.exercise->value.name : QString();
    exercise.variant = wanted.variant->name;
    exercise.grip = wanted.grip->name;
    exercise.standard = wanted.standard->name;
    exercise.sides = wanted.variant->sides;
    exercise.loading = wanted.variant->loading;
    exercise.implement = wanted.variant->implement;
    exercise.unit = equipment.unit();
    exercise.band = wanted.band;
    exercise.cues = cuesOf(*wanted.standard);
    exercise.restSeconds = wanted.restSeconds;
    exercise.note = wanted.note;
    auto before = wanted.line ? comparableBefore(*wanted.line, date) : std::vector<Exposure>();
    exercise.toBeat = resultToBeat(before);
    TargetInput input{*wanted.variant, std::move(before), wanted.band, wanted.sets,
                      wanted.reserve,  wanted.load,       day.week,    date};
    input.likely = wanted.likely;
    input.settings = day.settings;
    input.progression = wanted.progression;
    input.bodyKg = bodyPartKg(wanted.variant->loading, log.bodyMass, date).value_or(0);
    input.moreTrained = isMoreTrained(log.athlete.value);
    input.lowerBody = wanted.exercise && trainsLowerBody(wanted.exercise->value, log.muscles);
    input.deloadPercent = wanted.easing.loadPercent;
    exercise.target = makeTarget(input, equipment);
    exercise.sets = wanted.sets.value_or(3);
    addWarmUps(exercise, *wanted.variant, equipment);
    if (day.week == WeekKind::Normal) addAfterwards(exercise, input, equipment);
    return exercise;
}

// The trade's letters: A1 and A2 are done in turns, then B1, B2. A number that only one exercise has is no turn.
void nameTurns(SessionSheet& sheet, const std::vector<Wanted>& all)
{
    std::vector<int> letters;  // superset numbers in the order in which they come
    std::map<int, int> done;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const int superset = all[i].superset;
        if (superset == 0 || std::ranges::count(all, superset, &Wanted::superset) < 2) continue;
        if (std::ranges::find(letters, superset) == letters.end()) letters.push_back(superset);
        const auto letter = std::ranges::find(letters, superset) - letters.begin();
        sheet.exercises[i].turn = QChar(static_cast<char16_t>(u'A' + letter)) + QString::number(++done[superset]);
    }
}

void fillExercises(SessionSheet& sheet, const std::vector<Wanted>& all, const AthleteLog& log, const Library& library,
                   const SheetEquipment& equipment, const RuleSettings& settings)
{
    int next = 1;
    for (const Wanted& wanted : all) {
        SheetExercise exercise = makeExercise(wanted, log, equipment, {sheet.date, sheet.week, settings});
        exercise.firstSet = next;
        if (wanted.line) exercise.coachNotes = notesOnLine(log, *wanted.line, sheet.date);
        exercise.trial = sheetTrialOf(log, library, wanted.lift, sheet.date);
        next += exercise.sets;
        sheet.exercises.push_back(std::move(exercise));
    }
    nameTurns(sheet, all);
}

}  // namespace

std::optional<PlannedDayFound> plannedDayOn(const AthleteLog& log, QDate date)
{
    for (const Row<Block>& block : log.blocks)
        for (const PlannedWeek& week : block.value.weeks)
            for (const PlannedDay& day : week.days)
                if (day.date == date && !day.slotList.empty()) return PlannedDayFound{&block.value, week.kind, &day};
    return std::nullopt;
}

std::optional<SessionSheet> buildSessionSheet(const AthleteLog& log, const Library& library,
                                              const SheetEquipment& equipment, QDate date, const SheetReading& reading)
{
    SessionSheet sheet;
    sheet.athlete = log.athlete.value.name;
    sheet.group = log.athlete.value.group;
    sheet.date = date;
    sheet.sheetId = sheetIdFor(log.athlete.uuid, date);
    if (equipment.gym()) sheet.gym = equipment.gym()->name;
    std::vector<Wanted> wanted;
    if (const auto planned = plannedDayOn(log, date)) {
        sheet.source = SheetSource::PlannedDay;
        sheet.week = planned->week;
        sheet.title = planned->day->title;
        if (const auto week = weekOfBlock(*planned->block, date))
            sheet.place = PlaceInBlock{static_cast<int>(*week) + 1, static_cast<int>(planned->block->weeks.size())};
        wanted = wantedByPlan(log, library, *planned->day, planned->block->easing, reading.ofSlots);
    } else if (const auto weekday = latestDay(log, date, true)) {
        sheet.source = SheetSource::SameWeekday;
        sheet.takenFrom = weekday;
        wanted = wantedBySession(log, *weekday);
    } else if (const auto latest = latestDay(log, date, false)) {
        sheet.takenFrom = latest;
        wanted = wantedBySession(log, *latest);
    }
    if (wanted.empty()) sheet.source = SheetSource::TrialAlone;
    addTrialArms(wanted, log, library, sheet);
    if (wanted.empty()) return std::nullopt;
    fillExercises(sheet, wanted, log, library, equipment, reading.settings);
    sheet.cautions = cautionsFor(sheet, log);
    sheet.coachNotes = notesOnSheet(log, date);
    return sheet;
}

std::optional<SheetExercise> buildSheetExercise(const AthleteLog& log, const Library& library,
                                                const SheetEquipment& equipment, const LiftLine& lift, QDate date,
                                                const RuleSettings& settings)
{
    const auto* variant = library.find(lift.variant);
    const auto* grip = library.find(lift.grip);
    const auto* standard = library.find(lift.standard);
    if (!variant || !grip || !standard) return std::nullopt;
    Wanted wanted{.lift = lift};
    wanted.exercise = library.find(variant->value.exercise);
    wanted.variant = &variant->value;
    wanted.grip = &grip->value;
    wanted.standard = &standard->value;
    wanted.line = lineOf(log, Slot{lift.variant, lift.grip, lift.standard});
    wanted.band = variant->value.band;
    const auto before = wanted.line ? comparableBefore(*wanted.line, date) : std::vector<Exposure>();
    if (!before.empty()) wanted.sets = static_cast<int>(before.back().sets.size());
    const auto planned = plannedDayOn(log, date);
    SheetExercise exercise =
        makeExercise(wanted, log, equipment, {date, planned ? planned->week : WeekKind::Normal, settings});
    exercise.trial = sheetTrialOf(log, library, lift, date);
    return exercise;
}

std::optional<SessionSheet> buildSessionSheet(const AthleteLog& log, const Library& library, std::optional<Gym> gym,
                                              QDate date)
{
    return buildSessionSheet(log, library, SheetEquipment(std::move(gym), log.athlete.value.unit), date);
}

}  // namespace steelyard
