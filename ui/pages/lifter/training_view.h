// The lifter's training by week: effort, monotony, strain, volume, and sets by muscle (training_spec.h).
#pragma once

#include "ui/pages/lifter/panels_view.h"

namespace steelyard {

class TrainingView final : public PanelsView {
    Q_OBJECT

public:
    explicit TrainingView(QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.training"); }
    [[nodiscard]] QString title() const override { return tr("Training"); }
    void show(const ShownLine& shown) override;
    [[nodiscard]] bool showsSession() const override { return false; }
};

}  // namespace steelyard
