// What the picture of the roster is filtered by: words, one combo box a part of the filter, and the filters that were kept.
// What can be chosen comes from the lifters that were reviewed; what is chosen stays, also when nobody has it any more.
#pragma once

#include "ui/pages/week/kept_filters.h"

#include <QtWidgets/QWidget>

class QComboBox;
class QLabel;
class QLineEdit;

namespace steelyard {

class ElidedLabel;

class RosterPictureBar final : public QWidget {
    Q_OBJECT

public:
    explicit RosterPictureBar(const KeptFilters& kept, QWidget* parent = nullptr);

    [[nodiscard]] PictureFilter filter() const;
    void setFilter(const PictureFilter& filter);
    void readReviews(const std::vector<AthleteReview>& reviews);
    // After a filter was kept, renamed or deleted.
    void readKept();
    void say(const QString& text);
    void startSearch();
    void openKept();

Q_SIGNALS:
    void filterChanged();
    // On to the table.
    void left();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    void showKept();

    const KeptFilters& m_kept;
    QLineEdit* m_text;
    std::vector<QComboBox*> m_parts;  // in the order of pictureFacets()
    QComboBox* m_named;
    ElidedLabel* m_said;
};

}  // namespace steelyard
