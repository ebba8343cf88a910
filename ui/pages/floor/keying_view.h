// Keying a day's sessions: one lifter after the other, in the order of the printed sheets, hands on the keys.
//
//   view->setDay(date, people);
//   view->open(athlete);
//
// What is typed in a row is in the book when the row is left; a rating when its cell is. The cursor walks through the stops of
// the board (keying_board.h); from the end Enter goes on to the next lifter. Nothing here stops with a box: what is wrong or
// unlikely is said in the row, and asked once.
//
// Actions: floor.key.* of the action table.
#pragma once

#include "ui/pages/floor/keying_board.h"
#include "ui/pages/floor/keying_typing.h"
#include "ui/shell/context.h"

class QLabel;

namespace steelyard {

class ElidedLabel;
class KeyingSide;
class LiftChooser;
struct LiftChoice;

struct KeyedPerson {
    Id<Athlete> athlete;
    QString name;
};

class KeyingView final : public QWidget {
    Q_OBJECT

public:
    explicit KeyingView(const UiContext& context, QWidget* parent = nullptr);
    // What is typed and can be read goes into the book.
    ~KeyingView() override;

    void setDay(QDate date, std::vector<KeyedPerson> people);
    // False: a row of the lifter who was open isn't in the book yet, and the coach is asked about it first.
    bool open(Id<Athlete> athlete, bool takesFocus = true);
    // The next (+1) or previous lifter of the day.
    void openNeighbour(int step);
    // One step back: out of the chooser, out of what is half typed. False: there is none, keying can end.
    bool goBack();
    // Nobody is open any more. False as open().
    bool close();
    void takeFocus();
    // After a change of the book that wasn't made here.
    void reread();
    void perform(const QString& action);
    [[nodiscard]] bool canPerform(const QString& action) const;

    // For whoever makes a set another way (counting at the rack): it goes into the row where the cursor is, which then goes on.
    // False: the cursor is in no row, or the book refused it.
    bool putIntoCurrentRow(SetEntry set);

    // Null: nobody is open.
    [[nodiscard]] const KeyingDesk* desk() const { return m_desk.get(); }
    [[nodiscard]] std::optional<KeyingPlace> currentPlace() const;

Q_SIGNALS:
    void actionsChanged();
    void said(const QString& text);
    // The last lifter of the day is done.
    void finished();

private:
    using Write = std::function<Result<void>()>;

    void build();
    void connectBoard();
    void showDesk();
    void showHead();
    void showHint();
    void setCurrent(const KeyingStop& stop);
    void step(int by);
    void leaveExercise(int by);
    void skipRest(const KeyingStop& stop);
    void goToOpenRow(std::size_t exercise);
    void leaveEnd();
    [[nodiscard]] std::vector<KeyedPerson>::const_iterator here() const;

    bool store(const Write& write, std::optional<KeyingPlace> at = {});
    void rate(const KeyingStop& stop, const ExerciseRating& rating);
    void removeSet(KeyingPlace at);
    // A row that is typed and not in the book is shown once before it is left out.
    bool warnOfDraft();
    // What a trial asks and nobody rated is shown once before its lifter is left.
    bool askForTrialRatings();
    [[nodiscard]] bool leaveRow();
    void chooseLift();
    void chooseExercise();
    void addRow();

    UiContext m_context;
    QDate m_date;
    std::vector<KeyedPerson> m_people;
    std::unique_ptr<KeyingDesk> m_desk;
    std::unique_ptr<KeyingTyping> m_typing;  // as long as there is a desk
    KeyingStop m_current;
    bool m_warned = false;
    bool m_askedRatings = false;  // of this lifter
    bool m_storing = false;

    ElidedLabel* m_who;
    QLabel* m_done;
    KeyingBoard* m_board;
    KeyingSide* m_side;
    LiftChooser* m_chooser;
    QLabel* m_hint;
};

}  // namespace steelyard
