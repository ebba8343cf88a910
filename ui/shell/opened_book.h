// A book that was just opened: what the line at the foot says of it, and a look over its pages.
//
//   m_status->say(standingOf(*book));
//   lookOver(*m_jobs, this, path, [this](const Error& error) { ... });
#pragma once

#include "core/base/result.h"

#include <QtCore/QString>

#include <functional>

class QObject;

namespace steelyard {

class Book;
class JobRunner;

// Where it lies, if that can harm it; else whether it can be written.
[[nodiscard]] QString standingOf(const Book& book);

// A damaged page is only met when what stands on it is wanted. Found now, it has not been written over. `damaged` is called in the
// owner's thread when the file is, and never after the owner died.
void lookOver(JobRunner& jobs, QObject* owner, const QString& path, std::function<void(const Error&)> damaged);

}  // namespace steelyard
