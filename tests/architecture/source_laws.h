// The laws that the sources of app/, core/ and ui/ keep, read from their text: who may include whom, which words
// belong to one folder only, how long a file may be.
//
//   for (const Violation& v : checkSources(QDir(root))) qWarning() << v.file << v.line << v.law;
//
// Comments are not read, and words inside string literals are not either (includes are). A folder of core without a
// row in the table is a violation, so that a new module can't be lawless.
#pragma once

#include <QtCore/QDir>
#include <QtCore/QString>

#include <vector>

namespace steelyard::architecture {

struct Violation {
    QString file;  // from the root
    int line = 1;
    QString law;  // stable key
    QString what;
};

// Every key that checkSources can report.
[[nodiscard]] std::vector<QString> allLaws();

// The sources under app/, core/ and ui/ of that root, from the root, sorted.
[[nodiscard]] std::vector<QString> sourcesUnder(const QDir& root);

[[nodiscard]] std::vector<Violation> checkSources(const QDir& root);

}  // namespace steelyard::architecture
