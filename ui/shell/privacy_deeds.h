// What the window does about what leaves it and what is remembered outside the book.
//
//   saveDiagnosis(prompter, this, text, say);      // asks where; the text is core/care/diagnosis.h's
//   forgetPassphrase(context, this, say);          // of this book's sealed backups, in the system's keychain
//
// `say` is the status line.
#pragma once

#include "ui/shell/context.h"

#include <QtCore/QString>

#include <functional>

class QWidget;

namespace steelyard {

using SayDone = std::function<void(const QString&)>;

// Kept in the settings once a passphrase was remembered: only then is the keychain asked, which may ask its owner something.
inline const QString kKeychainInUse = QStringLiteral("keychain/remembers");

void saveDiagnosis(Prompter& prompter, QWidget* parent, const QString& text, const SayDone& say);
void forgetPassphrase(const UiContext& context, QWidget* parent, const SayDone& say);

}  // namespace steelyard
