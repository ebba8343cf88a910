#include "core/exchange/record_html.h"

#include <algorithm>

namespace steelyard {
namespace {

QString htmlText(const QString& text)
{
    return text.toHtmlEscaped().replace(u'\n', QStringLiteral("<br>"));
}

void addHtmlRow(QString& body, const QStringList& cells, const std::vector<qsizetype>& columns, const char* tag)
{
    body += QStringLiteral("<tr>");
    for (const qsizetype column : columns)
        body += QStringLiteral("<%1>%2</%1>").arg(QLatin1StringView(tag), htmlText(cells.value(column)));
    body += QStringLiteral("</tr>\n");
}

}  // namespace

RecordHtml::RecordHtml(const QString& title) : m_title(title)
{
    m_body = QStringLiteral("<h1>%1</h1>\n").arg(htmlText(title));
}

void RecordHtml::heading(const QString& text)
{
    m_body += QStringLiteral("<h2>%1</h2>\n").arg(htmlText(text));
}

void RecordHtml::paragraph(const QString& text)
{
    m_body += QStringLiteral("<p>%1</p>\n").arg(htmlText(text));
}

void RecordHtml::table(const QStringList& header, const std::vector<QStringList>& rows)
{
    if (rows.empty()) return;
    std::vector<qsizetype> columns;
    for (qsizetype column = 0; column < header.size(); ++column)
        if (std::ranges::any_of(rows, [column](const QStringList& row) { return !row.value(column).isEmpty(); }))
            columns.push_back(column);
    m_body += QStringLiteral("<table>\n");
    addHtmlRow(m_body, header, columns, "th");
    for (const QStringList& row : rows) addHtmlRow(m_body, row, columns, "td");
    m_body += QStringLiteral("</table>\n");
}

QByteArray RecordHtml::finish() const
{
    // Not arg(): a text may hold %1 itself.
    return (QStringLiteral("<!DOCTYPE html>\n<html>\n<head>\n<meta charset=\"utf-8\">\n"
                           "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
                           "'unsafe-inline'\">\n<title>")
            + m_title.toHtmlEscaped()
            + QStringLiteral("</title>\n<style>body{font-family:sans-serif;max-width:75em;margin:2em auto;padding:0 "
                             "1em}table{border-collapse:collapse;margin:.5em 0 1.5em}th,td{border:1px solid "
                             "#999;padding:.2em .5em;text-align:left;vertical-align:top}</style>\n</head>\n<body>\n")
            + m_body + QStringLiteral("</body>\n</html>\n"))
        .toUtf8();
}

}  // namespace steelyard
