// "Learn from the roster": fits the readings' numbers in the background, tells the book's listeners, and says what came of
// it.
//
//   m_learning = learnFromRoster(*m_context, m_view, [this](const QString& text) { m_status->say(text); });
//
// Nothing is said after `owner` died. Not an edit: nothing to undo.
#pragma once

#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtCore/QString>

#include <functional>

namespace steelyard {

JobHandle learnFromRoster(const UiContext& context, QObject* owner, std::function<void(const QString&)> say);

}  // namespace steelyard
