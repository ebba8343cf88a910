#include "ui/pages/first_run/first_run_page.h"

#include "ui/format/format.h"
#include "ui/widgets/choice_row.h"
#include "ui/shell/theme.h"

#include <QtCore/QDir>
#include <QtCore/QFileInfo>

namespace steelyard {

FirstRunPage::FirstRunPage(QWidget* parent) : QWidget(parent), m_message(new QLabel(this)), m_recent(new QVBoxLayout)
{
    auto* middle = new QWidget(this);
    middle->setMaximumWidth(fontMetrics().averageCharWidth() * 120);
    auto* column = new QVBoxLayout(middle);
    column->setSpacing(14);
    auto* title = new QLabel(tr("Steelyard"), middle);
    QFont font = title->font();
    font.setPointSizeF(font.pointSizeF() * 2.2);
    title->setFont(font);
    auto* lead =
        new QLabel(tr("For every lifter and every lift, once a week: did this really improve, can we even tell, "
                      "and what comes next? Everything is kept in one file on this computer, the book."),
                   middle);
    lead->setWordWrap(true);
    m_message->setTextFormat(Qt::PlainText);
    m_message->setWordWrap(true);
    m_message->setObjectName(QStringLiteral("firstRunMessage"));
    QPalette alarm = m_message->palette();
    alarm.setColor(QPalette::WindowText, themeColours(alarm).alarm);
    m_message->setPalette(alarm);
    m_message->hide();
    column->addStretch(1);
    for (QWidget* widget : std::initializer_list<QWidget*>{title, lead, m_message}) column->addWidget(widget);
    column->addSpacing(10);
    struct Way {
        QString action;
        QString text;
        QString explanation;
    };
    const Way ways[] = {
        {QStringLiteral("book.sample"), tr("L&ook around in a sample club"),
         tr("Makes a book with invented lifters and some years of training, to try everything on.")},
        {QStringLiteral("book.importNew"), tr("&Import a logbook"),
         tr("Makes a book and reads a CSV file into it, after a preview.")},
        {QStringLiteral("book.new"), tr("Begin an e&mpty book"),
         tr("With the starter library of exercises; add lifters one by one.")},
    };
    for (const Way& way : ways) {
        QPushButton* button = addChoice(column, way.text, way.explanation);
        button->setObjectName(way.action);
        connect(button, &QPushButton::clicked, this, [this, id = way.action] { Q_EMIT actionRequested(id); });
    }
    column->addLayout(m_recent);
    column->addStretch(2);
    auto* layout = new QHBoxLayout(this);
    layout->addStretch(1);
    layout->addWidget(middle, 4);
    layout->addStretch(1);
}

void FirstRunPage::say(const QString& text)
{
    m_message->setText(text);
    m_message->setVisible(!text.isEmpty());
}

void FirstRunPage::setRecentBooks(const QStringList& paths)
{
    delete m_recentList;
    m_recentList = new QWidget(this);
    m_recent->addWidget(m_recentList);
    auto* list = new QVBoxLayout(m_recentList);
    list->setContentsMargins(0, 16, 0, 0);
    list->setSpacing(2);
    if (!paths.isEmpty()) list->addWidget(new QLabel(tr("Opened lately"), m_recentList));
    for (const QString& path : paths) {
        const QFileInfo file(path);
        QString text =
            QStringLiteral("%1   —   %2").arg(file.completeBaseName(), QDir::toNativeSeparators(file.path()));
        auto* button = new QPushButton(text.replace(QLatin1Char('&'), QStringLiteral("&&")), m_recentList);
        button->setFlat(true);
        button->setStyleSheet(
            QStringLiteral("QPushButton { text-align: left; padding: 5px 8px; border: none; }"
                           "QPushButton:hover, QPushButton:focus { text-decoration: underline; }"));
        button->setToolTip(format::plainToolTip(path));
        connect(button, &QPushButton::clicked, this, [this, path] { Q_EMIT bookRequested(path); });
        list->addWidget(button);
    }
}

}  // namespace steelyard
