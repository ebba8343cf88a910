// A file that is there whole or not at all: written aside, put in place when every byte is on the disk.
//
//   STEELYARD_CHECK(writeWhole(path, document));
//
// Failures: Storage, with what to check; what was there before stays.
#pragma once

#include "core/base/result.h"

#include <QtCore/QByteArray>

namespace steelyard {

[[nodiscard]] Result<void> writeWhole(const QString& path, const QByteArray& bytes);

}  // namespace steelyard
