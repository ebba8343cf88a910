// Something sealed into a file of the coach's choice: passphrase twice, its strength, and that there is no way back.
//
//   auto* panel = new SealPanel(context, sealedCopyOfBook(context), this);
//   auto* panel = new SealPanel(context, {title, fileName, {}, sealsARecord}, this);
//   panel->takeFocus();
//
#pragma once

#include "ui/shell/context.h"
#include "ui/jobs/job.h"

#include <QtWidgets/QWidget>

#include <functional>

class QLabel;
class QPushButton;

namespace steelyard {

class PassphraseFields;
class Passphrase;

class SealPanel final : public QWidget {
    Q_OBJECT

public:
    struct Work {
        QString title;
        QString fileName;  // proposed, without a folder
        // Gets ready what is to be sealed, and gives its path; absent: nothing needs to be.
        std::function<void(QObject* receiver, std::function<void(const Result<QString>&)> then)> prepare;
        // From a worker thread.
        std::function<Result<void>(const QString& prepared, const QString& to, const Passphrase&, const Progress&)>
            seal;
        bool canRemember = false;  // the keychain remembers one passphrase of a book
    };
    SealPanel(const UiContext& context, Work work, QWidget* parent = nullptr);
    ~SealPanel() override;
    void takeFocus();
    [[nodiscard]] QString said() const;

Q_SIGNALS:
    void left();

private:
    void chooseFile();
    void begin(const QString& to, std::shared_ptr<const Passphrase> passphrase);
    void seal(const Result<QString>& prepared, const QString& to, const std::shared_ptr<const Passphrase>& passphrase);
    void remember(const Passphrase& passphrase, const QString& sealed);
    void end(const QString& text, bool alarming);

    UiContext m_context;
    Work m_work;
    JobHandle m_job;
    bool m_busy = false;
    bool m_remember = false;
    PassphraseFields* m_passphrase;
    QLabel* m_said;
    QPushButton* m_seal;
};

// A backup made for it on the book's own shelf is sealed, so that nothing stands in clear where the sealed file goes.
[[nodiscard]] SealPanel::Work sealedCopyOfBook(const UiContext& context);

}  // namespace steelyard
