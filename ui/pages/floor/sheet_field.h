// A line for the number of a sheet, typed by hand or by a scanner, which types like a keyboard and ends with Enter.
//
//   field->ask([this](const QString& typed) -> Result<void> { … });     // shown, with the cursor in it
//
// What is wrong is said beside the line, and what was typed stays, selected, for the next try. Escape goes back to where the
// cursor was.
#pragma once

#include "core/base/result.h"

#include <QtCore/QPointer>
#include <QtWidgets/QFrame>

#include <functional>

class QLabel;
class QLineEdit;

namespace steelyard {

class SheetField final : public QFrame {
    Q_OBJECT

public:
    explicit SheetField(QWidget* parent = nullptr);

    // An error is said and the line stays; else it closes.
    void ask(std::function<Result<void>(const QString&)> taken);
    // One step back; false: it wasn't open.
    bool goBack();
    [[nodiscard]] QString message() const;

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    void take();

    QLineEdit* m_line;
    QLabel* m_message;
    QPointer<QWidget> m_before;
    std::function<Result<void>(const QString&)> m_taken;
};

}  // namespace steelyard
