// A sealed copy of the book in a file of the coach's choice: passphrase twice, its strength, and that there is no way back.
//
//   panel->takeFocus();
//
// What is sealed is a backup made for it on the book's own shelf, so that nothing stands in clear where the sealed file goes.
#pragma once

#include "ui/shell/context.h"
#include "ui/jobs/job.h"

#include <QtWidgets/QWidget>

class QLabel;
class QPushButton;

namespace steelyard {

class PassphraseFields;
class Passphrase;
struct Backup;

class SealPanel final : public QWidget {
    Q_OBJECT

public:
    explicit SealPanel(const UiContext& context, QWidget* parent = nullptr);
    ~SealPanel() override;
    void takeFocus();
    [[nodiscard]] QString said() const;

Q_SIGNALS:
    void left();

private:
    void chooseFile();
    void begin(const QString& to, std::shared_ptr<const Passphrase> passphrase);
    void seal(const Result<Backup>& backup, const QString& to, const std::shared_ptr<const Passphrase>& passphrase);
    void remember(const Passphrase& passphrase, const QString& sealed);
    void end(const QString& text, bool alarming);

    UiContext m_context;
    JobHandle m_job;
    bool m_busy = false;
    bool m_remember = false;
    PassphraseFields* m_passphrase;
    QLabel* m_said;
    QPushButton* m_seal;
};

}  // namespace steelyard
