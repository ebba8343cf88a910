// Muscles, exercises, variants, grips and rep standards. They are few: readers take the whole library as a value.
#pragma once

#include "core/domain/library.h"
#include "core/storage/transaction.h"

namespace steelyard {

class LibraryRepository {
public:
    explicit LibraryRepository(Database& database) : m_database(database) {}

    [[nodiscard]] Result<Library> read() const;
    [[nodiscard]] Result<Id<Muscle>> insert(Transaction&, const Muscle&) const;
    [[nodiscard]] Result<Id<Exercise>> insert(Transaction&, const Exercise&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<Id<Variant>> insert(Transaction&, const Variant&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<Id<Grip>> insert(Transaction&, const Grip&, QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<Id<RepStandard>> insert(Transaction&, const RepStandard&,
                                                 QUuid uuid = QUuid::createUuid()) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Exercise>, const Exercise&) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Variant>, const Variant&) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<Grip>, const Grip&) const;
    [[nodiscard]] Result<void> replace(Transaction&, Id<RepStandard>, const RepStandard&) const;

private:
    Database& m_database;
};

}  // namespace steelyard
