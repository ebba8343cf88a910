#include "ui/widgets/words.h"

#include <QtWidgets/QLabel>

namespace steelyard {

QLabel* plainWords(QWidget* parent)
{
    auto* label = new QLabel(parent);
    label->setTextFormat(Qt::PlainText);
    label->setWordWrap(true);
    return label;
}

QLabel* quietWords(QWidget* parent)
{
    auto* label = plainWords(parent);
    label->setForegroundRole(QPalette::PlaceholderText);
    return label;
}

QLabel* selectableWords(QWidget* parent)
{
    auto* label = plainWords(parent);
    label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    label->setFocusPolicy(Qt::NoFocus);
    return label;
}

}  // namespace steelyard
