// Completes the last of several words that are separated by commas, and leaves those before it alone.
//
//   edit->setCompleter(new ListCompleter({"juniors", "on holiday"}));   // "juniors, on h" offers "on holiday"
#pragma once

#include <QtWidgets/QCompleter>

namespace steelyard {

class ListCompleter final : public QCompleter {
    Q_OBJECT

public:
    explicit ListCompleter(const QStringList& words, QObject* parent = nullptr);
    [[nodiscard]] QStringList splitPath(const QString& typed) const override;
    [[nodiscard]] QString pathFromIndex(const QModelIndex& index) const override;
};

}  // namespace steelyard
