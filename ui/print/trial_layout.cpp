#include "ui/print/trial_layout.h"

#include "core/trials/trial_outcomes.h"
#include "ui/format/format.h"
#include "ui/format/trial_words.h"
#include "ui/print/page_head.h"
#include "ui/print/sheet_words.h"
#include "ui/print/text_measure.h"

#include <QtCore/QCoreApplication>

#include <algorithm>
#include <array>

namespace steelyard {
namespace {

struct TrialLayoutText {
    Q_DECLARE_TR_FUNCTIONS(TrialLayoutText)
};

constexpr double kAnswerPoints = 13;
constexpr double kWordsPoints = 11;
constexpr double kBetweenParts = 4;
constexpr double kStripCell = 8;
constexpr double kStripGap = 1.2;
constexpr double kBlockGap = 2.6;
constexpr double kDoneGrey = 0.15;
constexpr double kLevelRow = 9;
constexpr double kLevelNames = 62;  // left of the scale
constexpr double kRatingScale = 10;
constexpr double kIntervalLine = 1.2;
constexpr double kMarkWidth = 10;  // of a number below the scale
constexpr double kLongestArm = 80;
constexpr int kMostQuestionLines = 2;
constexpr int kMostDeviationsOnPaper = 4;

class TrialPage {
public:
    TrialPage(const TrialSheet& sheet, QSizeF paper) : m_sheet(sheet), m_paper(paper)
    {
        for (const QString& name : sheet.analysis.armNames)
            m_arms.push_back(shortenText(name, kLongestArm, kWordsPoints, false));
    }

    [[nodiscard]] SheetPage build();

private:
    [[nodiscard]] QRectF column() const
    {
        return {kSideMargin, 0, m_paper.width() - 2 * kSideMargin, m_paper.height()};
    }
    void writeHeading(const QString& words);
    void writeWords(const QString& words, double points = kWordsPoints, bool bold = false, int most = 100);
    void writeQuestion();
    void writeCare();
    void writeAnswer();
    void drawStrip();
    void drawStripCell(const TrialDay& day, std::size_t number, QPointF at);
    void drawLevels();
    void drawLevel(std::size_t arm, const ArmLevel& level, double y, double left, double width);
    void writeKeepInMind();
    [[nodiscard]] const TrialObservation* seen(std::size_t day) const;

