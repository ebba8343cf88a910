// The backups of the opened book: which there are and whether they still are what they were, one more now, a look into one, restoring
// it, a second folder, a sealed copy.
//
//   auto* page = new BackupsPage(context, parent);
//   connect(page, &BackupsPage::restoreRequested, ...);      // the coach agreed: close the book and put it in
//
// Keys: up and down choose, Enter looks into the chosen one, Escape leaves. Checksums are checked in the background.
#pragma once

#include "core/care/book_restore.h"
#include "ui/jobs/job.h"
#include "ui/shell/context.h"

#include <QtWidgets/QWidget>

class QLabel;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace steelyard {

class BackupsModel;
class ElidedLabel;
class RestorePanel;
class SealPanel;

class BackupsPage final : public QWidget {
    Q_OBJECT

public:
    explicit BackupsPage(const UiContext& context, QWidget* parent = nullptr);
    ~BackupsPage() override;
    void takeFocus();
    [[nodiscard]] bool isSettled() const;

Q_SIGNALS:
    void restoreRequested(const steelyard::RestoreWish& wish);
    void closed();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] QTableView* makeTable();
    [[nodiscard]] QLayout* makeButtons();
    [[nodiscard]] QLayout* makeSecond();
    void refill();
    void checkAll();
    void chosenChanged();
    void keepNow();
    void chooseFile();
    void chooseSecond();
    void showSecond();
    void showSealing(bool sealing);
    void leave();
    void askToRestore(const RestoreWish& wish, const Rehearsal& seen);

    UiContext m_context;
    BackupsModel* m_model;
    JobHandle m_check;
    QTableView* m_table;
    QLabel* m_empty;
    bool m_filling = false;  // the list, not the coach, chooses
    QStackedWidget* m_list;
    QStackedWidget* m_side;
    RestorePanel* m_restore;
    SealPanel* m_seal;
    QPushButton* m_now = nullptr;
    ElidedLabel* m_second = nullptr;
    QPushButton* m_noSecond = nullptr;
    QLabel* m_said = nullptr;
};

}  // namespace steelyard
