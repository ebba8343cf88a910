// Identity of a stored row, typed by what the row holds.
//
//   Id<Athlete> who{7};            // made by storage only
//   Row<Athlete> row = ...;        // id + UUID + value
//
// Ids of different kinds don't compare and don't convert. There is no "none" id: absent is std::optional<Id<T>>.
// An id is valid within one book; the UUID is what survives export and import.
#pragma once

#include <QtCore/QUuid>

#include <compare>
#include <cstdint>
#include <functional>

namespace steelyard {

template <class Entity>
class Id {
public:
    explicit constexpr Id(std::int64_t value) : m_value(value) {}
    [[nodiscard]] constexpr std::int64_t value() const { return m_value; }
    friend constexpr auto operator<=>(Id, Id) = default;

private:
    std::int64_t m_value;
};

// A value as it is stored. A draft (T) and a stored value (Row<T>) differ by type.
template <class Entity>
struct Row {
    Id<Entity> id;
    QUuid uuid;
    Entity value;
    friend bool operator==(const Row&, const Row&) = default;
};

}  // namespace steelyard

template <class Entity>
struct std::hash<steelyard::Id<Entity>> {
    std::size_t operator()(steelyard::Id<Entity> id) const noexcept { return std::hash<std::int64_t>{}(id.value()); }
};
