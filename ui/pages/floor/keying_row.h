// One row of the sheet on screen: its number, what is in the book or being typed, and that in words.
//
//   row->show(desk.row(place), desk.lineAt(place));     // leaves what is half typed alone
//   row->say(tr("…"), KeyingRowWidget::Tone::Ask);
//
// A ring says not watched, a disc watched and to the standard, a half disc partly off; a pen: typed, and not in the book yet.
#pragma once

#include "core/keying/keying_sheet.h"

#include <QtWidgets/QWidget>

class QLabel;

namespace steelyard {

class ElidedLabel;
class KeyingEdit;

class KeyingRowWidget final : public QWidget {
    Q_OBJECT

public:
    enum class Tone { Quiet, Plain, Ask, Wrong };

    explicit KeyingRowWidget(QWidget* parent = nullptr);
    // `line` is what stands there as it would be typed; of a row without a set it is the plan, shown until something is typed.
    void show(const KeyingRow& row, const QString& line, const QString& name);
    void say(const QString& words, Tone tone);
    void setCurrent(bool current);
    void setReadOnly(bool readOnly);
    // Drops what is half typed.
    void dropDraft();
    [[nodiscard]] bool hasDraft() const;
    [[nodiscard]] int number() const { return m_row.number; }
    [[nodiscard]] KeyingEdit* edit() const { return m_edit; }

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void showState();

    KeyingRow m_row;
    QString m_line;
    bool m_current = false;
    QLabel* m_number;
    QLabel* m_state;
    KeyingEdit* m_edit;
    ElidedLabel* m_words;
};

}  // namespace steelyard
