#include "core/exchange/starter_library.h"

#include <QtCore/QFile>
#include <QtCore/QSet>

#include <gtest/gtest.h>

#include <algorithm>

namespace steelyard {
namespace {

const StarterLibrary& builtInLibraryUnderTest()
{
    static const auto library = [] {
        const auto read = builtInStarterLibrary();
        return read ? *read : StarterLibrary{};
    }();
    return library;
}

QByteArray shippedFile(const QString& name)
{
    QFile file(QStringLiteral(":/steelyard/library/") + name);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

const QByteArray kNoGyms = R"({"format": 1, "gyms": []})";

// A sound library of one row each; the refusal tests spoil one word of it.
const QByteArray kSmallLibrary = R"({"format": 1,
 "muscles": [{"key": "biceps", "name": "Biceps"}],
 "grips": [{"name": "supinated", "orientation": "supinated"}],
 "exercises": [{"name": "Arm curl", "shares": {"biceps": 1}, "variants": [
  {"name": "bar", "implement": "straight_bar", "position": "upright", "path": "elbows fixed", "loading": "bar_total",
   "bar_mass": "20 kg", "step": "2.5 kg", "back_loading": "some", "sides": "two", "travel": "arc",
   "grip": "supinated", "band": [8, 12], "default": true, "standards": [
    {"name": "strict", "start": "low", "end": "high", "path": "arc", "body": "still", "lowering": "slow",
     "least_travel": 90, "default": true}]}]}]})";

const QByteArray kSmallGyms = R"({"format": 1, "gyms": [{"name": "Hall",
 "bars": [{"name": "long", "implement": "straight_bar", "mass": "20 kg"}],
 "plates": [{"plate": "5 kg", "pairs": 2}],
 "dumbbells": [{"name": "row", "first": "1 kg", "step": "1 kg", "last": "10 kg"}], "stacks": []}]})";

QString messageAfterSpoiling(QByteArray library, const QByteArray& sound, const QByteArray& spoilt)
{
    EXPECT_TRUE(library.contains(sound)) << "the test spoils nothing: " << sound.toStdString();
    library.replace(library.indexOf(sound), sound.size(), spoilt);
    const auto read = readStarterLibrary(library, kNoGyms);
    if (read) return QStringLiteral("was read");
    EXPECT_EQ(read.error().code, ErrorCode::Invalid);
    return read.error().what;
}

QString messageAfterSpoilingGyms(const QByteArray& sound, const QByteArray& spoilt)
{
    QByteArray gyms = kSmallGyms;
    EXPECT_TRUE(gyms.contains(sound)) << "the test spoils nothing: " << sound.toStdString();
    gyms.replace(gyms.indexOf(sound), sound.size(), spoilt);
    const auto read = readStarterLibrary(kSmallLibrary, gyms);
    if (read) return QStringLiteral("was read");
    EXPECT_EQ(read.error().code, ErrorCode::Invalid);
    return read.error().what;
}

void expectNames(const QString& message, std::initializer_list<const char*> words)
{
    for (const char* word : words)
        EXPECT_TRUE(message.contains(QString::fromUtf8(word))) << message.toStdString() << " lacks " << word;
}

TEST(BuiltInStarterLibrary, IsFoundAndReads)
{
    const auto read = builtInStarterLibrary();
    ASSERT_TRUE(read) << read.error().what.toStdString() << " " << read.error().detail.toStdString();
    EXPECT_GE(read->muscles.size(), 20u);
    EXPECT_GE(read->exercises.size(), 55u);
}

TEST(BuiltInStarterLibrary, HoldsAtLeastAHundredVariants)
{
    std::size_t variants = 0;
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises) variants += exercise.variants.size();
    EXPECT_GE(variants, 100u);
}

TEST(BuiltInStarterLibrary, TrainsEveryMuscleAsATarget)
{
    ASSERT_FALSE(builtInLibraryUnderTest().muscles.empty());
    QSet<QString> targets;
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
        for (const auto& [muscle, share] : exercise.shares)
            if (share == 1.0) targets.insert(muscle);
    for (const Muscle& muscle : builtInLibraryUnderTest().muscles)
        EXPECT_TRUE(targets.contains(muscle.key)) << muscle.key.toStdString();
}

TEST(BuiltInStarterLibrary, GivesEveryExerciseOneTargetAndHelpersBelowOne)
{
    ASSERT_FALSE(builtInLibraryUnderTest().exercises.empty());
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises) {
        const auto targets = std::ranges::count(exercise.shares, 1.0, &std::pair<QString, double>::second);
        EXPECT_EQ(targets, 1) << exercise.name.toStdString();
        for (const auto& [muscle, share] : exercise.shares) {
            EXPECT_GE(share, 0.1) << exercise.name.toStdString() << " " << muscle.toStdString();
            EXPECT_LE(share, 1.0) << exercise.name.toStdString() << " " << muscle.toStdString();
        }
    }
}

