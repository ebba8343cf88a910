// Why the verdict on a line was said: the sets that carried it, worked out in the background.
#pragma once

#include "ui/jobs/job.h"
#include "ui/pages/lifter/lifter_view.h"

namespace steelyard {

class WhyView;

class ExplainingView final : public LifterView {
    Q_OBJECT

public:
    explicit ExplainingView(JobRunner& jobs, QWidget* parent = nullptr);
    ~ExplainingView() override;

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.why"); }
    [[nodiscard]] QString title() const override { return tr("Why"); }
    void show(const ShownLine& shown) override;
    void leave() override;
    void takeFocus() override;

private:
    JobRunner& m_jobs;
    WhyView* m_why;
    ShownLine m_shown;
    int m_asked = 0;  // the newest; answers to earlier ones are dropped
    JobHandle m_job;
};

}  // namespace steelyard
