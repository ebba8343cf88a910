// An opened book on screen: the roster, the row of places and the page in front; or, while nobody is in the book, what to
// do about that. Made for one book and taken down with it.
#pragma once

#include "core/edits/change_hub.h"
#include "ui/models/roster_model.h"
#include "ui/shell/context.h"
#include "ui/shell/page.h"

#include <QtWidgets/QWidget>

class QLabel;
class QSplitter;
class QStackedWidget;

namespace steelyard {

class EmptyBookPage;
class PlaceTabs;
class RosterPane;

class BookView : public QWidget {
    Q_OBJECT

public:
    explicit BookView(const UiContext& context, QWidget* parent = nullptr);

    [[nodiscard]] Page* currentPage() const;
    [[nodiscard]] bool hasLifter() const;
    [[nodiscard]] bool hasPlace(const QString& key) const;
    void showPlace(const QString& key);
    // By name, as it stands in the book; false when there is nobody of that name.
    bool chooseLifter(const QString& name);
    [[nodiscard]] RosterPane* roster() const { return m_roster; }
    // Lifters by their initials on every page and paper, or by their names again.
    void showInitials(bool initials);
    // Handles roster.*, view.* of places and the actions of the page in front; false: not ours.
    bool perform(const QString& action);

    [[nodiscard]] QByteArray layoutState() const;
    void restoreLayout(const QByteArray& state);

Q_SIGNALS:
    void actionsChanged();
    void actionRequested(const QString& action);
    void said(const QString& text);

private:
    void connectPage(Page* page);
    void showPage(int index);
    void bookChanged(const Changes& changes);
    void switchEmpty();
    void readPeople(bool initials);
    QWidget* makeBanner();

    UiContext m_context;
    RosterModel m_model;
    QStackedWidget* m_layers;
    EmptyBookPage* m_empty;
    QSplitter* m_splitter;
    RosterPane* m_roster;
    PlaceTabs* m_tabs;
    QStackedWidget* m_stack;
    std::vector<Page*> m_pages;
    ChangeHub::Subscription m_subscription;
};

}  // namespace steelyard
