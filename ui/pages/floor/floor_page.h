// The gym floor: who trains on a day, their sheets as they will be on paper, print or PDF.
//
// Sheets are made in the background from a connection of its own. Expected lifters are ticked; the others can be ticked
// too. Actions: floor.print, floor.pdf, floor.today, floor.previousDay, floor.nextDay.
#pragma once

#include "core/book/day_sheets.h"
#include "ui/jobs/job.h"
#include "ui/print/sheet_layout.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QListWidget;
class QPushButton;

namespace steelyard {

class SheetPreview;

class FloorPage final : public Page {
    Q_OBJECT

public:
    explicit FloorPage(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] QString key() const override { return QStringLiteral("floor"); }
    [[nodiscard]] QString title() const override { return tr("Floor"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

    [[nodiscard]] bool isSettled() const { return !m_job.isRunning() && !m_stale; }
    [[nodiscard]] std::vector<SessionSheet> chosenSheets() const;
    [[nodiscard]] PaperSize paper() const;

protected:
    void showEvent(QShowEvent* event) override;

private:
    void build();
    [[nodiscard]] QWidget* makeSide();
    [[nodiscard]] QPushButton* makeButton(const QString& action, const QString& text, const QString& keys);
    void makeSheets();
    void take(Result<std::vector<DaySheet>> sheets);
    void fillList();
    void showPreview();
    void say(const QString& text);
    void savePdf();
    void print();

    UiContext m_context;
    std::vector<DaySheet> m_sheets;
    std::optional<Id<Athlete>> m_athlete;
    JobHandle m_job;
    bool m_stale = true;  // what is shown is not of the day asked for, or of an older book

    QDateEdit* m_date = nullptr;
    QComboBox* m_paper = nullptr;
    QCheckBox* m_others = nullptr;
    QListWidget* m_list = nullptr;
    QLabel* m_line = nullptr;
    SheetPreview* m_preview = nullptr;
};

}  // namespace steelyard
