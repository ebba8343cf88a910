// One lifter: their lift lines at the left, and of the chosen line the verdict with its reason, its numbers, one of the
// views of its record (lifter_views.h), and the sets of the session that is looked at, correctable in place.
//
// In place of the view stand, on request, the numbers behind it. Escape goes back to the progress as it was left.
//
// Everything is read in the background through a connection of its own; the page keeps showing the last record until the
// new one has come. Actions: lifter.nextLine, lifter.previousLine, lifter.chart (drawing or its numbers), lifter.copy,
// lifter.copyPicture, lifter.savePicture, the one of every view, and those of the view in sight.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/lifter_view.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

#include <QtCore/QPointer>

class QComboBox;
class QLabel;
class QListView;
class QShortcut;
class QStackedWidget;
class QTabBar;

namespace steelyard {

class ChartMenu;
class ChartTableModel;
class LineHeader;
class LineListModel;
class SessionPanel;

class LifterPage final : public Page {
    Q_OBJECT

public:
    explicit LifterPage(const UiContext& context, QWidget* parent = nullptr);
    ~LifterPage() override;

    [[nodiscard]] QString key() const override { return QStringLiteral("lifter"); }
    [[nodiscard]] QString title() const override { return tr("Lifter"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void showLine(Id<LiftLine> line) override;
    void startTrial(Id<LiftLine> line, const QString& rule) override;
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

private:
    [[nodiscard]] QWidget* makeLinePart();
    [[nodiscard]] QWidget* makeMainPart();
    [[nodiscard]] QWidget* makeViews();
    [[nodiscard]] QWidget* makeDataTable();
    [[nodiscard]] QLayout* makeTools();
    void addView(LifterView* view);
    void read();
    void take(Result<LifterReading> reading);
    void hint(const QString& text);
    void chooseLine(int line);
    [[nodiscard]] int lastTrainedLine() const;
    [[nodiscard]] ShownLine shown() const;
    void refreshView();
    void viewChanged();
    void showSession(int exposure);
    void stepLine(int by);
    void openView(std::size_t view);
    void backToProgress();
    void showNumbers(bool on);
    [[nodiscard]] bool areNumbersShown() const;
    [[nodiscard]] std::size_t indexOf(const QString& opening) const;
    [[nodiscard]] std::size_t viewFor(const QString& action) const;
    void copyNumbers();
    void copyPicture();
    void savePicture();
    void correct(Id<SetEntry> id, const SetEntry& set);
    [[nodiscard]] LifterView& view() const { return *m_views[m_view]; }
    [[nodiscard]] const LineRecord* record() const;

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    std::optional<Id<LiftLine>> m_wantedLine;
    QDate m_session;                                 // the chosen one, kept across reads
    std::shared_ptr<const LifterReading> m_reading;  // shared with jobs of the views
    int m_line = -1;
    int m_asked = 0;                        // the newest read; answers to earlier ones are dropped
    std::optional<QString> m_wantedAction;  // as soon as the record has come
    QString m_reason;                       // the flag's rule that it is wanted for
    QPointer<QWidget> m_before;             // where the keyboard was when another view than the progress was opened
    QDate m_sessionBefore;                  // that was looked at then
    JobHandle m_job;

    std::vector<LifterView*> m_views;  // the progress first
    std::size_t m_view = 0;
    LineListModel* m_lines;
    QListView* m_list = nullptr;
    QStackedWidget* m_states = nullptr;
    QLabel* m_hint = nullptr;
    LineHeader* m_header = nullptr;
    QTabBar* m_tabs = nullptr;
    QComboBox* m_stretch = nullptr;
    ChartMenu* m_chartMenu = nullptr;
    QStackedWidget* m_stack = nullptr;  // the views, then the numbers
    QShortcut* m_back = nullptr;
    ChartTableModel* m_data;
    SessionPanel* m_sessionPanel = nullptr;
};

}  // namespace steelyard
