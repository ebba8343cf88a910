// A text for who helps with the program: versions, what it runs on, a few settings, how much a book holds, and the log. No name
// of anybody, nothing that was typed, no path.
//
//   const QString text = diagnosisOf(book ? &book->database() : nullptr, {version, screens}, settings, log.lastLines(300));
//
// Of the settings only those of a short list, which hold numbers and switches, are said.
#pragma once

#include "core/storage/database.h"

#include <QtCore/QStringList>

class QSettings;

namespace steelyard {

struct DiagnosisSurroundings {
    QString version;      // of the program
    QStringList screens;  // "1366 x 768, scale 1"
    QString style;        // of the widgets
};

[[nodiscard]] QString diagnosisOf(Database* book, const DiagnosisSurroundings&, const QSettings&,
                                  const QStringList& logLines);

}  // namespace steelyard
