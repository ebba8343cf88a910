#include "core/care/settings_traces.h"

#include "tests/support/temp_dir.h"

#include <QtCore/QSettings>
#include <QtCore/QVariantMap>

#include <gtest/gtest.h>

namespace steelyard {
namespace {

const QString kDana = QStringLiteral("Dana Quíll");

class SettingsTraces : public testing::Test {
protected:
    testing_support::TempDir m_dir;
    QSettings m_settings{m_dir.path(u"settings.ini"), QSettings::IniFormat};

    void keepFilters(const QStringList& names)
    {
        m_settings.beginWriteArray(QStringLiteral("week/filters"), static_cast<int>(names.size()));
        for (int i = 0; i < names.size(); ++i) {
            m_settings.setArrayIndex(i);
            m_settings.setValue(QStringLiteral("name"), QStringLiteral("filter %1").arg(i));
            m_settings.setValue(QStringLiteral("filter"), QVariantMap{{QStringLiteral("words"), names[i]}});
        }
        m_settings.endArray();
    }
    [[nodiscard]] QStringList filters()
    {
        QStringList names;
        const int count = m_settings.beginReadArray(QStringLiteral("week/filters"));
        for (int i = 0; i < count; ++i) {
            m_settings.setArrayIndex(i);
            names += m_settings.value(QStringLiteral("name")).toString() + u'='
                     + m_settings.value(QStringLiteral("filter")).toMap().value(QStringLiteral("words")).toString();
        }
        m_settings.endArray();
        return names;
    }
};

TEST_F(SettingsTraces, LoseTheNameWhereverItStandsAndKeepTheRest)
{
    keepFilters({QStringLiteral("juniors"), kDana.toUpper() + QStringLiteral(" only"), QStringLiteral("late"), kDana});
    m_settings.setValue(QStringLiteral("books/recent"),
                        QStringList{QStringLiteral("/a.steelyard"), QStringLiteral("/") + kDana});
    m_settings.setValue(QStringLiteral("import/last"), QByteArray("{\"athlete\": \"") + kDana.toUtf8() + "\"}");
    m_settings.setValue(QStringLiteral("window/geometry"), QByteArray("\x01\x02"));
    EXPECT_EQ(removeTraces(m_settings, kDana), 4);
    EXPECT_EQ(filters(), (QStringList{QStringLiteral("filter 0=juniors"), QStringLiteral("filter 2=late")}));
    EXPECT_EQ(m_settings.value(QStringLiteral("books/recent")).toStringList(),
              QStringList{QStringLiteral("/a.steelyard")});
    EXPECT_FALSE(m_settings.contains(QStringLiteral("import/last")));
    EXPECT_EQ(m_settings.value(QStringLiteral("window/geometry")).toByteArray(), QByteArray("\x01\x02"));
    const QByteArray file = m_dir.read(u"settings.ini");
    EXPECT_FALSE(file.contains("Dana"));
    EXPECT_FALSE(file.contains("DANA"));
}

TEST_F(SettingsTraces, AreLeftAloneWhenNothingNamesThem)
{
    keepFilters({QStringLiteral("juniors")});
    m_settings.sync();
    const QByteArray before = m_dir.read(u"settings.ini");
    EXPECT_EQ(removeTraces(m_settings, kDana), 0);
    EXPECT_EQ(removeTraces(m_settings, {}), 0);
    EXPECT_EQ(m_dir.read(u"settings.ini"), before);
}

}  // namespace
}  // namespace steelyard
