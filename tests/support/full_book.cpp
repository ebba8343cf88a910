#include "tests/support/full_book.h"

#include "core/analysis/parameter_names.h"
#include "core/storage/erased_athlete_repository.h"
#include "core/storage/repetition_repository.h"

#include "tests/support/temp_book.h"

namespace steelyard::test {
namespace {

Load load(const char16_t* text)
{
    return Load::parseWithUnit(QStringView(text)).value();
}

struct FullLibrary {
    Id<Muscle> target;
    Id<Muscle> helper;
    std::vector<Id<Variant>> variants;
    std::vector<Id<Grip>> grips;
    std::vector<Id<RepStandard>> standards;
};

RepStandard fullStandard(Id<Variant> variant, const QString& name)
{
    RepStandard s{.variant = variant};
    s.name = name;
    s.start = QStringLiteral("arms straight");
    s.end = QStringLiteral("bar at the chin");
    s.path = QStringLiteral("elbows fixed");
    s.body = QStringLiteral("none");
    s.lowering = QStringLiteral("two seconds");
    s.leastTravelPercent = 85;
    return s;
}

FullLibrary fillFullLibrary(Book& book, Transaction& tx)
{
    const auto library = book.library();
    FullLibrary made{must(library.insert(tx, Muscle{QStringLiteral("zz_target"), QStringLiteral("Target")})),
                     must(library.insert(tx, Muscle{QStringLiteral("aa_helper"), QStringLiteral("Helper")})),
                     {},
                     {},
                     {}};
    for (const bool second : {false, true}) {
        made.grips.push_back(must(library.insert(
            tx, Grip{second ? QStringLiteral("+wide, neutral") : QStringLiteral("@narrow"),
                     HandOrientation::SemiPronated, HandSpacing::Wide, lengthFromMillimetres(second ? 455 : 210)})));
        const auto exercise =
            must(library.insert(tx, Exercise{second ? QStringLiteral("-Row") : QStringLiteral("Arm curl, \"slow\""),
                                             {{made.target, 1.0}, {made.helper, 1.0 / 3.0}},
                                             second}));
        Variant v{.exercise = exercise};
        v.name = second ? QStringLiteral("seated; cable") : QStringLiteral("angled bar, upright");
        v.implement = Implement::AngledBar;
        v.position = QStringLiteral("upright");
        v.path = QStringLiteral("elbows travelling");
        v.loading = second ? Loading::Added : Loading::BarTotal;
        if (!second) v.barMass = load(u"22.05 lb");
        v.step = load(u"1.250 kg");
        v.backLoading = BackLoading::High;
        v.sides = Sides::OneAtATime;
        v.travel = TravelKind::Body;
        v.band = {5, 7};
        v.usualGrip = made.grips.back();
        v.isDefault = true;
        v.hidden = second;
        made.variants.push_back(must(library.insert(tx, v)));
        RepStandard general = fullStandard(made.variants.back(), QStringLiteral("general"));
        general.isDefault = true;
        made.standards.push_back(must(library.insert(tx, general)));
    }
    return made;
}

Gym fullGym(const QString& name)
{
    Gym gym;
    gym.name = name;
    gym.bars = {{QStringLiteral("short bar"), Implement::StraightBar, load(u"7.5 kg")},
                {QStringLiteral("a long bar"), Implement::AngledBar, load(u"45 lb")}};
    gym.collarPair = load(u"0.50 kg");
    gym.plates = {{load(u"20 kg"), 4}, {load(u"2.5 lb"), 2}};
    gym.dumbbells = {{QStringLiteral("rack"), load(u"2 kg"), load(u"2 kg"), load(u"30 kg")}};
    gym.stacks = {
        {QStringLiteral("B"), load(u"10 lb"), load(u"5 lb"), load(u"200 lb"), {load(u"2.5 lb"), load(u"1.25 kg")}},
        {QStringLiteral("A"), load(u"5 kg"), load(u"2.50 kg"), load(u"80 kg")}};
    return gym;
}

Athlete fullAthlete(const QString& name, Id<Gym> gym, const FullLibrary& library)
{
    Athlete a;
    a.name = name;
    a.born = QDate(1990, 5, 17);
    a.sex = Sex::Male;
    a.height = lengthFromMillimetres(1803);
    a.shoulderBreadth = lengthFromMillimetres(411);
    a.upperArm = lengthFromMillimetres(322);
    a.forearm = lengthFromMillimetres(277);
    a.experience = Experience::Advanced;
    a.unit = MassUnit::lb;
    a.gym = gym;
    a.group = QStringLiteral("Tuesday, late");
    a.daysPerWeek = 3;
    a.minutesPerDay = 55;
    a.jointHistory = QStringLiteral("left elbow, 2021");
    a.note = QStringLiteral("first line\n\"second\", line");
    a.aims = {{library.target, 9, 13}, {library.helper, 4, 6}};
    a.tags = {QStringLiteral("zz juniors"), QStringLiteral("back soon")};
    a.consents = {HealthConsent{{}, 0, {true, true}, QDate(2025, 6, 1), QStringLiteral("=by \"telephone\"")},
                  HealthConsent{QDate(2025, 6, 2), kConsentWording, {true, true}, {}, QStringLiteral("on paper")}};
    a.archived = true;
    return a;
}

ExerciseRating fullRating()
{
    ExerciseRating r;
    r.tension = 1;
    r.burn = 2;
    r.pump = 3;
    r.gaveOut = QStringLiteral("=grip");
    for (std::size_t joint = 0; joint < kJointCount; ++joint) r.discomfort[joint] = static_cast<int>(joint);
    r.nextSoreness = 9;
    r.nextWeakness = 10;
    return r;
}

std::vector<Repetition> fullRepetitions(int count)
{
    std::vector<Repetition> list;
    for (int number = 1; number <= count; ++number) {
        Repetition one{.number = number, .source = static_cast<RepetitionSource>(number % 3)};
        one.travelMm = Decimal::parse(u"512.50");
        if (number > 1) one.lowMm = Decimal::parse(u"14.0");
        if (number > 1) one.highMm = Decimal::parse(u"526.5");
        one.liftingSeconds = Decimal::parse(u"0.980");
        one.loweringSeconds = Decimal::parse(u"2.5");
        one.marks.set(Mark::ShortTop, number == 2);
        one.marks.set(Mark::Swing, number == 2);
        one.partWay = number == 4;
        list.push_back(one);
    }
    return list;
}

// Two lines with sets in turns, a replaced and a removed set, a session without sets, a rating without sets.
void fillFullLog(Book& book, Transaction& tx, Id<Athlete> athlete, const std::vector<Id<LiftLine>>& lines)
{
    const auto log = book.logbook();
    const auto now = QDateTime(QDate(2026, 2, 3), QTime(18, 5, 7), Qt::UTC);
    for (const int day : {2, 3}) {
        const auto session = must(log.session(tx, athlete, QDate(2026, 2, day)));
        std::vector<Id<SetEntry>> sets;
        for (int i = 0; i < 6; ++i)
            sets.push_back(must(
                log.insert(tx, athlete, {session, lines[static_cast<std::size_t>(i % 2)], i + 1, fullSet(1 + i / 2)})));
        must(log.putRating(tx, athlete, session, lines[0], fullRating()));
        const RepetitionRepository repetitions(tx.database());
        for (const std::size_t place : {1U, 3U, 4U})
            must(repetitions.put(tx, athlete, sets[place], fullRepetitions(static_cast<int>(place))));
        for (const char* was : {"61.0", "62.25"}) {
            SetEntry wrong = workSet(was, 8);
            wrong.number = 2;
            must(log.replace(tx, sets[2], wrong, now));
        }
        SetEntry second = fullSet(2);
        second.note = QStringLiteral("-corrected");
        must(log.replace(tx, sets[2], second, now.addSecs(60)));
        must(log.remove(tx, sets[1], now.addSecs(90)));
    }
    must(log.session(tx, athlete, QDate(2026, 2, 5)));
    const auto bare = must(log.session(tx, athlete, QDate(2026, 2, 6)));
    must(log.putRating(tx, athlete, bare, lines[1], fullRating()));
}

Block fullBlock(Id<Athlete> athlete, const FullLibrary& library, Id<RepStandard> own)
{
    Slot slot{.variant = library.variants[0], .grip = library.grips[1], .standard = own};
    slot.sets = 5;
    slot.band = {6, 9};
    slot.plannedRir = Decimal::parse(u"1.50");
    slot.load = load(u"92.50 lb");
    slot.restSeconds = 150;
    slot.note = QStringLiteral("=pause");
    slot.progression = QStringLiteral("hold");
    slot.superset = 3;
    slot.loadLocked = true;
    Block block{.athlete = athlete};
    block.name = QStringLiteral("Spring");
    block.aim = QStringLiteral("arms");
    block.start = QDate(2026, 2, 2);
    block.minutesPerDay = 55;
    block.easing = {60, 85, 1};
    block.aims = {{library.helper, 5, 9}};
    block.daysOff = {{QDate(2026, 2, 6), QDate(2026, 2, 8), QStringLiteral("=fair")}};
    block.weeks = {
        {WeekKind::Normal, {{QDate(2026, 2, 2), QStringLiteral("A"), {slot, slot}}, {QDate(2026, 2, 4), {}, {}}}},
        {WeekKind::Deload, {}}};
    return block;
}

// Two trials: one ended, with a look and every kind of day; one that runs and has nothing but what it must.
std::vector<Trial> fullTrials(Id<Athlete> athlete, const FullLibrary& library, Id<RepStandard> own)
{
    Trial trial{.athlete = athlete};
    trial.question = QStringLiteral("=narrow or \"wide\"?");
    trial.designedOn = QDate(2026, 2, 1);
    trial.factor = TrialFactor::Variant;
    trial.whyMoreThanOne = QStringLiteral("the cable has no narrow grip");
    trial.arms = {
        {.variant = library.variants[0],
         .grip = library.grips[0],
         .standard = own,
         .band = {6, 9},
         .loweringSeconds = Decimal::parse(u"3.50"),
         .runIn = 2},
        {.variant = library.variants[1], .grip = library.grips[1], .standard = library.standards[1], .band = {10, 15}}};
    trial.outcomes = {{QStringLiteral("tension"), 0.1 + 0.2}, {QStringLiteral("outcome_of_later"), 2}};
    trial.limit = {5, 3};
    trial.sets = 4;
    trial.plannedRir = Decimal::parse(u"1.50");
    trial.daysBetween = 3;
    trial.blocks = 2;
    trial.seed = 0xfedc'ba98'7654'3210U;
    trial.days = {{QDate(2026, 2, 2), 0, 0, 1, false, QStringLiteral("=the narrow bar was taken")},
                  {QDate(2026, 2, 5), 1, 1, {}, true, {}},
                  {QDate(2026, 2, 9), 1, 0}};
    trial.looks = {{QDate(2026, 2, 6), 1}};
    trial.ending = TrialEnding{QDate(2026, 2, 10), TrialEnd::Stopped, QStringLiteral("left, the gym closed"), 1};
    Trial running = trial;
    running.question = QStringLiteral("Again?");
    running.designedOn = QDate(2026, 2, 11);
    running.factor = TrialFactor::Lowering;
    running.whyMoreThanOne.clear();
    running.plannedRir.reset();
    running.looks.clear();
    running.ending.reset();
    return {trial, running};
}

void fillFullAthlete(Book& book, Transaction& tx, const QString& name, const FullLibrary& library)
{
    const auto gym = must(book.gyms().insert(tx, fullGym(QStringLiteral("Gym of ") + name)));
    const auto athlete = must(book.athletes().insert(tx, fullAthlete(name, gym, library)));
    must(book.athletes().putBodyMass(tx, athlete, {QDate(2026, 1, 5), load(u"181.40 lb")}));
    must(book.athletes().putBodyMass(tx, athlete, {QDate(2026, 2, 5), load(u"82.0 kg")}));
    for (const auto& [place, key] : EnumText<BodyPlace>::table)
        must(book.athletes().putMeasurement(tx, athlete,
                                            {QDate(2026, 2, 5), place, Decimal::parse(u"15.50").value(),
                                             place == BodyPlace::Neck ? TapeUnit::in : TapeUnit::cm}));
    RepStandard agreed = fullStandard(library.variants[0], QStringLiteral("agreed with ") + name);
    agreed.athlete = athlete;
    const auto own = must(book.library().insert(tx, agreed));
    const std::vector lines{
        must(book.logbook().line(tx, {athlete, library.variants[0], library.grips[0], own})),
        must(book.logbook().line(tx, {athlete, library.variants[1], library.grips[1], library.standards[1]}))};
    fillFullLog(book, tx, athlete, lines);
    must(book.blocks().insert(tx, fullBlock(athlete, library, own)));
    for (const Trial& trial : fullTrials(athlete, library, own)) must(book.trials().insert(tx, trial));
    Slot free{.variant = library.variants[1], .grip = library.grips[0], .standard = library.standards[1]};
    free.progression = QStringLiteral("effort_ramp");
    must(book.blocks().insert(tx, BlockTemplate{QStringLiteral("Shape of ") + name,
                                                QStringLiteral("arms"),
                                                {70, 95, 3},
                                                {{WeekKind::Test, {{kTemplateStart, QStringLiteral("A"), {free}}}}}}));
    Decision decision{.athlete = athlete};
    decision.line = lines[1];
    decision.rule = QStringLiteral("stalled");
    decision.kind = DecisionKind::Watch;
    decision.madeOn = QDate(2026, 2, 7);
    decision.until = QDate(2026, 2, 21);
    decision.action = QStringLiteral("hold");
    decision.reason = QStringLiteral("new job, \"tired\"");
    decision.severity = Severity::Medium;
    decision.measure = 7.1;
    decision.said = QStringLiteral("Arm curl: no clear improvement for 7 weeks.");
    must(book.decisions().insert(tx, decision));
    decision.line.reset();
    decision.reason = QStringLiteral("later the same day");
    must(book.decisions().insert(tx, decision));
}

}  // namespace

SetEntry fullSet(int number)
{
    SetEntry set;
    set.number = number;
    set.load = number % 2 == 0 ? load(u"92.50 lb") : load(u"42.5 kg");
    set.reps = 11;
    if (number != 3) set.off = number == 1 ? 0 : 3;
    set.failed = number != 2;
    set.effort = Effort{number == 1 ? Effort::Scale::Rir : Effort::Scale::Rpe, Decimal::parse(u"8.50").value()};
    set.marks.set(Mark::Swing, 2);
    set.marks.set(Mark::Assisted, 1);
    set.loweringSeconds = Decimal::parse(u"3.0");
    set.leanDegrees = Decimal::parse(u"12.5");
    set.kind = SetKind::Test;
    set.note = QStringLiteral("=belt; “heavy”,\n'second' \"line\"");
    return set;
}

void fillFullBook(Book& book)
{
    auto tx = must(Transaction::begin(book.database()));
    const FullLibrary library = fillFullLibrary(book, tx);
    for (const QString& name : {kFirstLifter, kSecondLifter}) fillFullAthlete(book, tx, name, library);
    must(book.ruleSettings().put(tx, QStringLiteral("stalled"), QStringLiteral("weeks"), 0.1 + 0.2));
    must(book.ruleSettings().put(tx, QStringLiteral("of_a_newer_program"), QStringLiteral("share"), 4.0));
    ReadingFit fit{0, QDate(2026, 2, 20), 80, 24'000, 1234.5 + 0.1, 1250.25, numbersOf(ReadingParameters{})};
    fit.numbers[QStringLiteral("day_noise")] = 0.1 + 0.2;
    fit.numbers[QStringLiteral("of_a_newer_program")] = -4.5;
    must(book.readingParameters().insert(tx, fit));
    must(ErasedAthleteRepository(book.database())
             .put(tx, {erasureMark(QUuid(QStringLiteral("0f8fad5b-d9cb-469f-a165-70867728950e"))),
                       QDateTime(QDate(2025, 11, 30), QTime(7, 8, 9), Qt::UTC)}));
    must(tx.commit());
}

}  // namespace steelyard::test
