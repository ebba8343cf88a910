// The stretch of a time axis that is in sight: all of it, or a part that is zoomed into and panned.
//
//   TimeWindow window;
//   window.setWhole(low, high);
//   window.zoom(0.5, cursorDay);    // half as wide, the cursor's day where it was
//   window.pan(window.width() / 4);
//
// Invariants: whole low <= low < high <= whole high; never narrower than kLeastDays, unless the whole is.
#pragma once

namespace steelyard {

class TimeWindow {
public:
    static constexpr double kLeastDays = 14;

    // Keeps a part that is in sight when the axis is the same as before.
    void setWhole(double low, double high);
    void zoom(double factor, double around);
    void pan(double days);
    void showAll();
    // Pans just so far that the day is in sight.
    void show(double day);

    [[nodiscard]] double low() const { return m_low; }
    [[nodiscard]] double high() const { return m_high; }
    [[nodiscard]] double width() const { return m_high - m_low; }
    [[nodiscard]] bool isWhole() const { return m_low == m_wholeLow && m_high == m_wholeHigh; }
    [[nodiscard]] bool holds(double day) const { return day >= m_low && day <= m_high; }

private:
    double m_wholeLow = 0;
    double m_wholeHigh = 1;
    double m_low = 0;
    double m_high = 1;
};

}  // namespace steelyard
