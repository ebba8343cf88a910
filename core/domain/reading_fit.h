// Numbers that readings rest on, as they were once fitted to the book's own record. What a number means, and which there
// are, core/analysis/parameter_names knows; here they are kept by name, a newer program's too.
#pragma once

#include <QtCore/QDate>
#include <QtCore/QString>

#include <map>

namespace steelyard {

struct ReadingFit {
    int version = 0;  // from 1 on; 0: not stored yet
    QDate fittedOn;
    int lines = 0;  // that it rests on
    int sets = 0;
    double logLikelihoodBefore = 0;
    double logLikelihoodAfter = 0;
    std::map<QString, double> numbers;
    friend bool operator==(const ReadingFit&, const ReadingFit&) = default;
};

}  // namespace steelyard
