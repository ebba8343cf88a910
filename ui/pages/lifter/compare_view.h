// Lines beside each other on one relative scale (compare_spec.h): several of this lifter's, chosen from a list, or this line
// across lifters, or this line apart by repetitions (rep_band_split.h), which are read in the background. Two lifters' lines show who changed how much since the start, and nothing
// of who is better: the view says so. On request the ratings of two to four of the lifter's own lines stand beside each other instead,
// as an everyday comparison that nobody drew lots for (everyday_spec.h), with what else differed between their sessions.
#pragma once

#include "core/analysis/rep_band_split.h"
#include "ui/charts/compare_spec.h"
#include "ui/jobs/job.h"
#include "ui/pages/lifter/panels_view.h"

class QCheckBox;
class QDateEdit;
class QListWidget;
class QRadioButton;

namespace steelyard {

class CompareView final : public PanelsView {
    Q_OBJECT

public:
    CompareView(JobRunner& jobs, QString bookPath, QWidget* parent = nullptr);
    ~CompareView() override;

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.compare"); }
    [[nodiscard]] QString title() const override { return tr("Compare"); }
    void show(const ShownLine& shown) override;
    [[nodiscard]] bool showsSession() const override { return false; }
    void leave() override;

private:
    [[nodiscard]] QWidget* makeControls();
    void fill();
    void fillOwnLines();
    void readLifters();
    void readBands();
    [[nodiscard]] QString words(const PanelsSpec& spec) const;
    void offer(ComparedLine line, const QString& inList, bool ticked);
    void draw();
    [[nodiscard]] std::vector<ComparedLine> ticked() const;
    void showEveryday();

    JobRunner& m_jobs;
    QString m_bookPath;
    ShownLine m_shown;
    std::vector<ComparedLine> m_offered;  // by row of the list
    std::optional<AthleteLog> m_split;    // what is offered when this line is taken apart by repetitions
    int m_asked = 0;                      // the newest; answers to earlier ones are dropped
    JobHandle m_job;

    QRadioButton* m_lines = nullptr;
    QRadioButton* m_lifters = nullptr;
    QRadioButton* m_bands = nullptr;
    QListWidget* m_list = nullptr;
    std::vector<Id<LiftLine>> m_offeredLines;  // by row of the list; empty across lifters
    QCheckBox* m_felt = nullptr;
    QCheckBox* m_common = nullptr;
    QDateEdit* m_start = nullptr;
};

}  // namespace steelyard
