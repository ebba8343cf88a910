#include "ui/pages/first_run/empty_book_page.h"

#include "ui/widgets/choice_row.h"

namespace steelyard {

EmptyBookPage::EmptyBookPage(bool readOnly, QWidget* parent) : QWidget(parent)
{
    auto* middle = new QWidget(this);
    middle->setMaximumWidth(fontMetrics().averageCharWidth() * 120);
    auto* column = new QVBoxLayout(middle);
    column->setSpacing(14);
    auto* title = new QLabel(tr("Nobody is in this book yet"), middle);
    QFont font = title->font();
    font.setPointSizeF(font.pointSizeF() * 1.6);
    title->setFont(font);
    auto* lead = new QLabel(tr("Once a lifter's training is in here, this place says every week which lifts really "
                               "moved, which did not, and where the record can't tell."),
                            middle);
    lead->setWordWrap(true);
    column->addStretch(1);
    column->addWidget(title);
    column->addWidget(lead);
    column->addSpacing(10);
    QPushButton* import = addChoice(column, tr("Import a logbook…   Ctrl+I"),
                                    tr("Reads a CSV file; lifters and exercises it names are added as it goes."));
    QPushButton* add = addChoice(column, tr("Add a lifter…   Ctrl+Shift+N"),
                                 tr("A name is enough. Everything else can be filled in when it is known."));
    column->addStretch(2);
    for (QPushButton* button : {import, add}) button->setEnabled(!readOnly);
    connect(import, &QPushButton::clicked, this, [this] { Q_EMIT actionRequested(QStringLiteral("book.import")); });
    connect(add, &QPushButton::clicked, this, [this] { Q_EMIT actionRequested(QStringLiteral("roster.add")); });
    auto* layout = new QHBoxLayout(this);
    layout->addStretch(1);
    layout->addWidget(middle, 4);
    layout->addStretch(1);
}

}  // namespace steelyard
