// How the keying screen is put together, and what its board asks of it.
#include "ui/pages/floor/keying_view.h"

#include "ui/pages/floor/keying_row.h"
#include "ui/pages/floor/keying_side.h"
#include "ui/shell/theme.h"
#include "ui/widgets/elided_label.h"
#include "ui/widgets/lift_chooser.h"

#include <QtWidgets/QLabel>
#include <QtWidgets/QVBoxLayout>

namespace steelyard {
namespace {

constexpr int kSideLetters = 41;
constexpr int kMostSideLetters = 70;
constexpr int kMostBoardLetters = 180;  // on a wide screen what belongs together stays together

}  // namespace

void KeyingView::build()
{
    QFont bold = font();
    bold.setBold(true);
    bold.setPointSizeF(bold.pointSizeF() * 1.15);
    m_who->setFont(bold);
    m_done->setTextFormat(Qt::PlainText);
    const int letter = fontMetrics().averageCharWidth();
    m_side->setMinimumWidth(kSideLetters * letter);
    m_side->setMaximumWidth(kMostSideLetters * letter);
    m_board->setMaximumWidth(kMostBoardLetters * letter);
    m_hint->setTextFormat(Qt::PlainText);
    m_hint->setWordWrap(true);
    m_hint->setMinimumHeight(2 * fontMetrics().lineSpacing());
    m_hint->setAlignment(Qt::AlignTop | Qt::AlignLeft);
    QPalette quiet = palette();
    quiet.setColor(QPalette::WindowText, themeColours(palette()).quiet);
    m_hint->setPalette(quiet);
    auto* head = new QHBoxLayout;
    head->setContentsMargins(10, 6, 10, 0);
    head->addWidget(m_who, 1);
    head->addWidget(m_done);
    auto* middle = new QHBoxLayout;
    middle->setSpacing(0);
    middle->addWidget(m_board, 12);
    middle->addWidget(m_side, 1);
    middle->addStretch();
    auto* foot = new QVBoxLayout;
    foot->setContentsMargins(10, 0, 10, 4);
    foot->addWidget(m_chooser);
    foot->addWidget(m_hint);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins({});
    column->setSpacing(4);
    column->addLayout(head);
    column->addLayout(middle, 1);
    column->addLayout(foot);
}

void KeyingView::connectBoard()
{
    connect(m_chooser, &LiftChooser::left, this, &KeyingView::takeFocus);
    connect(m_board, &KeyingBoard::stopReached, this, &KeyingView::setCurrent);
    connect(m_board, &KeyingBoard::edited, this, [this](KeyingPlace at) {
        m_typing->changed(at);
        showHint();
    });
    connect(m_board, &KeyingBoard::entered, this, [this](KeyingPlace at, Watched watched) {
        if (m_typing->accept(at, watched)) return step(1);
        showHint();
    });
    connect(m_board, &KeyingBoard::leaving, this, [this](KeyingPlace at, int by) {
        if (m_typing->leave(at)) return step(by);
        showHint();
    });
    connect(m_board, &KeyingBoard::abandoned, this, [this](KeyingPlace at) { m_typing->storeSilently(at); });
    connect(m_board, &KeyingBoard::suggestionTaken, this, [this](KeyingPlace at) {
        if (!m_typing->takeSuggestion(at) && m_typing->leave(at)) return step(1);
        showHint();
    });
    connect(m_board, &KeyingBoard::rated, this, &KeyingView::rate);
    connect(m_board, &KeyingBoard::stepped, this, &KeyingView::step);
    connect(m_board, &KeyingBoard::restSkipped, this, &KeyingView::skipRest);
    connect(m_board, &KeyingBoard::ended, this, &KeyingView::leaveEnd);
}

}  // namespace steelyard
