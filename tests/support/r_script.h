// Runs a script in R, the outside reference of the numerical checks, on numbers given line by line to its standard input.
//
//   const std::vector<double> answer = runR("x <- scan(file('stdin'), quiet = TRUE); cat(mad(x))", values);
//
// Numbers go both ways with 17 digits (the script prints with digits = 17). A machine without R fails the test that asks.
#pragma once

#include <QtCore/QProcess>
#include <QtCore/QStandardPaths>

#include <gtest/gtest.h>

#include <vector>

namespace steelyard::testing_support {

inline std::vector<double> runR(const char* script, const std::vector<double>& input)
{
    const QString program = QStandardPaths::findExecutable(QStringLiteral("Rscript"));
    if (program.isEmpty()) {
        ADD_FAILURE() << "Rscript is missing: install the package r-base-core";
        return {};
    }
    QByteArray lines;
    for (const double value : input) lines += QByteArray::number(value, 'g', 17) + '\n';
    QProcess r;
    r.start(program, {QStringLiteral("--vanilla"), QStringLiteral("-e"), QString::fromUtf8(script)});
    r.write(lines);
    r.closeWriteChannel();
    if (!r.waitForFinished(60'000) || r.exitCode() != 0) {
        ADD_FAILURE() << "R failed: " << r.readAllStandardError().toStdString();
        return {};
    }
    std::vector<double> answer;
    for (const QByteArray& word : r.readAllStandardOutput().simplified().split(' ')) {
        bool isNumber = false;
        answer.push_back(word.toDouble(&isNumber));
        if (!isNumber) ADD_FAILURE() << "R said: " << word.toStdString();
    }
    return answer;
}

}  // namespace steelyard::testing_support
