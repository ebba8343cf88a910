// One way to begin: a button named by the deed, and beside it what it does.
#pragma once

#include <QtWidgets/QBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

namespace steelyard {

inline QPushButton* addChoice(QBoxLayout* column, const QString& text, const QString& explanation)
{
    auto* row = new QHBoxLayout;
    auto* button = new QPushButton(text);
    button->setMinimumWidth(button->fontMetrics().averageCharWidth() * 32);
    button->setMinimumHeight(button->fontMetrics().height() * 2);
    auto* label = new QLabel(explanation);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    row->addWidget(button);
    row->addSpacing(14);
    row->addWidget(label, 1);
    column->addLayout(row);
    return button;
}

}  // namespace steelyard
