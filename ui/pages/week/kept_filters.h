// The filters of the picture that the coach gave a name to. Kept with the program's settings, not in the book: they are ways
// of looking, serve every book alike (also one that can only be read), and nothing about a lifter hangs on them.
//
//   KeptFilters kept(context.settings);
//   kept.keep(u"juniors that stall"_qs, filter);
//
// Names are unique whatever their case; keeping one again replaces it, in its place. Without settings they live as long as
// this object.
#pragma once

#include "ui/pages/week/roster_picture_filter.h"

class QSettings;

namespace steelyard {

struct KeptFilter {
    QString name;
    PictureFilter filter;
    friend bool operator==(const KeptFilter&, const KeptFilter&) = default;
};

class KeptFilters {
public:
    explicit KeptFilters(QSettings* settings);

    [[nodiscard]] const std::vector<KeptFilter>& all() const { return m_filters; }
    [[nodiscard]] const KeptFilter* find(const QString& name) const;
    // By content: the name of what is shown now.
    [[nodiscard]] const KeptFilter* find(const PictureFilter& filter) const;
    void keep(const QString& name, const PictureFilter& filter);
    // False when another filter has the new name, or none has the old one.
    bool rename(const QString& from, const QString& to);
    void remove(const QString& name);

private:
    void store() const;

    QSettings* m_settings;
    std::vector<KeptFilter> m_filters;
};

}  // namespace steelyard
