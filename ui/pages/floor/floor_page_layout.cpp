// How the Floor place is put together.
#include "ui/pages/floor/floor_page.h"

#include "core/book/book.h"
#include "ui/format/format.h"
#include "ui/pages/floor/keying_view.h"
#include "ui/pages/floor/rack_view.h"
#include "ui/pages/floor/sheet_field.h"
#include "ui/pages/floor/sheet_preview.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QDateEdit>
#include <QtWidgets/QLabel>
#include <QtWidgets/QListWidget>
#include <QtWidgets/QPushButton>
#include <QtWidgets/QSplitter>
#include <QtWidgets/QStackedWidget>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {

QPushButton* FloorPage::makeButton(const QString& action, const QString& text, const QString& keys)
{
    auto* button = new QPushButton(text, this);
    button->setObjectName(action);
    button->setToolTip(tr("Key: %1").arg(keys));
    connect(button, &QPushButton::clicked, this, [this, action] { perform(action); });
    connect(this, &Page::actionsChanged, button, [this, button, action] { button->setEnabled(canPerform(action)); });
    return button;
}

QWidget* FloorPage::makeSide()
{
    auto* side = new QWidget(this);
    auto* column = new QVBoxLayout(side);
    m_date = new QDateEdit(m_context.clock.today(), side);
    m_date->setCalendarPopup(true);
    m_date->setDisplayFormat(format::datePattern());
    m_date->setAccessibleName(tr("Day of the sheets"));
    m_date->setToolTip(tr("Keys: [ the day before, ] the day after, T today"));
    m_paper = new QComboBox(side);
    m_paper->addItems({QStringLiteral("A4"), QStringLiteral("Letter")});
    m_paper->setAccessibleName(tr("Paper"));
    m_layout = new QComboBox(side);
    for (const PaperLayout layout : {PaperLayout::Page, PaperLayout::Group, PaperLayout::Week, PaperLayout::Day})
        m_layout->addItem(paperLayoutTitle(layout), QVariant::fromValue(static_cast<int>(layout)));
    m_layout->setObjectName(QStringLiteral("layout"));
    m_layout->setAccessibleName(tr("Layout"));
    m_layout->setToolTip(tr("Key: %1").arg(QStringLiteral("L")));
    auto* top = new QHBoxLayout;
    top->addWidget(m_date, 1);
    top->addWidget(m_paper);
    m_others = new QCheckBox(tr("Show those not e&xpected as well"), side);
    m_list = new QListWidget(side);
    m_list->setObjectName(QStringLiteral("dayLifters"));
    m_list->setAccessibleName(tr("Lifters of the day"));
    m_list->setSpacing(2);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setTextElideMode(Qt::ElideRight);
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setToolTip(tr("Space ticks a lifter; only ticked sheets are printed."));
    m_line = new QLabel(side);
    m_line->setTextFormat(Qt::PlainText);
    m_line->setWordWrap(true);
    column->addLayout(top);
    column->addWidget(m_layout);
    column->addWidget(m_others);
    column->addWidget(m_list, 1);
    column->addWidget(m_line);
    column->addWidget(makeButton(QStringLiteral("floor.key"), tr("Ke&y the session"), QStringLiteral("K")));
    column->addWidget(
        makeButton(QStringLiteral("floor.code"), tr("Key by the sheet's &number…"), QStringLiteral("Ctrl+J")));
    column->addWidget(makeButton(QStringLiteral("floor.print"), tr("&Print…"), QStringLiteral("Ctrl+P")));
    column->addWidget(makeButton(QStringLiteral("floor.pdf"), tr("Save as P&DF…"), QStringLiteral("Ctrl+Shift+P")));
    return side;
}

void FloorPage::build()
{
    auto* splitter = new QSplitter(this);
    splitter->addWidget(makeSide());
    m_preview = new SheetPreview(splitter);
    m_preview->setToolTip(tr("Keys: + and − zoom, 0 fits the width"));
    splitter->addWidget(m_preview);
    splitter->setStretchFactor(1, 1);
    splitter->setSizes({320, 700});
    auto* whole = new QVBoxLayout(this);
    whole->setContentsMargins({});
    m_layers = new QStackedWidget(this);
    m_layers->addWidget(splitter);
    m_keying = new KeyingView(m_context, m_layers);
    m_layers->addWidget(m_keying);
    m_field = new SheetField(this);
    whole->addWidget(m_field);
    whole->addWidget(m_layers);
    connect(m_keying, &KeyingView::actionsChanged, this, &FloorPage::actionsChanged);
    connect(m_keying, &KeyingView::said, this, &FloorPage::said);
    connect(m_keying, &KeyingView::finished, this, &FloorPage::stopKeying, Qt::QueuedConnection);
    connect(m_date, &QDateEdit::dateChanged, this, [this] { makeSheets(); });
    connect(m_others, &QCheckBox::toggled, this, [this] { makeSheets(); });
    connect(m_paper, &QComboBox::currentIndexChanged, this, [this] { showPreview(); });
    connect(m_layout, &QComboBox::currentIndexChanged, this, [this] {
        if (layoutOfPaper() == PaperLayout::Week)
            makeSheets();
        else
            showPreview();
    });
    connect(m_list, &QListWidget::currentRowChanged, this, [this] { showPreview(); });
    connect(m_list, &QListWidget::itemChanged, this, [this] { showPreview(); });
}

}  // namespace steelyard
