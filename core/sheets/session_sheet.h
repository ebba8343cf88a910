// What stands on the page for the gym floor, as data: one athlete, one day. Words with numbers and units in them are put
// together where it is painted (ui/print/sheet_words.h), so loads, dates and joints are kept as values here.
//
//   const SheetEquipment equipment(gym, log.athlete.value.unit);
//   const auto sheet = buildSessionSheet(log, library, equipment, date);
//   sheet->exercises[0].target->load.load == 42.5 kg;   sheet->exercises[0].target->reps == {9, 9, 8}
//
// The exercises come from the planned day, else from the latest session on that weekday within five weeks, else from
// the latest session; a trial's session of that day has its arm among them, whatever the source. Only what was done before `date` is looked at, so that a sheet can be printed again later.
// Failures: nullopt when there is neither a planned day nor an earlier session with a working set.
#pragma once

#include "core/sheets/sheet_load.h"

#include "core/analysis/athlete_log.h"
#include "core/planning/slot_load.h"

namespace steelyard {

enum class SheetSource { PlannedDay, SameWeekday, LatestSession, TrialAlone };
enum class CueKind { Start, End, Path, Body, Lowering, LeastTravel };
enum class CautionKind {
    Discomfort,  // a joint was rated 4 or more lately
    HeavyBar,    // spotter and safety pins
    Under18,     // only when the date of birth is known; never inferred
    AfterBreak,  // no session for three weeks or more
};

struct RepCue {
    CueKind kind = CueKind::Start;
    QString text;
    friend bool operator==(const RepCue&, const RepCue&) = default;
};

struct SheetCaution {
    CautionKind kind = CautionKind::Under18;
    std::optional<Joint> joint;  // Discomfort: which, how much of ten, when
    int rating = 0;
    QDate date;
    int weeks = 0;  // AfterBreak: whole weeks since the latest session
    friend bool operator==(const SheetCaution&, const SheetCaution&) = default;
};

struct SheetResult {
    Load load;
    int countedReps = 0;
    bool watched = false;
    friend bool operator==(const SheetResult&, const SheetResult&) = default;
};

// The latest comparable session: same lift line, working sets, counted repetitions only.
struct ResultToBeat {
    QDate date;
    std::vector<SheetResult> sets;
    bool effortKnown = false;  // every set has a reserve
    friend bool operator==(const ResultToBeat&, const ResultToBeat&) = default;
};

struct SheetTarget {
    std::optional<SheetLoad> load;  // absent: there is no comparable record to take it from
    std::vector<int> reps;          // by set; empty: anywhere in the band
    std::optional<double> reserve;  // planned, else as it usually was
    bool reservePlanned = false;
    QString why;  // for people
};

// "Every set at 12 with the reserve: 45 kg next time." Absent when there is nothing harder to set.
struct AfterwardsNote {
    int reps = 0;
    std::optional<Load> load;
};

struct SheetWarmUp {
    SheetLoad load;
    int reps = 0;
};

// What the coach decided in the review and the plan doesn't carry: see coach_notes.h.
struct CoachNote {
    QString action;  // machine word
    QString words;   // the coach's; empty: the action's own
    QDate madeOn;
    QString about;  // the exercise, where the note stands at the head of the sheet; empty: the whole lifter
    friend bool operator==(const CoachNote&, const CoachNote&) = default;
};

// What a trial wants of the exercise: see sheet_trial.h.
struct SheetTrial {
    QString question;
    std::size_t arm = 0;               // of this lift
    std::optional<std::size_t> drawn;  // for today, where this lift is another arm's
    QString armName;                   // "neutral, medium"
    QString drawnName;                 // of `drawn`
    bool counts = true;                // false: the lifter gets used to it
    int session = 1;                   // of `sessions`, both of all that were drawn
    int sessions = 1;
    std::optional<Decimal> loweringSeconds;
    std::vector<QString> asked;  // keys of the outcomes that are rated after it
    friend bool operator==(const SheetTrial&, const SheetTrial&) = default;
};

struct SheetExercise {
    std::optional<LiftLine> lift;  // whose history this is; always there on a built sheet
    QString turn;                  // "A1": done in turns with the others of its letter; empty: on its own
    QString exercise;
    QString variant;
    QString grip;
    QString standard;
    Sides sides = Sides::Both;
    MassUnit unit = MassUnit::kg;
    Loading loading = Loading::BarTotal;
    Implement implement = Implement::StraightBar;
    RepBand band;
    std::vector<RepCue> cues;
    std::optional<ResultToBeat> toBeat;
    SheetTarget target;
    std::vector<SheetWarmUp> warmUps;
    std::optional<AfterwardsNote> afterwards;
    int firstSet = 1;  // number of its first blank row; rows are numbered through the session, as the logbook does
    int sets = 1;      // blank rows
    std::optional<int> restSeconds;
    QString note;
    std::vector<CoachNote> coachNotes;  // oldest first
    std::optional<SheetTrial> trial;    // absent: the lift is in no trial today
    bool asksDiscomfort = true;         // false: the lifter has not agreed that it is kept
};

// Which week of how many.
struct PlaceInBlock {
    int week = 1;
    int weeks = 1;
    friend bool operator==(const PlaceInBlock&, const PlaceInBlock&) = default;
};

struct SessionSheet {
    QString athlete;
    QString group;
    QDate date;
    QString title;    // the planned day's, else empty
    QString sheetId;  // the same athlete and day give the same id: see sheet_code.h
    SheetSource source = SheetSource::LatestSession;
    std::optional<QDate> takenFrom;  // the earlier session, when nothing was planned
    WeekKind week = WeekKind::Normal;
    std::optional<PlaceInBlock> place;  // of a planned day
    QString gym;                        // empty: none is set
    std::vector<SheetCaution> cautions;
    std::vector<CoachNote> coachNotes;  // about the whole lifter, oldest first
    std::vector<SheetExercise> exercises;
};

// What a reading of the record adds to a sheet (core/book/sheet_targets.h).
struct SheetReading {
    std::vector<SlotLoad> ofSlots = {};  // likely loads of the planned day's slots, in their order; or none
    RuleSettings settings = {};          // the coach's numbers
};

// Without a reading the rules' plain next step from the last sessions is the target.
[[nodiscard]] std::optional<SessionSheet> buildSessionSheet(const AthleteLog& log, const Library& library,
                                                            const SheetEquipment& equipment, QDate date,
                                                            const SheetReading& reading = {});
// The same without keeping the equipment.
[[nodiscard]] std::optional<SessionSheet> buildSessionSheet(const AthleteLog& log, const Library& library,
                                                            std::optional<Gym> gym, QDate date);

// One exercise that isn't on the day's sheet, with its target from the lifter's own record on that lift; as many rows as were
// done there last, else three. Absent when the library lacks a part of the lift.
[[nodiscard]] std::optional<SheetExercise> buildSheetExercise(const AthleteLog& log, const Library& library,
                                                              const SheetEquipment& equipment, const LiftLine& lift,
                                                              QDate date, const RuleSettings& settings = {});

// The planned day of that date, when a block has one.
struct PlannedDayFound {
    const Block* block = nullptr;
    WeekKind week = WeekKind::Normal;
    const PlannedDay* day = nullptr;
};
[[nodiscard]] std::optional<PlannedDayFound> plannedDayOn(const AthleteLog& log, QDate date);

}  // namespace steelyard
