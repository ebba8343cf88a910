// Recorded tables of numbers: comma-separated, a header line, no quotes.
#pragma once

#include <QtCore/QString>

#include <map>
#include <string>
#include <vector>

namespace steelyard {

class CsvRecord {
public:
    explicit CsvRecord(std::map<std::string, std::string> fields) : m_fields(std::move(fields)) {}
    // Fails the test (by throwing) when the table has no such column or the field is no number.
    [[nodiscard]] double number(const std::string& column) const { return std::stod(m_fields.at(column)); }
    [[nodiscard]] const std::string& text(const std::string& column) const { return m_fields.at(column); }

private:
    std::map<std::string, std::string> m_fields;
};

// `path` is relative to the sources. Lines that begin with # are remarks. Throws when the file can't be read.
[[nodiscard]] std::vector<CsvRecord> readCsvTable(const std::string& path);

}  // namespace steelyard
