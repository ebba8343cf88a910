// The gym floor: who trains on a day, their sheets as they will be on paper, print or PDF, and keying what was written on them.
//
// Sheets are made in the background from a connection of its own. Expected lifters are ticked; the others can be ticked
// too, and somebody without a sheet can be keyed. While a session is keyed no sheets are made: what is keyed changes none of
// that day. The number on a sheet, scanned or typed, opens its keying on its day. Actions: floor.print, floor.pdf, floor.layout,
// floor.today, floor.previousDay, floor.nextDay, floor.code, floor.key and floor.key.*, floor.rack.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/floor/floor_papers.h"
#include "ui/shell/page.h"

#include <QtCore/QPointer>

class QCheckBox;
class QComboBox;
class QDateEdit;
class QLabel;
class QListWidget;
class QPushButton;
class QStackedWidget;

namespace steelyard {

class KeyingView;
class RackView;
class SheetField;
class SheetPreview;

class FloorPage final : public Page {
    Q_OBJECT

public:
    explicit FloorPage(const UiContext& context, QWidget* parent = nullptr);
    ~FloorPage() override;

    [[nodiscard]] QString key() const override { return QStringLiteral("floor"); }
    [[nodiscard]] QString title() const override { return tr("Floor"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void bookChanged(const Changes& changes) override;
    void keySession(QDate day) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

    [[nodiscard]] bool isSettled() const { return !m_job.isRunning() && (!m_stale || isKeying()); }
    [[nodiscard]] bool isKeying() const;
    [[nodiscard]] KeyingView* keying() const { return m_keying; }
    [[nodiscard]] std::vector<SessionSheet> chosenSheets() const;
    [[nodiscard]] PaperSize paper() const;
    [[nodiscard]] PaperLayout layoutOfPaper() const;
    [[nodiscard]] RackView* rack() const;

protected:
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;

private:
    // Somebody of the list: with a sheet that can be printed, or without.
    struct DayRow {
        Id<Athlete> athlete;
        QString name;
        std::optional<std::size_t> sheet;
        int keyed = 0;  // sets in the book
    };

    void build();
    [[nodiscard]] QWidget* makeSide();
    [[nodiscard]] QPushButton* makeButton(const QString& action, const QString& text, const QString& keys);
    void makeSheets();
    void take(Result<FloorDay> day);
    void makeRows(const std::map<Id<Athlete>, int>& keyed);
    void fillList();
    [[nodiscard]] QString rowText(const DayRow& row) const;
    [[nodiscard]] const DayRow* currentRow() const;
    void startKeying();
    void startKeyingOf(Id<Athlete> athlete);
    // As soon as the sheets of the day are there.
    void keyOnDay(Id<Athlete> athlete, QDate day);
    // The sheet whose number was typed or scanned.
    [[nodiscard]] Result<void> openSheet(const QString& typed);
    void stopKeying();
    void showPreview();
    void say(const QString& text);
    void openRack();
    [[nodiscard]] FloorPaper paperOf(std::vector<SessionSheet> sheets) const;
    void print(bool intoPdf);

    UiContext m_context;
    std::vector<DaySheet> m_sheets;
    std::vector<DaySheet> m_week;  // of everybody, where the layout is the week
    std::vector<Row<Gym>> m_gyms;
    std::vector<DayRow> m_rows;  // as in the list
    std::optional<Id<Athlete>> m_athlete;
    std::optional<Id<Athlete>> m_toKey;  // as soon as the sheets of the day are there
    JobHandle m_job;
    bool m_stale = true;  // what is shown is not of the day asked for, or of an older book

    QDateEdit* m_date = nullptr;
    QComboBox* m_paper = nullptr;
    QComboBox* m_layout = nullptr;
    SheetField* m_field = nullptr;
    QCheckBox* m_others = nullptr;
    QListWidget* m_list = nullptr;
    QLabel* m_line = nullptr;
    SheetPreview* m_preview = nullptr;
    QStackedWidget* m_layers = nullptr;
    KeyingView* m_keying = nullptr;
    QPointer<RackView> m_rack;  // lives in the window, over all of it
};

}  // namespace steelyard
