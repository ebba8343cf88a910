// Help that is always at hand: the list of keys, made from the table of actions, and the guide, whose pages are the Markdown
// files of resources/guide.
#pragma once

#include <QtCore/QString>

class QDialog;
class QWidget;

namespace steelyard {

// All delete themselves when closed; show() them.
[[nodiscard]] QDialog* makeKeyList(QWidget* parent);
// Opens at the page named like the place ("week"), or at the first page where a place has none.
[[nodiscard]] QDialog* makeGuide(QWidget* parent, const QString& place);
[[nodiscard]] QDialog* makeAbout(QWidget* parent);

}  // namespace steelyard
