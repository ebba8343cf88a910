#include "ui/pages/week/kept_filters.h"

#include <QtCore/QSettings>

#include <algorithm>

namespace steelyard {
namespace {

const QString kFiltersKey = QStringLiteral("week/filters");
const QString kFilterName = QStringLiteral("name");
const QString kFilterParts = QStringLiteral("filter");

auto named(const QString& name)
{
    return [&name](const KeptFilter& kept) { return kept.name.compare(name, Qt::CaseInsensitive) == 0; };
}

}  // namespace

KeptFilters::KeptFilters(QSettings* settings) : m_settings(settings)
{
    if (!m_settings) return;
    const int count = m_settings->beginReadArray(kFiltersKey);
    for (int i = 0; i < count; ++i) {
        m_settings->setArrayIndex(i);
        const QString name = m_settings->value(kFilterName).toString();
        if (!name.isEmpty())
            m_filters.push_back({name, PictureFilter::fromMap(m_settings->value(kFilterParts).toMap())});
    }
    m_settings->endArray();
}

void KeptFilters::store() const
{
    if (!m_settings) return;
    m_settings->remove(kFiltersKey);
    m_settings->beginWriteArray(kFiltersKey, static_cast<int>(m_filters.size()));
    for (int i = 0; i < static_cast<int>(m_filters.size()); ++i) {
        m_settings->setArrayIndex(i);
        m_settings->setValue(kFilterName, m_filters[static_cast<std::size_t>(i)].name);
        m_settings->setValue(kFilterParts, m_filters[static_cast<std::size_t>(i)].filter.toMap());
    }
    m_settings->endArray();
}

const KeptFilter* KeptFilters::find(const QString& name) const
{
    const auto at = std::ranges::find_if(m_filters, named(name));
    return at == m_filters.end() ? nullptr : &*at;
}

const KeptFilter* KeptFilters::find(const PictureFilter& filter) const
{
    const auto at = std::ranges::find(m_filters, filter, &KeptFilter::filter);
    return at == m_filters.end() ? nullptr : &*at;
}

void KeptFilters::keep(const QString& name, const PictureFilter& filter)
{
    const auto at = std::ranges::find_if(m_filters, named(name));
    if (at != m_filters.end())
        *at = {name, filter};
    else
        m_filters.push_back({name, filter});
    store();
}

bool KeptFilters::rename(const QString& from, const QString& to)
{
    const auto at = std::ranges::find_if(m_filters, named(from));
    const KeptFilter* other = find(to);
    if (at == m_filters.end() || (other && other != &*at)) return false;
    at->name = to;
    store();
    return true;
}

void KeptFilters::remove(const QString& name)
{
    std::erase_if(m_filters, named(name));
    store();
}

}  // namespace steelyard
