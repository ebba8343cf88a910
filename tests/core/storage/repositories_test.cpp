// Each entity is written with every field away from its default and read back: a forgotten column fails here.
#include "core/storage/athlete_log_reader.h"
#include "tests/support/temp_book.h"

#include <gtest/gtest.h>

namespace steelyard {
namespace {

using test::must;
using test::TempBook;
using test::workSet;

Transaction begin(TempBook& book)
{
    return must(Transaction::begin(book->database()));
}

template <class Entity>
const Entity& only(const std::vector<Row<Entity>>& rows, Id<Entity> id)
{
    const auto found = std::ranges::find(rows, id, &Row<Entity>::id);
    EXPECT_NE(found, rows.end());
    return found->value;
}

SetEntry fullSet()
{
    SetEntry set;
    set.number = 7;
    set.load = Load::parse(u"92.50", MassUnit::lb).value();
    set.reps = 11;
    set.off = 3;
    set.failed = true;
    set.effort = Effort{Effort::Scale::Rpe, Decimal::parse(u"8.5").value()};
    set.marks.set(Mark::Swing, 2);
    set.marks.set(Mark::Assisted, 1);
    set.loweringSeconds = Decimal::parse(u"3.0").value();
    set.leanDegrees = Decimal::parse(u"7.50").value();
    set.kind = SetKind::Test;
    set.note = QStringLiteral("belt on; “heavy”\nsecond line");
    return set;
}

TEST(Repositories, GiveBackEveryFieldOfAnAthlete)
{
    TempBook book;
    auto tx = begin(book);
    Gym gym;
    gym.name = QStringLiteral("Weigh-house");
    gym.bars = {{QStringLiteral("long bar"), Implement::AngledBar, Load::parseWithUnit(u"20.0 kg").value()}};
    gym.collarPair = Load::parseWithUnit(u"0.5 kg");
    gym.plates = {{Load::parseWithUnit(u"10 kg").value(), 2}, {Load::parseWithUnit(u"45 lb").value(), 3}};
    gym.dumbbells = {{QStringLiteral("rack"), Load::parseWithUnit(u"1 kg").value(),
                      Load::parseWithUnit(u"1 kg").value(), Load::parseWithUnit(u"10 kg").value()}};
    gym.stacks = {{QStringLiteral("A"), Load::parseWithUnit(u"5 kg").value(), Load::parseWithUnit(u"5 kg").value(),
                   Load::parseWithUnit(u"100 kg").value()}};
    const auto gymId = must(book->gyms().insert(tx, gym));
    EXPECT_EQ(must(book->gyms().find(gymId)).value, gym);

    const auto library = must(book->library().read());
    Athlete athlete;
    athlete.name = QStringLiteral("Zoë ‘<b>’ O'Notch");
    athlete.born = QDate(1990, 2, 28);
    athlete.sex = Sex::Female;
    athlete.height = lengthFromMillimetres(1712);
    athlete.shoulderBreadth = lengthFromMillimetres(371);
    athlete.upperArm = lengthFromMillimetres(330);
    athlete.forearm = lengthFromMillimetres(310);
    athlete.experience = Experience::Advanced;
    athlete.unit = MassUnit::lb;
    athlete.gym = gymId;
    athlete.group = QStringLiteral("Evening");
    athlete.daysPerWeek = 3;
    athlete.minutesPerDay = 75;
    athlete.consents = {HealthConsent::given(QDate(2026, 1, 5))};
    athlete.jointHistory = QStringLiteral("left elbow");
    athlete.note = QStringLiteral("'); DROP TABLE athlete; --");
    athlete.aims = {{library.muscles.front().id, 6, 14}};
    athlete.archived = true;
    const auto id = must(book->athletes().insert(tx, athlete));
    EXPECT_EQ(must(book->athletes().find(id)).value, athlete);
    EXPECT_EQ(must(book->athletes().findByName(athlete.name)).id, id);
    athlete.name = QStringLiteral("Zoë Notch");
    athlete.aims.clear();
    must(book->athletes().replace(tx, id, athlete));
    EXPECT_EQ(must(book->athletes().find(id)).value, athlete);
}

TEST(Repositories, RefuseASecondAthleteOfTheSameName)
{
    TempBook book;
    auto tx = begin(book);
    Athlete twin;
    twin.name = QStringLiteral("Ada Fulcrum");
    const auto made = book->athletes().insert(tx, twin);
    ASSERT_FALSE(made);
    EXPECT_EQ(made.error().code, ErrorCode::Invalid);
    EXPECT_TRUE(made.error().what.contains(twin.name));
}

TEST(Repositories, GiveBackEveryFieldOfTheLibrary)
{
    TempBook book;
    auto tx = begin(book);
    const auto repository = book->library();
    const auto muscle = must(repository.insert(tx, Muscle{QStringLiteral("lats"), QStringLiteral("Lats")}));
    const auto muscle2 = must(repository.insert(tx, Muscle{QStringLiteral("neck"), QStringLiteral("Neck")}));
    const Exercise exercise{QStringLiteral("Pulldown"), {{muscle, 1.0}, {muscle2, 0.25}}, true};
    const auto exerciseId = must(repository.insert(tx, exercise));
    const Grip grip{QStringLiteral("62 cm"), HandOrientation::SemiPronated, HandSpacing::Wide,
                    lengthFromMillimetres(620)};
    const auto gripId = must(repository.insert(tx, grip));
    Variant variant{.exercise = exerciseId};
    variant.name = QStringLiteral("long handle");
    variant.implement = Implement::Cable;
    variant.position = QStringLiteral("seated");
    variant.path = QStringLiteral("elbows travelling");
    variant.loading = Loading::BarTotal;
    variant.barMass = Load::parseWithUnit(u"7.5 kg");
    variant.step = Load::parseWithUnit(u"2.5 kg");
    variant.backLoading = BackLoading::High;
    variant.sides = Sides::OneAtATime;
    variant.travel = TravelKind::Arc;
    variant.band = {5, 9};
    variant.usualGrip = gripId;
    variant.isDefault = true;
    variant.hidden = true;
    const auto variantId = must(repository.insert(tx, variant));
    RepStandard standard{.variant = variantId};
    standard.athlete = book.athlete();
    standard.name = QStringLiteral("strict");
    standard.start = QStringLiteral("arms long");
    standard.end = QStringLiteral("bar to collarbone");
    standard.path = QStringLiteral("elbows down");
    standard.body = QStringLiteral("still");
    standard.lowering = QStringLiteral("two seconds");
    standard.leastTravelPercent = 90;
    standard.isDefault = true;
    const auto standardId = must(repository.insert(tx, standard));

    Library library = must(repository.read());
    EXPECT_EQ(only(library.exercises, exerciseId), exercise);
    EXPECT_EQ(only(library.grips, gripId), grip);
    EXPECT_EQ(only(library.variants, variantId), variant);
    EXPECT_EQ(only(library.standards, standardId), standard);
    EXPECT_EQ(library.fullName(variant), QStringLiteral("Pulldown, long handle"));

    variant.name = QStringLiteral("short handle");
    variant.hidden = false;
    standard.body = QStringLiteral("a little lean");
    must(repository.replace(tx, variantId, variant));
    must(repository.replace(tx, standardId, standard));
    library = must(repository.read());
    EXPECT_EQ(only(library.variants, variantId), variant);
    EXPECT_EQ(only(library.standards, standardId), standard);
}

TEST(Repositories, GiveBackEveryFieldOfASetAndItsRating)
{
    TempBook book;
    auto tx = begin(book);
    const auto logbook = book->logbook();
    const auto session = must(logbook.session(tx, book.athlete(), QDate(2026, 2, 3)));
    const auto line = must(logbook.line(tx, book.line()));
    const PlacedSet placed{session, line, 4, fullSet()};
    const auto id = must(logbook.insert(tx, book.athlete(), placed));
    EXPECT_EQ(must(logbook.find(id)), placed);
    ExerciseRating rating;
    rating.tension = 7;
    rating.burn = 0;
    rating.pump = 10;
    rating.gaveOut = QStringLiteral("forearm_flexors");
    for (std::size_t joint = 0; joint < kJointCount; ++joint) rating.discomfort[joint] = static_cast<int>(joint);
    rating.nextSoreness = 2;
    rating.nextWeakness = 3;
    must(logbook.putRating(tx, book.athlete(), session, line, rating));
    must(tx.commit());

    const auto log = must(readAthleteLog(book->database(), must(book->library().read()), book.athlete()));
    ASSERT_EQ(log.lines.size(), 1U);
    EXPECT_EQ(log.lines[0].key, QStringLiteral("arm-curl/straight-bar-upright/supinated-medium/strict"));
    ASSERT_EQ(log.lines[0].exposures.size(), 1U);
    EXPECT_EQ(log.lines[0].exposures[0].sets, (std::vector<LoggedSet>{{id, 4, fullSet()}}));
    EXPECT_EQ(log.lines[0].exposures[0].rating, rating);
    EXPECT_EQ(log.sessionDates, std::vector<QDate>{QDate(2026, 2, 3)});
}

TEST(Repositories, KeepWhatASetSaidBefore)
{
    TempBook book;
    auto tx = begin(book);
    const auto logbook = book->logbook();
    const auto session = must(logbook.session(tx, book.athlete(), QDate(2026, 2, 3)));
    const auto line = must(logbook.line(tx, book.line()));
    const auto id = must(logbook.insert(tx, book.athlete(), {session, line, 1, fullSet()}));
    SetEntry changed = fullSet();
    changed.reps = 12;
    const QDateTime first(QDate(2026, 2, 4), QTime(9, 0), Qt::UTC);
    must(logbook.replace(tx, id, changed, first));
    must(logbook.replace(tx, id, changed, first.addDays(1)));  // nothing new: nothing to keep
    must(logbook.remove(tx, id, first.addDays(2)));
    const auto kept = must(logbook.replacedSets(id));
    ASSERT_EQ(kept.size(), 2U);
    EXPECT_EQ(kept[0], (ReplacedSet{id, first, false, fullSet()}));
    EXPECT_EQ(kept[1], (ReplacedSet{id, first.addDays(2), true, changed}));
}

TEST(Repositories, GiveBackEveryFieldOfADecisionAndABlock)
{
    TempBook book;
    auto tx = begin(book);
    const auto line = must(book->logbook().line(tx, book.line()));
    Decision decision{.athlete = book.athlete()};
    decision.line = line;
    decision.rule = QStringLiteral("a_rule_of_tomorrow");
    decision.kind = DecisionKind::Watch;
    decision.madeOn = QDate(2026, 3, 1);
    decision.until = QDate(2026, 3, 15);
    decision.action = QStringLiteral("hold_load");
    decision.reason = QStringLiteral("see next week");
    const auto id = must(book->decisions().insert(tx, decision));
    const auto decisions = must(book->decisions().of(book.athlete()));
    ASSERT_EQ(decisions.size(), 1U);
    EXPECT_EQ(decisions[0].id, id);
    EXPECT_EQ(decisions[0].value, decision);

    Slot slot{.variant = book.line().variant, .grip = book.line().grip, .standard = book.line().standard};
    slot.sets = 4;
    slot.band = {6, 9};
    slot.plannedRir = Decimal::parse(u"1.5");
    slot.load = Load::parseWithUnit(u"42.50 kg");
    slot.restSeconds = 150;
    slot.note = QStringLiteral("pause below");
    slot.progression = QStringLiteral("a_rule_of_tomorrow");
    slot.superset = 2;
    slot.loadLocked = true;
    Block block{.athlete = book.athlete()};
    block.name = QStringLiteral("Spring");
    block.aim = QStringLiteral("arms");
    block.start = QDate(2026, 3, 2);
    block.weeks = {
        {WeekKind::Normal, {{QDate(2026, 3, 2), QStringLiteral("A"), {slot, slot}}, {QDate(2026, 3, 5), {}, {}}}},
        {WeekKind::Deload, {}}};
    block.minutesPerDay = 75;
    block.easing = {60, 80, 1};
    block.aims = {{must(book->library().read()).muscles.front().id, 6, 12}};
    block.daysOff = {{QDate(2026, 3, 7), QDate(2026, 3, 9), QStringLiteral("fair")}};
    const auto blockId = must(book->blocks().insert(tx, block));
    EXPECT_EQ(must(book->blocks().of(book.athlete()))[0].value, block);
    block.weeks[0].days[0].slotList.pop_back();
    block.daysOff.clear();
    block.aims.front().weeklySetsHigh = 14;
    must(book->blocks().replace(tx, blockId, block));
    EXPECT_EQ(must(book->blocks().of(book.athlete()))[0].value, block);
}

TEST(BlockRepository, KeepsTemplatesApartFromTheBlocksOfLifters)
{
    TempBook book;
    Slot slot{.variant = book.line().variant, .grip = book.line().grip, .standard = book.line().standard};
    slot.superset = 1;
    const BlockTemplate shape{QStringLiteral("Three days"),
                              QStringLiteral("arms"),
                              {40, 85, 3},
                              {{WeekKind::Normal, {{kTemplateStart, QStringLiteral("A"), {slot}}}}}};
    auto tx = begin(book);
    const auto id = must(book->blocks().insert(tx, shape));
    const auto kept = must(book->blocks().templates());
    ASSERT_EQ(kept.size(), 1U);
    EXPECT_EQ(kept[0].value, shape);
    EXPECT_TRUE(must(book->blocks().of(book.athlete())).empty());
    BlockTemplate loaded = shape;
    loaded.weeks[0].days[0].slotList[0].load = Load::parseWithUnit(u"40 kg");
    EXPECT_EQ(book->blocks().insert(tx, loaded).error().code, ErrorCode::Invalid);
    must(book->blocks().remove(tx, id));
    EXPECT_TRUE(must(book->blocks().templates()).empty());
}

TEST(AthleteLog, StopsAtTheDayItIsReadFor)
{
    TempBook book;
    auto tx = begin(book);
    const auto logbook = book->logbook();
    const auto line = must(logbook.line(tx, book.line()));
    for (const int day : {1, 8, 15}) {
        const auto session = must(logbook.session(tx, book.athlete(), QDate(2026, 2, day)));
        must(logbook.insert(tx, book.athlete(), {session, line, 1, workSet("40", 10)}));
    }
    must(tx.commit());
    const auto library = must(book->library().read());
    EXPECT_EQ(must(readAthleteLog(book->database(), library, book.athlete(), QDate(2026, 2, 8))).sessionDates.size(),
              2U);
    EXPECT_EQ(must(readAthleteLog(book->database(), library, book.athlete())).sessionDates.size(), 3U);
}

}  // namespace
}  // namespace steelyard
