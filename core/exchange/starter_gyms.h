// The gyms file of the starter data; see starter_library.h, whose reader calls this.
//
//   STEELYARD_TRY(const std::vector<Gym> gyms, readStarterGyms(json));
//
// Failures: ErrorCode::Invalid with the place ("gym “Quayside Barbell Club”, plate 3: ...").
#pragma once

#include "core/base/result.h"
#include "core/domain/gym.h"

#include <QtCore/QByteArray>

#include <vector>

namespace steelyard {

[[nodiscard]] Result<std::vector<Gym>> readStarterGyms(const QByteArray& json);

}  // namespace steelyard
