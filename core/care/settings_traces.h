// Takes a person's name out of the program's settings: of a list only what names them, of kept entries (filters, mappings of an
// import) the whole entry.
//
//   const int taken = removeTraces(settings, QStringLiteral("Dana Quill"));
//
// Settings hold ways of looking, never records; but a kept filter or the mapping of an import may say a name. Gives how many places
// were changed, and writes the file.
#pragma once

#include <QtCore/QString>

class QSettings;

namespace steelyard {

int removeTraces(QSettings& settings, const QString& name);

}  // namespace steelyard
