// One lifter's data: what they agreed to, handing their record over, erasing it; and whose record may no longer be needed.
//
//   auto* page = new LifterDataPage(context, {chosenLifter, {}, copies, erase}, parent);
//
// Consents are edits that can be undone. Withdrawing and erasing can't, and are done by the shell, which closes the book for it.
// Escape leaves.
#pragma once

#include "core/edits/change_hub.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"
#include "ui/shell/lifter_erasing.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QLabel;
class QPushButton;
class QStackedWidget;

namespace steelyard {

class ConsentPanel;
class ErasePanel;
class QuietLifters;
class SealPanel;

class LifterDataPage final : public QWidget {
    Q_OBJECT

public:
    LifterDataPage(const UiContext& context, LifterDataStart start, QWidget* parent = nullptr);
    void takeFocus();
    void choose(Id<Athlete> athlete);
    [[nodiscard]] std::optional<Id<Athlete>> chosen() const;

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    [[nodiscard]] QLayout* makeTop();
    [[nodiscard]] QWidget* makeHandOver();
    [[nodiscard]] QLayout* makeBottom();
    void fillLifters();
    void readAgain();
    void showLifter();
    void give(const QString& note);
    void erase(bool healthOnly);
    void chooseFolder();
    void handOver(const QString& folder);
    void beginSealing();
    void endSealing();
    void say(const QString& text);

    UiContext m_context;
    LifterDataStart m_start;
    JobHandle m_job;
    ChangeHub::Subscription m_subscription;
    QComboBox* m_lifters = nullptr;
    ConsentPanel* m_consent = nullptr;
    QPushButton* m_handOver = nullptr;
    QPushButton* m_sealed = nullptr;
    QStackedWidget* m_left = nullptr;  // the page, over it the sealing of a record
    SealPanel* m_seal = nullptr;       // while one is being sealed
    ErasePanel* m_erase = nullptr;
    QuietLifters* m_quiet = nullptr;
    QLabel* m_said = nullptr;
};

}  // namespace steelyard
