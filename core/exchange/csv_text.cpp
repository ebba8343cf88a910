#include "core/exchange/csv_text.h"

namespace steelyard {
namespace {

bool needsGuard(QChar first)
{
    return first == u'=' || first == u'+' || first == u'-' || first == u'@' || first == u'\t' || first == u'\r'
           || first == u'\'';
}

}  // namespace

QString guardText(const QString& text)
{
    return !text.isEmpty() && needsGuard(text.front()) ? u'\'' + text : text;
}

QString unguardText(const QString& text)
{
    return text.size() > 1 && text.front() == u'\'' && needsGuard(text.at(1)) ? text.mid(1) : text;
}

}  // namespace steelyard
