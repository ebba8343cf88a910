// Progress of one lifter: their lift lines at the left, and of the chosen line the verdict with its reason, its numbers,
// the chart, and the sets of the chosen session, correctable in place.
//
// In place of the chart stand its data, or why the verdict was said: the sets that carried it. Escape goes back to the chart
// as it was left.
//
// Everything is read in the background through a connection of its own; the page keeps showing the last record until the
// new one has come. Actions: lifter.nextLine, lifter.previousLine, lifter.why, lifter.chart (chart or its data), lifter.copy.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/lifter_reading.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

#include <QtCore/QPointer>

class QComboBox;
class QLabel;
class QListView;
class QPushButton;
class QShortcut;
class QStackedWidget;

namespace steelyard {

class ChartTableModel;
class LineHeader;
class LineListModel;
class ProgressChart;
class SessionPanel;
class WhyView;

class LifterPage final : public Page {
    Q_OBJECT

public:
    explicit LifterPage(const UiContext& context, QWidget* parent = nullptr);
    ~LifterPage() override;

    [[nodiscard]] QString key() const override { return QStringLiteral("lifter"); }
    [[nodiscard]] QString title() const override { return tr("Lifter"); }
    void showAthlete(std::optional<Id<Athlete>> athlete) override;
    void showLine(Id<LiftLine> line) override;
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

private:
    [[nodiscard]] QWidget* makeLinePart();
    [[nodiscard]] QWidget* makeMainPart();
    [[nodiscard]] QWidget* makeChartPart();
    [[nodiscard]] QWidget* makeDataTable();
    [[nodiscard]] QWidget* makeWhyView();
    [[nodiscard]] QLayout* makeTools();
    void read();
    void take(Result<LifterReading> reading);
    void hint(const QString& text);
    void chooseLine(int line);
    void redrawChart();
    [[nodiscard]] int chosenExposure() const;  // else the last one
    void showNote(int exposure);
    void showSession(int exposure);
    void stepLine(int by);
    void showView(int view);
    void openWhy(bool open);
    void explain();
    void correct(Id<SetEntry> id, const SetEntry& set);
    [[nodiscard]] const LineRecord* record() const;
    [[nodiscard]] const LineReading* reading() const;

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    std::optional<Id<LiftLine>> m_wantedLine;
    QDate m_session;                                 // the chosen one, kept across reads
    std::shared_ptr<const LifterReading> m_reading;  // shared with the job that explains
    int m_line = -1;
    int m_asked = 0;  // the newest read; answers to earlier ones are dropped
    int m_askedWhy = 0;
    bool m_whyWanted = false;       // as soon as the record has come
    QPointer<QWidget> m_beforeWhy;  // where the keyboard was
    JobHandle m_job;
    JobHandle m_whyJob;

    LineListModel* m_lines;
    QListView* m_list = nullptr;
    QStackedWidget* m_states = nullptr;
    QLabel* m_hint = nullptr;
    LineHeader* m_header = nullptr;
    QComboBox* m_stretch = nullptr;
    QPushButton* m_showWhy = nullptr;
    QPushButton* m_showData = nullptr;
    QPushButton* m_copy = nullptr;
    QStackedWidget* m_views = nullptr;
    ProgressChart* m_chart = nullptr;
    WhyView* m_whyView = nullptr;
    QShortcut* m_back = nullptr;
    QLabel* m_note = nullptr;
    ChartTableModel* m_data;
    SessionPanel* m_sessionPanel = nullptr;
};

}  // namespace steelyard
