// Adds a lifter: a name, perhaps a group, and the unit they think in. What is wrong is said in place.
#pragma once

#include "core/book/book.h"

#include <QtWidgets/QDialog>

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
    QLabel* m_problem;
};

}  // namespace steelyard
