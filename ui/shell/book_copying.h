// Saves a whole copy of the opened book where the coach chooses, also when its own file was moved or deleted meanwhile.
//
//   saveCopy(context, view, [this](const QString& text) { m_status->say(text); });
//
// Nothing is said after `owner` died. What failed is told by the prompter.
#pragma once

#include <QtCore/QString>

#include <functional>

class QWidget;

namespace steelyard {

struct UiContext;

void saveCopy(const UiContext& context, QWidget* owner, std::function<void(const QString&)> say);

}  // namespace steelyard
