// The lifter's own curve of repetitions to failure against load on one line, worked out in the background (curve_spec.h).
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/panels_view.h"

namespace steelyard {

class CurveView final : public PanelsView {
    Q_OBJECT

public:
    explicit CurveView(JobRunner& jobs, QWidget* parent = nullptr);
    ~CurveView() override;

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.curve"); }
    [[nodiscard]] QString title() const override { return tr("Curve"); }
    void show(const ShownLine& shown) override;
    [[nodiscard]] bool showsSession() const override { return false; }
    void leave() override;

private:
    JobRunner& m_jobs;
    ShownLine m_shown;
    int m_asked = 0;  // the newest; answers to earlier ones are dropped
    JobHandle m_job;
};

}  // namespace steelyard
