// How the sessions of a line felt and how alike their repetitions were (ratings_spec.h).
#pragma once

#include "ui/pages/lifter/panels_view.h"

namespace steelyard {

class RatingsView final : public PanelsView {
    Q_OBJECT

public:
    explicit RatingsView(QWidget* parent = nullptr);

    [[nodiscard]] QString action() const override { return QStringLiteral("lifter.ratings"); }
    [[nodiscard]] QString title() const override { return tr("Ratings"); }
    void show(const ShownLine& shown) override;
    [[nodiscard]] bool showsSession() const override { return false; }
};

}  // namespace steelyard
