// A set as one JSON object, with the names of the logbook CSV, and its repetitions as a list. Used where a set is kept aside whole;
// a removed one has its repetitions under "repetitions".
#pragma once

#include "core/domain/repetition.h"

#include <QtCore/QJsonArray>
#include <QtCore/QJsonObject>

namespace steelyard {

[[nodiscard]] QJsonObject toJson(const SetEntry&);
[[nodiscard]] std::optional<SetEntry> setFromJson(const QJsonObject&);

[[nodiscard]] QJsonArray toJson(std::span<const Repetition>);
// Absent when one of them can't be read, or they make no sound whole.
[[nodiscard]] std::optional<std::vector<Repetition>> repetitionsFromJson(const QJsonArray&);

}  // namespace steelyard
