#include "ui/shell/privacy_deeds.h"

#include "core/book/book.h"
#include "core/care/secret_store.h"
#include "ui/print/whole_file.h"
#include "ui/prompt/prompter.h"

#include <QtCore/QCoreApplication>
#include <QtWidgets/QWidget>

namespace steelyard {
namespace {

struct PrivacyText {
    Q_DECLARE_TR_FUNCTIONS(PrivacyText)
};

}  // namespace

void saveDiagnosis(Prompter& prompter, QWidget* parent, const QString& text, const SayDone& say)
{
    prompter.chooseFileToSave(
        parent,
        {PrivacyText::tr("Save a diagnosis file"), QStringLiteral("steelyard-diagnosis.txt"),
         PrivacyText::tr("Text (*.txt)"), QStringLiteral("txt")},
        [&prompter, parent, text, say](const QString& path) {
            if (const auto written = writeWhole(path, text.toUtf8()); !written)
                prompter.tellError(parent, PrivacyText::tr("The diagnosis file could not be written"), written.error());
            else
                say(
                    PrivacyText::tr("The diagnosis file holds versions, counts and the program's log: no names, and "
                                    "nothing that was typed. Read it before you give it away."));
        });
}

void forgetPassphrase(const UiContext& context, QWidget* parent, const SayDone& say)
{
    context.secrets->forget(
        secretKeyOfBook(context.book.path()), parent,
        [&prompter = context.prompter, parent, say](const Result<void>& gone) {
            if (gone)
                say(PrivacyText::tr("This computer's keychain holds no passphrase for this book's backups any more."));
            else
                prompter.tellError(parent, PrivacyText::tr("The keychain may still hold the passphrase"), gone.error());
        });
}

}  // namespace steelyard
