// Help that is always at hand: the list of keys, made from the table of actions, and the short guide.
#pragma once

class QDialog;
class QWidget;

namespace steelyard {

// Both delete themselves when closed; show() them.
[[nodiscard]] QDialog* makeKeyList(QWidget* parent);
[[nodiscard]] QDialog* makeGuide(QWidget* parent);
[[nodiscard]] QDialog* makeAbout(QWidget* parent);

}  // namespace steelyard