TEST(BuiltInStarterLibrary, UsesEveryGripItLists)
{
    ASSERT_FALSE(builtInLibraryUnderTest().grips.empty());
    QSet<QString> used;
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
        for (const StarterVariant& variant : exercise.variants) used.insert(variant.grip);
    for (const Grip& grip : builtInLibraryUnderTest().grips)
        EXPECT_TRUE(used.contains(grip.name)) << grip.name.toStdString();
}

TEST(BuiltInStarterLibrary, WritesCuesThatFitOnASheet)
{
    ASSERT_FALSE(builtInLibraryUnderTest().exercises.empty());
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
        for (const StarterVariant& variant : exercise.variants)
            for (const StarterStandard& standard : variant.standards)
                for (const QString& cue :
                     {standard.start, standard.end, standard.path, standard.body, standard.lowering}) {
                    EXPECT_FALSE(cue.isEmpty()) << exercise.name.toStdString() << variant.name.toStdString();
                    EXPECT_LE(cue.size(), 60) << cue.toStdString();
                }
}

TEST(BuiltInStarterLibrary, KeepsRepBandsThatCanBeTrained)
{
    ASSERT_FALSE(builtInLibraryUnderTest().exercises.empty());
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
        for (const StarterVariant& variant : exercise.variants) {
            EXPECT_GE(variant.band.low, 3) << exercise.name.toStdString();
            EXPECT_LT(variant.band.low, variant.band.high) << exercise.name.toStdString();
            EXPECT_LE(variant.band.high, 40) << exercise.name.toStdString();
        }
}

TEST(BuiltInStarterLibrary, GivesEveryBarItsMassAndEveryVariantAStep)
{
    ASSERT_FALSE(builtInLibraryUnderTest().exercises.empty());
    for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
        for (const StarterVariant& variant : exercise.variants) {
            const auto where = (exercise.name + QStringLiteral(", ") + variant.name).toStdString();
            EXPECT_EQ(variant.barMass.has_value(), variant.loading == Loading::BarTotal) << where;
            ASSERT_TRUE(variant.step) << where;
            EXPECT_GT(variant.step->mass(), Mass()) << where;
        }
}

TEST(BuiltInStarterLibrary, LoadsTheBackInADeadliftAndNotInALegPress)
{
    const auto backLoadingOf = [](const QString& name) {
        std::vector<BackLoading> found;
        for (const StarterExercise& exercise : builtInLibraryUnderTest().exercises)
            if (exercise.name == name)
                for (const StarterVariant& variant : exercise.variants) found.push_back(variant.backLoading);
        return found;
    };
    EXPECT_EQ(backLoadingOf(QStringLiteral("Deadlift")), std::vector(4, BackLoading::High));
    EXPECT_EQ(backLoadingOf(QStringLiteral("Leg press")), std::vector(3, BackLoading::None));
}

TEST(BuiltInStarterLibrary, OffersAKilogramGymAPoundGymAndAMixedOne)
{
    const auto& gyms = builtInLibraryUnderTest().gyms;
    ASSERT_EQ(gyms.size(), 3u);
    const auto has = [](const Gym& gym, MassUnit unit) {
        return std::ranges::any_of(gym.plates, [unit](const PlatePairs& p) { return p.plate.unit() == unit; });
    };
    EXPECT_TRUE(has(gyms[0], MassUnit::kg) && !has(gyms[0], MassUnit::lb));
    EXPECT_TRUE(has(gyms[1], MassUnit::lb) && !has(gyms[1], MassUnit::kg));
    EXPECT_TRUE(has(gyms[2], MassUnit::lb) && has(gyms[2], MassUnit::kg));
}

TEST(StarterLibraryReader, TurnsARowIntoWhatABookStores)
{
    const auto read = readStarterLibrary(kSmallLibrary, kSmallGyms);
    ASSERT_TRUE(read) << read.error().what.toStdString();
    const StarterVariant& variant = read->exercises.at(0).variants.at(0);
    const Variant stored = toVariant(variant, Id<Exercise>(7), Id<Grip>(3));
    EXPECT_EQ(stored.exercise, Id<Exercise>(7));
    EXPECT_EQ(stored.usualGrip, Id<Grip>(3));
    EXPECT_EQ(stored.barMass, Load::parseWithUnit(u"20 kg"));
    EXPECT_EQ(stored.band, (RepBand{8, 12}));
    EXPECT_TRUE(stored.isDefault);
    const RepStandard standard = toStandard(variant.standards.at(0), Id<Variant>(5));
    EXPECT_EQ(standard.variant, Id<Variant>(5));
    EXPECT_EQ(standard.leastTravelPercent, 90);
    EXPECT_EQ(standard.lowering, QStringLiteral("slow"));
    EXPECT_FALSE(standard.athlete);
}

