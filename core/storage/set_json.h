// A set as one JSON object, with the names of the logbook CSV. Used where a set is kept aside whole.
#pragma once

#include "core/domain/logbook.h"

#include <QtCore/QJsonObject>

namespace steelyard {

[[nodiscard]] QJsonObject toJson(const SetEntry&);
[[nodiscard]] std::optional<SetEntry> setFromJson(const QJsonObject&);

}  // namespace steelyard
