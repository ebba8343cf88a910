// Labels for sentences: plain text whatever a name in it holds, wrapped where the room ends.
//
//   layout->addWidget(plainWords(this));        quietWords: a hint; selectableWords: to be copied with the mouse
#pragma once

class QLabel;
class QWidget;

namespace steelyard {

[[nodiscard]] QLabel* plainWords(QWidget* parent);
[[nodiscard]] QLabel* quietWords(QWidget* parent);
[[nodiscard]] QLabel* selectableWords(QWidget* parent);

}  // namespace steelyard
