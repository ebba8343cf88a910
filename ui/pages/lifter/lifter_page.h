// Progress of one lifter: their lift lines at the left, and of the chosen line the verdict with its reason, its numbers,
// the chart, and the sets of the chosen session, correctable in place.
//
// Everything is read in the background through a connection of its own; the page keeps showing the last record until the
// new one has come. Actions: lifter.nextLine, lifter.previousLine, lifter.chart (chart or its data), lifter.copy.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/lifter_reading.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

class QComboBox;
class QLabel;
class QListView;
class QPushButton;
class QStackedWidget;
class QTableView;

namespace steelyard {

class ChartTableModel;
class LineListModel;
class ProgressChart;
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
    void bookChanged(const Changes& changes) override;
    void takeFocus() override;
    [[nodiscard]] bool canPerform(const QString& action) const override;
    void perform(const QString& action) override;

private:
    [[nodiscard]] QWidget* makeLinePart();
    [[nodiscard]] QWidget* makeMainPart();
    [[nodiscard]] QLayout* makeHeader();
    [[nodiscard]] QWidget* makeChartPart();
    void read();
    void take(Result<LifterReading> reading);
    void hint(const QString& text);
    void chooseLine(int line);
    void redrawChart();
    void showNote(int exposure);
    void showSession(int exposure);
    void stepLine(int by);
    void correct(Id<SetEntry> id, const SetEntry& set);
    [[nodiscard]] const LineRecord* record() const;
    [[nodiscard]] const LineReading* reading() const;

    UiContext m_context;
    std::optional<Id<Athlete>> m_athlete;
    std::optional<Id<LiftLine>> m_wantedLine;
    QDate m_session;  // the chosen one, kept across reads
    std::unique_ptr<LifterReading> m_reading;
    int m_line = -1;
    int m_asked = 0;  // the newest read; answers to earlier ones are dropped
    JobHandle m_job;

    LineListModel* m_lines;
    QListView* m_list = nullptr;
    QStackedWidget* m_states = nullptr;
    QLabel* m_hint = nullptr;
    QLabel* m_name = nullptr;
    QLabel* m_verdict = nullptr;
    QLabel* m_why = nullptr;
    std::array<std::array<QLabel*, 3>, 3> m_numbers{};
    QComboBox* m_stretch = nullptr;
    QPushButton* m_showData = nullptr;
    QPushButton* m_copy = nullptr;
    QStackedWidget* m_views = nullptr;
    ProgressChart* m_chart = nullptr;
    QLabel* m_note = nullptr;
    ChartTableModel* m_data;
    SessionPanel* m_sessionPanel = nullptr;
};

}  // namespace steelyard
