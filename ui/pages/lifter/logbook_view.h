// The lifter's logbook: a calendar, the sessions that a search has found, and the chosen one with its sets and ratings, which
// are typed in place. In place of the session stands on request the panel that changes many sets at once.
//
// Every change is one step of the history. Actions beside its own: lifter.find (to the search), lifter.add, lifter.edit,
// lifter.remove (a set), lifter.before (what it said before), lifter.bulk (many sets).
#pragma once

#include "ui/pages/lifter/lifter_view.h"
#include "ui/pages/lifter/logbook_days.h"
#include "ui/shell/context.h"

class QLabel;
class QLineEdit;
class QStackedWidget;
class QTableView;

namespace steelyard {

class Edit;
class LogbookBulk;
class LogbookCalendar;
class LogbookListModel;
class LogbookSession;

class LogbookView final : public LifterView {
    Q_OBJECT

public:
    explicit LogbookView(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.logbook"); }
    [[nodiscard]] QString title() const override { return tr("Logbook"); }
    void show(const ShownLine& shown) override;
    void takeFocus() override;
    [[nodiscard]] bool showsSession() const override { return false; }
    void lookAtDay(QDate day) override;
    [[nodiscard]] bool can(const QString& action) const override;
    [[nodiscard]] bool isAskedFor(const QString& action) const override;
    void perform(const QString& action) override;
    [[nodiscard]] ChartTable table() const override;

    [[nodiscard]] QDate day() const { return m_day; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] QWidget* makeLeft();
    [[nodiscard]] QWidget* makeRight();
    void search();
    void chooseDay(QDate day);
    void showSession();
    void sessionEnded();
    void openChart(Id<LiftLine> line);
    void openBulk();
    void leaveBulk();
    void store(std::unique_ptr<Edit> edit, const QString& words);
    [[nodiscard]] const LogbookDay* find(QDate day) const;

    UiContext m_context;
    ShownLine m_shown;
    std::optional<ShownLine> m_later;  // came while a line was being typed
    std::vector<LogbookDay> m_days;    // of m_shown
    QDate m_day;
    QLineEdit* m_search = nullptr;
    QLabel* m_found = nullptr;
    LogbookCalendar* m_calendar = nullptr;
    LogbookListModel* m_list = nullptr;
    QTableView* m_sessions = nullptr;
    QStackedWidget* m_right = nullptr;
    LogbookSession* m_session = nullptr;
    LogbookBulk* m_bulk = nullptr;
};

}  // namespace steelyard
