// No book is open: three ways to begin, and the books opened lately. Says what went wrong with the last try in place.
#pragma once

#include <QtCore/QStringList>
#include <QtWidgets/QWidget>

class QLabel;
class QVBoxLayout;

namespace steelyard {

class FirstRunPage : public QWidget {
    Q_OBJECT

public:
    explicit FirstRunPage(QWidget* parent = nullptr);
    void setRecentBooks(const QStringList& paths);
    void say(const QString& text);

Q_SIGNALS:
    void actionRequested(const QString& action);
    void bookRequested(const QString& path);

private:
    QLabel* m_message;
    QVBoxLayout* m_recent;
    QWidget* m_recentList = nullptr;
};

}  // namespace steelyard
