// Where a passphrase is typed: a new one twice, with a hint of its strength, words on offer and the warning that there is no
// way back; a known one once. Part of a page; it never asks in a box.
//
//   m_passphrase = new PassphraseFields({.is = PassphraseFields::New, .warning = tr("…"), .canRemember = true}, this);
//   connect(m_passphrase, &PassphraseFields::entered, this, &SealPage::seal);           // Enter in the last field
//   auto passphrase = m_passphrase->take();                      // Result<Passphrase>; the problem already stands below
//
// What is typed can be shown by a tick, is never copied, and is wiped from the fields by take() and clear().
// `canRemember` offers to remember it in this computer's keychain, unticked to begin with: the page asks wantsRemembering() and
// calls the SecretStore (core/care/secret_store.h) itself.
#pragma once

#include "core/care/passphrase.h"

#include <QtWidgets/QWidget>

class QCheckBox;
class QFormLayout;
class QLabel;
class QLineEdit;

namespace steelyard {

class PassphraseFields final : public QWidget {
    Q_OBJECT

public:
    enum Kind { New, Known };
    struct Options {
        Kind is = New;
        QString warning;  // what is lost without it; empty: none
        QString label;    // "Passphrase of the lock"; empty: "Passphrase"
        bool canRemember = false;
    };
    explicit PassphraseFields(const Options& options, QWidget* parent = nullptr);
    ~PassphraseFields() override;

    // Nothing is typed: not even begun.
    [[nodiscard]] bool isEmpty() const;
    // Says in place what is wrong, and puts the keyboard there.
    [[nodiscard]] Result<Passphrase> take();
    [[nodiscard]] bool wantsRemembering() const;
    // A passphrase that the keychain remembered: as if it had been typed.
    void fill(const QString& remembered);
    void say(const QString& problem);
    void clear();
    void takeFocus();

Q_SIGNALS:
    void entered();
    void edited();

private:
    QLineEdit* addField(const QString& label);
    void addNewParts();
    void offerWords();
    void showStrength();
    void showLetters(bool shown);

    Options m_options;
    QFormLayout* m_form;
    QLineEdit* m_first;
    QLineEdit* m_second = nullptr;
    QCheckBox* m_shown;
    QLabel* m_strength = nullptr;
    QCheckBox* m_remember = nullptr;
    QLabel* m_problem;
};

}  // namespace steelyard
