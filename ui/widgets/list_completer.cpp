#include "ui/widgets/list_completer.h"

#include <QtWidgets/QLineEdit>

namespace steelyard {

ListCompleter::ListCompleter(const QStringList& words, QObject* parent) : QCompleter(words, parent)
{
    setCaseSensitivity(Qt::CaseInsensitive);
}

QStringList ListCompleter::splitPath(const QString& typed) const
{
    return {typed.section(u',', -1).trimmed()};
}

QString ListCompleter::pathFromIndex(const QModelIndex& index) const
{
    const QString word = QCompleter::pathFromIndex(index);
    const auto* edit = qobject_cast<const QLineEdit*>(widget());
    const QString before = edit ? edit->text().section(u',', 0, -2) : QString();
    return before.isEmpty() ? word : before + QStringLiteral(", ") + word;
}

}  // namespace steelyard
