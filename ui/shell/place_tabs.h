// The places of the window as a row of words; the one in front is underlined.
#pragma once

#include <QtWidgets/QWidget>

class QAbstractButton;
class QHBoxLayout;

namespace steelyard {

class PlaceTabs : public QWidget {
    Q_OBJECT

public:
    explicit PlaceTabs(QWidget* parent = nullptr);
    void addPlace(const QString& title, const QString& shortcut);
    void setCurrent(int index);

Q_SIGNALS:
    void placeChosen(int index);

private:
    std::vector<QAbstractButton*> m_places;
    QHBoxLayout* m_row;
};

}  // namespace steelyard
