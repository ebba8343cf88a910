// Erasing one lifter: what would go, where the name stands that isn't theirs, which copies still hold them; done only when the name
// was typed. Never by Enter.
#pragma once

#include "core/care/erasure.h"

#include <QtWidgets/QGroupBox>

class QLabel;
class QLineEdit;
class QPlainTextEdit;
class QPushButton;

namespace steelyard {

class ErasePanel final : public QGroupBox {
    Q_OBJECT

public:
    explicit ErasePanel(QWidget* parent = nullptr);
    void show(const ErasurePlan& plan, const std::vector<CopyFinding>& copies);
    void setNobody();

Q_SIGNALS:
    void confirmed();

private:
    ErasurePlan m_plan;
    QPlainTextEdit* m_what;
    QLabel* m_ask;
    QLineEdit* m_name;
    QPushButton* m_erase;
};

}  // namespace steelyard