TEST(StarterLibraryReader, RefusesAnUnknownMuscleAndNamesTheExercise)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"({"biceps": 1})", R"({"biceps": 1, "wing": 0.5})"),
                {"exercise “Arm curl”:", "“wing”"});
}

TEST(StarterLibraryReader, RefusesAnUnknownGripAndNamesTheVariant)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("grip": "supinated")", R"("grip": "sideways")"),
                {"exercise “Arm curl”, variant “bar”:", "“sideways”"});
}

TEST(StarterLibraryReader, RefusesAnUnknownChoiceAndListsTheKnownOnes)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("travel": "arc")", R"("travel": "loop")"),
                {"variant “bar”:", "“loop”", "straight, arc, body, stack"});
}

TEST(StarterLibraryReader, RefusesALoadWithoutAUnit)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("20 kg")", R"("20")"), {"variant “bar”:", "bar_mass"});
}

TEST(StarterLibraryReader, RefusesABarMassWhereNoBarIsLoaded)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("loading": "bar_total")", R"("loading": "stack")"),
                {"variant “bar”:", "bar mass"});
}

TEST(StarterLibraryReader, RefusesAFormatItDoesNotKnow)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("format": 1)", R"("format": 2)"), {"library file:", "Format 2"});
    expectNames(messageAfterSpoilingGyms(R"("format": 1)", R"("format": 3)"), {"gyms file:", "Format 3"});
}

TEST(StarterLibraryReader, RefusesAnUnknownKeyAndAMissingOne)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("body": "still")", R"("body": "still", "tempo": "slow")"),
                {"standard “strict”:", "“tempo”"});
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("body": "still",)", ""), {"standard “strict”:", "“body”"});
}

TEST(StarterLibraryReader, RefusesARepBandOutOfOrderOrNotWhole)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, "[8, 12]", "[12, 8]"), {"variant “bar”:", "band"});
    expectNames(messageAfterSpoiling(kSmallLibrary, "[8, 12]", "[8.5, 12]"), {"variant “bar”:", "band"});
}

TEST(StarterLibraryReader, RefusesAnExerciseWithoutATarget)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"({"biceps": 1})", R"({"biceps": 0.5})"),
                {"exercise “Arm curl”:", "target"});
}

TEST(StarterLibraryReader, RefusesAVariantOrExerciseWithoutExactlyOneDefault)
{
    expectNames(messageAfterSpoiling(kSmallLibrary, R"([8, 12], "default": true)", "[8, 12]"),
                {"exercise “Arm curl”:", "default", "variants"});
    expectNames(messageAfterSpoiling(kSmallLibrary, R"("least_travel": 90, "default": true)", R"("least_travel": 90)"),
                {"variant “bar”:", "default", "standards"});
}

TEST(StarterLibraryReader, RefusesANameThatStandsTwice)
{
    const QByteArray muscle = R"({"key": "biceps", "name": "Biceps"})";
    expectNames(messageAfterSpoiling(kSmallLibrary, muscle, muscle + "," + muscle), {"muscle 2:", "“biceps”", "twice"});
    const QByteArray shipped = shippedFile(QStringLiteral("starter.json"));
    expectNames(messageAfterSpoiling(shipped, R"("name": "Supported curl")", R"("name": "Arm curl")"),
                {"“Arm curl”", "twice"});
    expectNames(messageAfterSpoiling(shipped, R"("name": "straight bar, slight forward lean",)",
                                     R"("name": "straight bar, upright",)"),
                {"exercise “Arm curl”:", "“straight bar, upright”", "twice"});
    expectNames(messageAfterSpoiling(shipped, R"("name": "some body help")", R"("name": "strict")"),
                {"variant “straight bar, upright”:", "“strict”", "twice"});
}

TEST(StarterLibraryReader, RefusesTextThatIsNoJson)
{
    const auto read = readStarterLibrary("{\"format\": 1,", kNoGyms);
    ASSERT_FALSE(read);
    EXPECT_EQ(read.error().code, ErrorCode::Invalid);
    expectNames(read.error().what, {"library file:"});
}

TEST(StarterLibraryReader, RefusesAGymRowThatCannotBeLoaded)
{
    expectNames(messageAfterSpoilingGyms(R"("pairs": 2)", R"("pairs": 0)"), {"gym “Hall”:", "pair"});
    expectNames(messageAfterSpoilingGyms(R"("5 kg")", R"("5 stone")"), {"gym “Hall”, plate 1:", "“5 stone”"});
    expectNames(messageAfterSpoilingGyms(R"("step": "1 kg")", R"("step": "0 kg")"), {"gym “Hall”:", "“row”"});
    expectNames(messageAfterSpoilingGyms(R"({"plate": "5 kg", "pairs": 2})",
                                         R"({"plate": "5 kg", "pairs": 2}, {"plate": "5 kg", "pairs": 1})"),
                {"gym “Hall”, plate 2:", "twice"});
}

}  // namespace
}  // namespace steelyard
