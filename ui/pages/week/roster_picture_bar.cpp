#include "ui/pages/week/roster_picture_bar.h"

#include "ui/format/format.h"
#include "ui/widgets/elided_label.h"

#include <QtGui/QKeyEvent>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QLineEdit>
#include <QtWidgets/QVBoxLayout>

#include <algorithm>
#include <map>

namespace steelyard {
namespace {

QComboBox* filterBox(const QString& name, QWidget* parent)
{
    auto* box = new QComboBox(parent);
    box->setAccessibleName(name);
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(9);
    box->addItem(name, QString());
    return box;
}

// Labels in the order of the language, each value once.
std::map<QString, QString> valuesByLabel(const PictureFacet& facet, const std::vector<AthleteReview>& reviews)
{
    std::map<QString, QString> values;
    for (const AthleteReview& review : reviews)
        for (const QString& value : facet.valuesOf(review)) values.emplace(facet.label(value), value);
    return values;
}

void choosePart(QComboBox* box, const PictureFacet& facet, const QString& value)
{
    if (box->findData(value) < 0) box->addItem(facet.label(value), value);
    box->setCurrentIndex(box->findData(value));
}

}  // namespace

RosterPictureBar::RosterPictureBar(const KeptFilters& kept, QWidget* parent)
    : QWidget(parent),
      m_kept(kept),
      m_text(new QLineEdit(this)),
      m_named(filterBox(tr("kept filters"), this)),
      m_said(new ElidedLabel(this))
{
    build();
    readKept();
}

void RosterPictureBar::build()
{
    m_text->setPlaceholderText(tr("Name, group or tag   /"));
    m_text->setAccessibleName(tr("Filter by words"));
    m_text->setClearButtonEnabled(true);
    m_text->installEventFilter(this);
    m_named->setToolTip(tr("V opens the kept filters, Ctrl+S keeps this one, F2 renames it, Shift+Del deletes it"));
    auto* words = new QHBoxLayout;
    words->addWidget(m_text, 3);
    words->addWidget(m_named, 2);
    words->addWidget(m_said, 5);
    auto* parts = new QHBoxLayout;
    for (const PictureFacet& facet : pictureFacets()) {
        QComboBox* box = filterBox(facet.anyText(), this);
        m_parts.push_back(box);
        parts->addWidget(box, 1);
        connect(box, &QComboBox::currentIndexChanged, this, [this, box] {
            box->setToolTip(format::plainToolTip(box->currentText()));
            Q_EMIT filterChanged();
        });
    }
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(14, 8, 14, 4);
    layout->setSpacing(5);
    layout->addLayout(words);
    layout->addLayout(parts);
    connect(m_text, &QLineEdit::textChanged, this, &RosterPictureBar::filterChanged);
    connect(m_named, &QComboBox::activated, this, [this] {
        if (const KeptFilter* kept = m_kept.find(m_named->currentData().toString()))
            setFilter(PictureFilter(kept->filter));
        Q_EMIT left();
    });
    connect(this, &RosterPictureBar::filterChanged, this, &RosterPictureBar::showKept);
}

PictureFilter RosterPictureBar::filter() const
{
    PictureFilter filter{.text = m_text->text()};
    const auto facets = pictureFacets();
    for (std::size_t i = 0; i < facets.size(); ++i) filter.*facets[i].chosen = m_parts[i]->currentData().toString();
    return filter;
}

void RosterPictureBar::setFilter(const PictureFilter& filter)
{
    {
        const QSignalBlocker quiet(this);
        m_text->setText(filter.text);
        const auto facets = pictureFacets();
        for (std::size_t i = 0; i < facets.size(); ++i) choosePart(m_parts[i], facets[i], filter.*facets[i].chosen);
    }
    Q_EMIT filterChanged();
}

void RosterPictureBar::readReviews(const std::vector<AthleteReview>& reviews)
{
    const PictureFilter before = filter();
    const auto facets = pictureFacets();
    for (std::size_t i = 0; i < facets.size(); ++i) {
        const QSignalBlocker quiet(m_parts[i]);
        m_parts[i]->clear();
        m_parts[i]->addItem(facets[i].anyText(), QString());
        for (const auto& [label, value] : valuesByLabel(facets[i], reviews)) m_parts[i]->addItem(label, value);
        choosePart(m_parts[i], facets[i], before.*facets[i].chosen);
    }
}

void RosterPictureBar::readKept()
{
    while (m_named->count() > 1) m_named->removeItem(1);
    for (const KeptFilter& kept : m_kept.all()) m_named->addItem(kept.name, kept.name);
    showKept();
}

// The name of what is shown, if it has one.
void RosterPictureBar::showKept()
{
    const KeptFilter* kept = m_kept.find(filter());
    m_named->setCurrentIndex(kept ? m_named->findData(kept->name) : 0);
}

void RosterPictureBar::say(const QString& text)
{
    m_said->setText(text);
}

void RosterPictureBar::startSearch()
{
    m_text->setFocus(Qt::ShortcutFocusReason);
    m_text->selectAll();
}

void RosterPictureBar::openKept()
{
    m_named->setFocus(Qt::ShortcutFocusReason);
    m_named->showPopup();
}

bool RosterPictureBar::eventFilter(QObject* watched, QEvent* event)
{
    if (watched != m_text || event->type() != QEvent::KeyPress) return QWidget::eventFilter(watched, event);
    switch (static_cast<QKeyEvent*>(event)->key()) {
    case Qt::Key_Escape:
        m_text->clear();
        [[fallthrough]];
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Down:
        Q_EMIT left();
        return true;
    default:
        return false;
    }
}

}  // namespace steelyard
