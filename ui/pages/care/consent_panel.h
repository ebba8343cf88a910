// What a lifter agreed to about their health: where it stands, the words, recording it, and taking it back.
#pragma once

#include "core/care/health_consent.h"

#include <QtWidgets/QGroupBox>

class QLabel;
class QLineEdit;
class QPushButton;

namespace steelyard {

class ConsentPanel final : public QGroupBox {
    Q_OBJECT

public:
    explicit ConsentPanel(QWidget* parent = nullptr);
    void show(const Row<Athlete>& athlete, const HealthEntries& kept);
    void setNobody();

Q_SIGNALS:
    void given(const QString& note);
    // The second press: the first one says what would go.
    void withdrawn();

private:
    void askOrWithdraw();

    HealthEntries m_kept;
    QLabel* m_state;
    QLabel* m_words;
    QLineEdit* m_note;
    QPushButton* m_give;
    QPushButton* m_withdraw;
    bool m_asked = false;
};

}  // namespace steelyard
