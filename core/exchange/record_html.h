// A plain page of headings, paragraphs and tables. Every text is escaped here, last, and nowhere else.
//
//   RecordHtml page(tr("What is kept"));
//   page.table({tr("Day"), tr("Mass")}, {{"2027-03-01", "82.0 kg"}});
//   file.write(page.finish());
#pragma once

#include <QtCore/QByteArray>
#include <QtCore/QStringList>

#include <vector>

namespace steelyard {

class RecordHtml {
public:
    explicit RecordHtml(const QString& title);
    void heading(const QString& text);
    void paragraph(const QString& text);
    // Columns without a value in any row are left out; nothing is written without rows.
    void table(const QStringList& header, const std::vector<QStringList>& rows);
    [[nodiscard]] QByteArray finish() const;

private:
    QString m_body;
    QString m_title;
};

}  // namespace steelyard
