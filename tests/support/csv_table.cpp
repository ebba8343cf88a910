#include "tests/support/csv_table.h"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace steelyard {
namespace {

std::vector<std::string> fieldsOf(const std::string& line)
{
    std::vector<std::string> fields;
    std::stringstream stream(line);
    for (std::string field; std::getline(stream, field, ',');) fields.push_back(field);
    return fields;
}

}  // namespace

std::vector<CsvRecord> readCsvTable(const std::string& path)
{
    std::ifstream file(std::string(STEELYARD_SOURCE_DIR) + '/' + path);
    if (!file) throw std::runtime_error("can't read " + path);
    std::vector<std::string> header;
    std::vector<CsvRecord> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') continue;
        const auto fields = fieldsOf(line);
        if (header.empty()) {
            header = fields;
            continue;
        }
        std::map<std::string, std::string> row;
        for (std::size_t i = 0; i < header.size(); ++i) row[header[i]] = i < fields.size() ? fields[i] : std::string();
        rows.emplace_back(std::move(row));
    }
    return rows;
}

}  // namespace steelyard
