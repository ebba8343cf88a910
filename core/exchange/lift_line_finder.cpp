#include "core/exchange/lift_line_finder.h"

#include "core/base/text.h"
#include "core/storage/athlete_repository.h"

#include <QtCore/QCoreApplication>
#include <QtCore/QStringBuilder>

namespace steelyard {
namespace {

struct LiftLineFinderText {
    Q_DECLARE_TR_FUNCTIONS(LiftLineFinderText)
};

// No name holds a line break, so this never meets a searchKey.
QString exactKey(const QString& name)
{
    return u'\n' + name;
}

// A name that folds away to nothing (combining marks alone) must not be taken for "blank: the default".
QString foldedKey(const QString& name)
{
    const QString folded = searchKey(name);
    return folded.isEmpty() ? exactKey(name) : folded;
}

}  // namespace

Result<void> LiftLineFinder::readBook()
{
    Database& database = m_transaction.database();
    STEELYARD_TRY(const auto athletes, AthleteRepository(database).all());
    for (const Row<Athlete>& row : athletes) {
        m_athletes.emplace(row.value.name, row.id);
        m_units.emplace(row.id, row.value.unit);
        STEELYARD_TRY(const auto lines, LogbookRepository(database).lines(row.id));
        for (const Row<LiftLine>& line : lines)
            m_lines.emplace(LineKey(line.value.athlete, line.value.variant, line.value.grip, line.value.standard),
                            line.id);
    }
    STEELYARD_TRY(const Library library, LibraryRepository(database).read());
    for (const auto& row : library.exercises) remember(row);
    for (const auto& row : library.grips) remember(row);
    for (const auto& row : library.variants) remember(row);
    for (const auto& row : library.standards) remember(row);
    return {};
}

void LiftLineFinder::remember(const Row<Exercise>& row)
{
    m_exercises.emplace(exactKey(row.value.name), row.id);
    m_exercises.emplace(foldedKey(row.value.name), row.id);
}

void LiftLineFinder::remember(const Row<Grip>& row)
{
    m_grips.emplace(exactKey(row.value.name), row.id);
    m_grips.emplace(foldedKey(row.value.name), row.id);
}

void LiftLineFinder::remember(const Row<Variant>& row)
{
    m_variants.emplace(std::pair(row.value.exercise, exactKey(row.value.name)), row.id);
    m_variants.emplace(std::pair(row.value.exercise, foldedKey(row.value.name)), row.id);
    if (row.value.isDefault) m_variants.emplace(std::pair(row.value.exercise, QString()), row.id);
    if (row.value.usualGrip) m_usualGrips.emplace(row.id, *row.value.usualGrip);
}

void LiftLineFinder::remember(const Row<RepStandard>& row)
{
    const RepStandard& standard = row.value;
    m_standards.emplace(StandardKey(standard.variant, standard.athlete, exactKey(standard.name)), row.id);
    m_standards.emplace(StandardKey(standard.variant, standard.athlete, foldedKey(standard.name)), row.id);
    if (standard.isDefault) m_standards.emplace(StandardKey(standard.variant, standard.athlete, QString()), row.id);
}

Result<Row<LiftLine>> LiftLineFinder::find(const LogbookRow& row)
{
    const QString names = row.athlete % u'\n' % row.exercise % u'\n' % row.variant % u'\n' % row.grip % u'\n'
                          % row.standard;  // no name holds a line break
    if (const auto known = m_found.find(names); known != m_found.end()) return known->second;
    STEELYARD_TRY(const LiftLine line, readNames(row));
    STEELYARD_TRY(const auto id, lineId(line));
    return m_found.emplace(names, Row<LiftLine>{id, QUuid(), line}).first->second;
}

Result<LiftLine> LiftLineFinder::readNames(const LogbookRow& row)
{
    STEELYARD_TRY(const auto athleteId, athlete(row));
    STEELYARD_TRY(const auto exerciseId, exercise(row.exercise));
    STEELYARD_TRY(const auto variantId, variant(exerciseId, row.variant));
    STEELYARD_TRY(const auto gripId, grip(variantId, row.grip));
    STEELYARD_TRY(const auto standardId, standard(variantId, athleteId, row.standard));
    return LiftLine{athleteId, variantId, gripId, standardId};
}

Result<Id<LiftLine>> LiftLineFinder::lineId(const LiftLine& line)
{
    const LineKey key(line.athlete, line.variant, line.grip, line.standard);
    if (const auto known = m_lines.find(key); known != m_lines.end()) return known->second;
    if (m_report.newLines >= kMostNewLines)
        return fail(
            ErrorCode::Invalid,
            LiftLineFinderText::tr("There are more than %1 new lift lines in this file, so one of its columns is "
                                   "hardly the variant, grip or standard that it was taken for. Choose another.")
                .arg(kMostNewLines));
    STEELYARD_TRY(const auto id, LogbookRepository(m_transaction.database()).line(m_transaction, line));
    ++m_report.newLines;
    return m_lines.emplace(key, id).first->second;
}

Result<Id<Athlete>> LiftLineFinder::athlete(const LogbookRow& row)
{
    if (const auto known = m_athletes.find(row.athlete); known != m_athletes.end()) return known->second;
    Athlete made;
    made.name = row.athlete;
    made.unit = row.set.load.unit();
    STEELYARD_TRY(const auto id, AthleteRepository(m_transaction.database()).insert(m_transaction, made));
    m_report.newAthletes.append(made.name);
    m_units.emplace(id, made.unit);
    return m_athletes.emplace(made.name, id).first->second;
}

Result<Id<Exercise>> LiftLineFinder::exercise(const QString& name)
{
    for (const QString& key : {exactKey(name), foldedKey(name)})
        if (const auto known = m_exercises.find(key); known != m_exercises.end()) return known->second;
    const Exercise made{name, {}, false};
    STEELYARD_TRY(const auto id, LibraryRepository(m_transaction.database()).insert(m_transaction, made));
    m_report.newExercises.append(name);
    remember(Row<Exercise>{id, QUuid(), made});
    return id;
}

Result<Id<Variant>> LiftLineFinder::variant(Id<Exercise> exerciseId, const QString& name)
{
    // Without a default, blank means the variant "as usual", which an earlier row may have named.
    if (name.isEmpty())
        if (const auto usual = m_variants.find({exerciseId, QString()}); usual != m_variants.end())
            return usual->second;
    Variant made{.exercise = exerciseId};
    made.name = name.isEmpty() ? asUsualName() : name;
    for (const QString& key : {exactKey(made.name), foldedKey(made.name)})
        if (const auto known = m_variants.find({exerciseId, key}); known != m_variants.end()) return known->second;
    // What a row without a variant means is the exercise's default from now on, unless the exercise has one.
    made.isDefault = name.isEmpty();
    STEELYARD_TRY(const auto id, LibraryRepository(m_transaction.database()).insert(m_transaction, made));
    ++m_report.newVariants;
    remember(Row<Variant>{id, QUuid(), made});
    return id;
}

Result<Id<Grip>> LiftLineFinder::grip(Id<Variant> variantId, const QString& name)
{
    if (name.isEmpty())
        if (const auto usual = m_usualGrips.find(variantId); usual != m_usualGrips.end()) return usual->second;
    const Grip made{name.isEmpty() ? asUsualName() : name, {}, {}, {}};
    for (const QString& key : {exactKey(made.name), foldedKey(made.name)})
        if (const auto known = m_grips.find(key); known != m_grips.end()) return known->second;
    STEELYARD_TRY(const auto id, LibraryRepository(m_transaction.database()).insert(m_transaction, made));
    ++m_report.newGrips;
    remember(Row<Grip>{id, QUuid(), made});
    return id;
}

std::optional<Id<RepStandard>> LiftLineFinder::knownStandard(Id<Variant> variantId, Id<Athlete> athleteId,
                                                             const QString& key) const
{
    // What was agreed with this athlete comes before what holds for everybody.
    for (const std::optional<Id<Athlete>>& owner : {std::optional(athleteId), std::optional<Id<Athlete>>()})
        if (const auto known = m_standards.find(StandardKey(variantId, owner, key)); known != m_standards.end())
            return known->second;
    return std::nullopt;
}

Result<Id<RepStandard>> LiftLineFinder::standard(Id<Variant> variantId, Id<Athlete> athleteId, const QString& name)
{
    if (name.isEmpty())
        if (const auto usual = knownStandard(variantId, athleteId, QString())) return *usual;
    RepStandard made{.variant = variantId};
    made.name = name.isEmpty() ? asUsualName() : name;
    for (const QString& key : {exactKey(made.name), foldedKey(made.name)})
        if (const auto known = knownStandard(variantId, athleteId, key)) return *known;
    made.isDefault = name.isEmpty();
    STEELYARD_TRY(const auto id, LibraryRepository(m_transaction.database()).insert(m_transaction, made));
    ++m_report.newStandards;
    remember(Row<RepStandard>{id, QUuid(), made});
    return id;
}

}  // namespace steelyard
