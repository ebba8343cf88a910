// One way to begin: a button named by the deed, and beside it what it does.
#pragma once

#include <QtWidgets/QBoxLayout>
#include <QtWidgets/QLabel>
#include <QtWidgets/QPushButton>

namespace steelyard {

// `words` say something else from time to time; they stand beside the button.
inline QPushButton* addChoice(QBoxLayout* column, const QString& text, QLabel* words)
{
    auto* row = new QHBoxLayout;
    auto* button = new QPushButton(text);
    button->setMinimumWidth(button->fontMetrics().averageCharWidth() * 32);
    button->setMinimumHeight(button->fontMetrics().height() * 2);
    words->setTextFormat(Qt::PlainText);
    words->setWordWrap(true);
    row->addWidget(button);
    row->addSpacing(14);
    row->addWidget(words, 1);
    column->addLayout(row);
    return button;
}

inline QPushButton* addChoice(QBoxLayout* column, const QString& text, const QString& explanation)
{
    return addChoice(column, text, new QLabel(explanation));
}

}  // namespace steelyard
