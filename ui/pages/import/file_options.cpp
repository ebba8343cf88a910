#include "ui/pages/import/file_options.h"

#include <QtWidgets/QCheckBox>
#include <QtWidgets/QComboBox>
#include <QtWidgets/QHBoxLayout>
#include <QtWidgets/QLabel>

#include <algorithm>

namespace steelyard {
namespace {

const QString kAthleteColumn = QStringLiteral("athlete");

void chooseData(QComboBox* box, const QVariant& value)
{
    box->setCurrentIndex(std::max(0, box->findData(value)));
}

}  // namespace

FileOptions::FileOptions(QWidget* parent) : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(6);
    auto* first = new QHBoxLayout;
    auto* second = new QHBoxLayout;
    column->addLayout(first);
    column->addLayout(second);
    std::vector<std::pair<QString, QVariant>> encodings;
    for (const auto& row : EnumText<TextEncoding>::table) {
        const QString name = toText(row.value);
        encodings.emplace_back(name, name);
    }
    const auto put = [this](QHBoxLayout* row, const QString& name,
                            const std::vector<std::pair<QString, QVariant>>& items) {
        QComboBox* box = add(name, items);
        auto* label = new QLabel(name, this);
        label->setBuddy(box);
        row->addWidget(label);
        row->addWidget(box);
        row->addSpacing(10);
        return box;
    };
    m_encoding = put(first, tr("&Encoding"), encodings);
    m_separator = put(first, tr("&Separator"),
                      {{tr("comma"), QChar(u',')},
                       {tr("semicolon"), QChar(u';')},
                       {tr("tab"), QChar(u'\t')},
                       {tr("bar |"), QChar(u'|')}});
    m_decimal = put(first, tr("&Decimals"), {{tr("point, 42.5"), false}, {tr("comma, 42,5"), true}});
    m_dates = put(first, tr("Da&tes"),
                  {{tr("year-month-day"), static_cast<int>(DateOrder::YearMonthDay)},
                   {tr("day-month-year"), static_cast<int>(DateOrder::DayMonthYear)},
                   {tr("month-day-year"), static_cast<int>(DateOrder::MonthDayYear)}});
    first->addStretch(1);
    m_unit = put(second, tr("&Unit, if a row names none"),
                 {{tr("the lifter’s own"), -1},
                  {tr("kg"), static_cast<int>(MassUnit::kg)},
                  {tr("lb"), static_cast<int>(MassUnit::lb)}});
    m_header = new QCheckBox(tr("&Headings in the first row"), this);
    m_sets = new QCheckBox(this);
    m_athleteLabel = new QLabel(tr("All rows are &of"), this);
    m_athlete = add(tr("All rows are of"), {});
    m_athleteLabel->setBuddy(m_athlete);
    m_athlete->setMinimumContentsLength(16);
    m_athlete->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    for (QWidget* part : {static_cast<QWidget*>(m_header), static_cast<QWidget*>(m_sets),
                          static_cast<QWidget*>(m_athleteLabel), static_cast<QWidget*>(m_athlete)})
        second->addWidget(part);
    second->addStretch(1);
    for (QCheckBox* box : {m_header, m_sets})
        connect(box, &QCheckBox::toggled, this, [this] {
            if (!m_filling) Q_EMIT changed();
        });
    setAthletes({});
}

QComboBox* FileOptions::add(const QString& name, const std::vector<std::pair<QString, QVariant>>& items)
{
    auto* box = new QComboBox(this);
    box->setAccessibleName(QString(name).remove(u'&'));
    for (const auto& [text, value] : items) box->addItem(text, value);
    connect(box, &QComboBox::currentIndexChanged, this, [this] {
        if (!m_filling) Q_EMIT changed();
    });
    return box;
}

void FileOptions::setAthletes(const QStringList& names)
{
    m_filling = true;
    m_athlete->clear();
    m_athlete->addItem(tr("choose…"), QString());
    for (const QString& name : names) m_athlete->addItem(name, name);
    m_filling = false;
}

void FileOptions::fill(const LogbookMapping& mapping, const std::vector<ColumnNames>& sets)
{
    m_filling = true;
    m_guessedSets = mapping.sets.empty() ? sets : mapping.sets;
    chooseData(m_encoding, toText(mapping.encoding));
    chooseData(m_separator, mapping.separator);
    chooseData(m_decimal, mapping.decimalMark == u',');
    chooseData(m_dates, static_cast<int>(mapping.dateOrder));
    chooseData(m_unit, mapping.unit ? static_cast<int>(*mapping.unit) : -1);
    m_header->setChecked(mapping.hasHeader);
    m_sets->setText(tr("Several sets in a &row (%1)").arg(m_guessedSets.size()));
    m_sets->setVisible(!m_guessedSets.empty());
    m_sets->setChecked(!mapping.sets.empty());
    const bool noColumn = !mapping.columns.contains(kAthleteColumn);
    m_athleteLabel->setVisible(noColumn);
    m_athlete->setVisible(noColumn);
    const auto fixed = mapping.fixed.find(kAthleteColumn);
    chooseData(m_athlete, fixed == mapping.fixed.end() ? QString() : fixed->second);
    m_filling = false;
}

void FileOptions::apply(LogbookMapping& mapping) const
{
    mapping.encoding =
        fromKey<TextEncoding>(QStringView(m_encoding->currentData().toString())).value_or(TextEncoding::Utf8);
    mapping.separator = m_separator->currentData().toChar();
    mapping.decimalMark = m_decimal->currentData().toBool() ? u',' : u'.';
    mapping.dateOrder = static_cast<DateOrder>(m_dates->currentData().toInt());
    const int unit = m_unit->currentData().toInt();
    mapping.unit = unit < 0 ? std::nullopt : std::optional(static_cast<MassUnit>(unit));
    mapping.hasHeader = m_header->isChecked();
    mapping.sets = m_sets->isChecked() ? m_guessedSets : std::vector<ColumnNames>();
    mapping.fixed.erase(kAthleteColumn);
    if (const QString name = m_athlete->currentData().toString(); !name.isEmpty() && !m_athlete->isHidden())
        mapping.fixed[kAthleteColumn] = name;
}

}  // namespace steelyard
