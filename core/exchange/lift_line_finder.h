// Finds, or makes, what the names in a logbook row mean: athlete, exercise, variant, grip, rep standard, and with them the lift
// line. Everything is looked up in memory; only what is new is written.
#pragma once

#include "core/domain/library.h"
#include "core/exchange/logbook_import.h"
#include "core/storage/library_repository.h"
#include "core/storage/logbook_repository.h"

#include <tuple>
#include <unordered_map>

namespace steelyard {

// Of one import: a hundred for each of two hundred lifters. (Our convention.)
inline constexpr int kMostNewLines = 20'000;

class LiftLineFinder {
public:
    LiftLineFinder(Transaction& transaction, ImportReport& report) : m_transaction(transaction), m_report(report) {}

    [[nodiscard]] Result<void> readBook();
    [[nodiscard]] Result<Row<LiftLine>> find(const LogbookRow&);
    [[nodiscard]] MassUnit unitOf(Id<Athlete> athlete) const { return m_units.at(athlete); }

private:
    [[nodiscard]] Result<LiftLine> readNames(const LogbookRow&);
    [[nodiscard]] Result<Id<LiftLine>> lineId(const LiftLine&);
    [[nodiscard]] Result<Id<Athlete>> athlete(const LogbookRow&);
    [[nodiscard]] Result<Id<Exercise>> exercise(const QString& name);
    [[nodiscard]] Result<Id<Variant>> variant(Id<Exercise>, const QString& name);
    [[nodiscard]] Result<Id<Grip>> grip(Id<Variant>, const QString& name);
    [[nodiscard]] Result<Id<RepStandard>> standard(Id<Variant>, Id<Athlete>, const QString& name);
    void remember(const Row<Exercise>&);
    void remember(const Row<Grip>&);
    void remember(const Row<Variant>&);
    void remember(const Row<RepStandard>&);

    using LineKey = std::tuple<Id<Athlete>, Id<Variant>, Id<Grip>, Id<RepStandard>>;
    using StandardKey = std::tuple<Id<Variant>, std::optional<Id<Athlete>>, QString>;
    [[nodiscard]] std::optional<Id<RepStandard>> knownStandard(Id<Variant>, Id<Athlete>, const QString& key) const;

    Transaction& m_transaction;
    ImportReport& m_report;
    std::map<QString, Id<Athlete>> m_athletes;
    std::map<Id<Athlete>, MassUnit> m_units;
    // By name as it stands (exactKey) and by searchKey, so that a book with both “Ubung” and “Übung” keeps them apart.
    std::map<QString, Id<Exercise>> m_exercises;
    std::map<std::pair<Id<Exercise>, QString>, Id<Variant>> m_variants;  // "" = the default
    std::map<QString, Id<Grip>> m_grips;
    std::map<Id<Variant>, Id<Grip>> m_usualGrips;
    std::map<StandardKey, Id<RepStandard>> m_standards;  // "" = the default
    std::map<LineKey, Id<LiftLine>> m_lines;
    // The five names of a row as they stand, and what they turned out to mean. Once found or made, that stays.
    std::unordered_map<QString, Row<LiftLine>> m_found;
};

}  // namespace steelyard
