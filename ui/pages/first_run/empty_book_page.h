// A book in which nobody is yet: what it is for and how to begin.
#pragma once

#include <QtWidgets/QWidget>

namespace steelyard {

class EmptyBookPage : public QWidget {
    Q_OBJECT

public:
    explicit EmptyBookPage(bool readOnly, QWidget* parent = nullptr);

Q_SIGNALS:
    void actionRequested(const QString& action);
};

}  // namespace steelyard