    const TrialSheet& m_sheet;
    QSizeF m_paper;
    std::vector<QString> m_arms;  // what they are called, short enough for a sentence
    SheetPage m_page;
    double m_y = 0;
};

SheetPage TrialPage::build()
{
    const PageHead head{.title = m_sheet.athlete,
                        .beside = sheetShortDate(m_sheet.today),
                        .under = TrialLayoutText::tr("Result of a trial"),
                        .underBeside = {},
                        .code = {},
                        .foot = TrialLayoutText::tr("For the lifter. Contains health information: keep it safe.")};
    writePageHead(m_page, m_paper, head);
    m_y = kClipMargin + pageHeadHeight(head) + kBetweenParts;
    writeQuestion();
    writeCare();
    writeAnswer();
    drawStrip();
    drawLevels();
    writeKeepInMind();
    return std::move(m_page);
}

void TrialPage::writeWords(const QString& words, double points, bool bold, int most)
{
    if (!words.isEmpty()) m_y = writeWrapped(m_page, column(), m_y, words, points, bold, most);
}

void TrialPage::writeHeading(const QString& words)
{
    m_y += kBetweenParts;
    writeWords(words, kWordsPoints, true, 1);
    m_y += 0.8;
}

void TrialPage::writeQuestion()
{
    writeWords(m_sheet.trial.question, kLargePoints, true, kMostQuestionLines);
    m_y += 1;
    for (std::size_t arm = 0; arm < m_sheet.trial.arms.size(); ++arm)
        writeWords(format::armTitle(m_arms, arm), kWordsPoints, false, 1);
}

void TrialPage::writeCare()
{
    QStringList sentences;
    for (const VetoedArm& veto : m_sheet.analysis.standing.out)
        sentences += format::vetoWords(veto, m_sheet.trial, m_arms);
    if (sentences.empty()) return;
    sentences += format::painCaution();
    m_y += kBetweenParts;
    QRectF shaded = column();
    shaded.setTop(m_y);
    m_y = writeShaded(m_page, shaded, sentences);
}

void TrialPage::writeAnswer()
{
    writeHeading(TrialLayoutText::tr("The answer"));
    writeWords(m_sheet.analysis.verdict.forLifter, kAnswerPoints, true);
    const auto& ending = m_sheet.trial.ending;
    if (!ending)
        writeWords(TrialLayoutText::tr("The trial still runs: this is what there is so far."));
    else if (ending->choice)
        writeWords(TrialLayoutText::tr("Your coach goes on with %1.").arg(format::armTitle(m_arms, *ending->choice)));
    else if (!ending->reason.isEmpty())
        writeWords(TrialLayoutText::tr("The trial was ended early: %1").arg(ending->reason), kWordsPoints, false, 2);
}

const TrialObservation* TrialPage::seen(std::size_t day) const
{
    const auto& all = m_sheet.analysis.record.observations;
    const auto at = std::ranges::find(all, day, &TrialObservation::day);
    return at == all.end() ? nullptr : &*at;
}

void TrialPage::drawStripCell(const TrialDay& day, std::size_t number, QPointF at)
{
    const QRectF box(at, QSizeF(kStripCell, kStripCell));
    const TrialObservation* session = seen(number);
    const bool isDone = session && session->done;
    m_page.boxes.push_back({box, kHairline, isDone && day.block > 0 ? kDoneGrey : 0, false});
    const QString letter = armLetter(isDone ? *session->done : day.arm);
    m_page.texts.push_back({box, letter, kWordsPoints, isDone, TextSide::Centre, false});
    if (isDone && day.block == 0)  // getting used to it: a frame within the frame
        m_page.boxes.push_back({box.adjusted(0.8, 0.8, -0.8, -0.8), kHairline, 0, false});
    if (isDone) return;
    m_page.lines.push_back({{box.topLeft(), box.bottomRight()}, kHairline});
}

void TrialPage::drawStrip()
{
    writeHeading(TrialLayoutText::tr("What was done"));
    double x = kSideMargin;
    const auto& days = m_sheet.trial.days;
    for (std::size_t i = 0; i < days.size(); ++i) {
        if (i > 0 && days[i].block != days[i - 1].block) x += kBlockGap;
        if (x + kStripCell > m_paper.width() - kSideMargin) {
            x = kSideMargin;
            m_y += kStripCell + kStripGap;
        }
        drawStripCell(days[i], i, {x, m_y});
        x += kStripCell + kStripGap;
    }
    m_y += kStripCell + 1.2;
    QString words = TrialLayoutText::tr("Grey: done. A line through: not done.");
    if (std::ranges::any_of(days, [](const TrialDay& day) { return day.block == 0; }))
        words += u' ' + TrialLayoutText::tr("A double frame: getting used to it, not counted.");
    words += u' ' + TrialLayoutText::tr("The order was drawn by lot.");
    writeWords(words, kSmallestPoints);
}

// An interval as a thick line, the level as a mark across it: whiskers survive a photocopy.
void TrialPage::drawLevel(std::size_t arm, const ArmLevel& level, double y, double left, double width)
{
    const double middle = y + kLevelRow / 2;
    const auto place = [&](double rating) {
        return left + width * std::clamp(rating, 0.0, kRatingScale) / kRatingScale;
    };
    writeLine(
        m_page,
        {kSideMargin, y + (kLevelRow - lineHeightMm(kWordsPoints)) / 2, kLevelNames - 3, lineHeightMm(kWordsPoints)},
        format::armTitle(m_arms, arm), kWordsPoints);
    m_page.lines.push_back({{left, middle, left + width, middle}, kHairline});
    if (!level.level || !level.low90 || !level.high90) return;
    m_page.lines.push_back({{place(*level.low90), middle, place(*level.high90), middle}, kIntervalLine});
    const double at = place(*level.level);
    m_page.lines.push_back({{at, middle - 2.6, at, middle + 2.6}, kIntervalLine / 2});
}

void TrialPage::drawLevels()
{
    const auto& answer = m_sheet.analysis.verdict.done.answer;
    if (!answer) return;
    writeHeading(TrialLayoutText::tr("How it felt, all taken together, from 0 to 10"));
    const double left = kSideMargin + kLevelNames;
    const double width = m_paper.width() - kSideMargin - left - kMarkWidth / 2;
    for (std::size_t arm = 0; arm < answer->arms.size(); ++arm) {
        drawLevel(arm, answer->arms[arm], m_y, left, width);
        m_y += kLevelRow;
    }
    constexpr std::array kMarks{0, 5, 10};
    for (const int mark : kMarks)
        m_page.texts.push_back(
            {{left + width * mark / kRatingScale - kMarkWidth / 2, m_y, kMarkWidth, lineHeightMm(kSmallestPoints)},
             QLocale().toString(mark),
             kSmallestPoints,
             false,
             TextSide::Centre,
             false});
    m_y += lineHeightMm(kSmallestPoints) + 1;
    writeWords(TrialLayoutText::tr(
                   "Upright mark: your level. Thick line: where it lies with 9 chances of 10. Where the thick lines "
                   "lie over each other for long, the ways are hard to tell apart."),
               kSmallestPoints);
}

void TrialPage::writeKeepInMind()
{
    writeHeading(TrialLayoutText::tr("What to keep in mind"));
    const TrialVerdict& verdict = m_sheet.analysis.verdict;
    QStringList sentences{
        TrialLayoutText::tr("This says what suited you in these weeks. It says nothing of anybody else, and you may "
                            "change.")};
    sentences += TrialLayoutText::tr("Ratings tell what was felt, not how much muscle was built.");
    if (!verdict.looks.isEmpty()) sentences += verdict.looks;
    for (std::size_t i = 0; i < verdict.deviations.size() && i < kMostDeviationsOnPaper; ++i)
        sentences += verdict.deviations[i];
    // Of what was done otherwise there is no end; the page has one.
    const double bottom = m_paper.height() - kBottomMargin - 2 * lineHeightMm(kSmallestPoints);
    for (const QString& sentence : sentences) {
        const QStringList lines = wrapText(sentence, column().width(), kSmallestPoints, false, 3);
        if (m_y + static_cast<double>(lines.size()) * lineHeightMm(kSmallestPoints) > bottom) return;
        writeWords(sentence, kSmallestPoints, false, 3);
    }
}

}  // namespace

SheetLayout layOutTrial(const TrialSheet& sheet, PaperSize paper)
{
    SheetLayout layout{.paper = paperMillimetres(paper), .pages = {}};
    layout.pages.push_back(TrialPage(sheet, layout.paper).build());
    return layout;
}

}  // namespace steelyard
