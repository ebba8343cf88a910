// Adds a lifter: a name, perhaps a group, the unit they think in, and whether they agreed that discomfort is kept. What is wrong is
// said in place.
#pragma once

#include "core/book/book.h"

#include <QtWidgets/QDialog>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;

namespace steelyard {

class AddLifterDialog : public QDialog {
    Q_OBJECT

public:
    AddLifterDialog(Book& book, const QStringList& groups, QWidget* parent);

Q_SIGNALS:
    void added(const QString& name);

private:
    void add();

    Book& m_book;
    QLineEdit* m_name;
    QComboBox* m_group;
    QComboBox* m_unit;
    QCheckBox* m_agreed;
    QLabel* m_problem;
};

}  // namespace steelyard
