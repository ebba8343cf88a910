// What the window does about what leaves it and what is remembered outside the book.
//
//   saveDiagnosis(prompter, this, text, say);      // asks where; the text is core/care/diagnosis.h's
//   forgetPassphrase(secrets, context, this, say);          // of this book's sealed backups, in the system's keychain
//
// `say` is the status line.
#pragma once

#include "ui/shell/context.h"

#include <QtCore/QString>

#include <functional>

class QWidget;

namespace steelyard {

class SecretStore;

using SayDone = std::function<void(const QString&)>;

void saveDiagnosis(Prompter& prompter, QWidget* parent, const QString& text, const SayDone& say);
void forgetPassphrase(SecretStore& secrets, const UiContext& context, QWidget* parent, const SayDone& say);

}  // namespace steelyard
