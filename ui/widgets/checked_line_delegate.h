// Types a cell in place and looks at every letter: Enter and Tab keep what is right; what isn't stays in the line, and is said. Escape leaves the cell
// as it was.
//
//   new CheckedLineDelegate([](const QModelIndex& index, const QString& text) { return problem; }, view);   // empty: right
#pragma once

#include <QtWidgets/QStyledItemDelegate>

#include <functional>

namespace steelyard {

class CheckedLineDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    using Check = std::function<QString(const QModelIndex&, const QString&)>;

    CheckedLineDelegate(Check check, QObject* parent);
    [[nodiscard]] QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const override;
    void destroyEditor(QWidget* editor, const QModelIndex& index) const override;

Q_SIGNALS:
    // Empty: it is right.
    void said(const QString& problem) const;
    void ended() const;

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    Check m_check;
    mutable QPersistentModelIndex m_typed;
};

}  // namespace steelyard
