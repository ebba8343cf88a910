// What is seen while the screen is locked: a field for the passphrase, and nothing of the book.
//
//   connect(cover, &LockCover::tried, lock, …);      cover->wait(seconds);      cover->say(tr("…"));
#pragma once

#include "core/care/passphrase.h"

#include <QtWidgets/QWidget>

#include <memory>

class QLabel;
class QPushButton;

namespace steelyard {

class PassphraseFields;

class LockCover final : public QWidget {
    Q_OBJECT

public:
    // `settingsFile`: where the lock's hash is kept, for who forgot the passphrase.
    explicit LockCover(const QString& settingsFile, QWidget* parent = nullptr);
    // Empties the fields and puts the keyboard there.
    void start();
    void say(const QString& words);
    // No try for now (a try is looked at, or the next has to wait).
    void setOpen(bool open);
    [[nodiscard]] bool isOpen() const;

Q_SIGNALS:
    void tried(const std::shared_ptr<steelyard::Passphrase>& passphrase);
    void triedTooShort();  // can't be the one, and counts like any other
    void quitRequested();

private:
    void attempt();
    QWidget* makeForgotten(const QString& settingsFile);

    PassphraseFields* m_fields;
    QPushButton* m_open;
    QLabel* m_words;
};

}  // namespace steelyard
