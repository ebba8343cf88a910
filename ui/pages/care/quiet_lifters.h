// Lifters nobody has added to for long: a number of months, and a list to look through. Nothing is erased from here.
#pragma once

#include "core/care/retention.h"
#include "ui/shell/context.h"

#include <QtWidgets/QGroupBox>

class QLabel;
class QListWidget;
class QSpinBox;

namespace steelyard {

class QuietLifters final : public QGroupBox {
    Q_OBJECT

public:
    explicit QuietLifters(const UiContext& context, QWidget* parent = nullptr);
    void read();

Q_SIGNALS:
    // Looked at, by Enter, a double click or going through the list.
    void chosen(steelyard::Id<steelyard::Athlete> athlete);

private:
    UiContext m_context;
    QSpinBox* m_months;
    QListWidget* m_list;
    QLabel* m_said;
};

}  // namespace steelyard
