// Writes comma-separated text (RFC 4180, but with line feeds) to a device, field by field, in UTF-8.
//
//   CsvWriter csv(file);
//   csv.text(u"=A1"_qs);        // guarded: '=A1
//   csv.plain("42.50");         // numbers, dates, keys: as they are
//   csv.blank();
//   STEELYARD_CHECK(csv.endRow());
//
// A field is quoted only when it holds a comma, a quotation mark or a line break. Rows are gathered and written in large
// pieces; finish() writes the rest. Failure: Storage when the device takes less than it was given.
#pragma once

#include "core/base/result.h"

#include <QtCore/QByteArray>

#include <cstdint>
#include <string_view>

class QIODevice;

namespace steelyard {

class CsvWriter {
public:
    explicit CsvWriter(QIODevice& device) : m_device(device) {}

    void text(const QString& text);     // guarded, see csv_text.h
    void plain(std::string_view utf8);  // not guarded
    void number(std::int64_t value);
    void blank() { startField(); }
    [[nodiscard]] Result<void> endRow();
    [[nodiscard]] Result<void> finish();

private:
    void startField();
    void append(QByteArrayView utf8);
    QIODevice& m_device;
    QByteArray m_buffer;
    bool m_rowBegun = false;
};

}  // namespace steelyard
