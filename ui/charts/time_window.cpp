#include "ui/charts/time_window.h"

#include <algorithm>

namespace steelyard {

void TimeWindow::setWhole(double low, double high)
{
    if (low == m_wholeLow && high == m_wholeHigh) return;
    m_wholeLow = low;
    m_wholeHigh = high;
    showAll();
}

void TimeWindow::showAll()
{
    m_low = m_wholeLow;
    m_high = m_wholeHigh;
}

void TimeWindow::zoom(double factor, double around)
{
    const double whole = m_wholeHigh - m_wholeLow;
    const double width = std::clamp(this->width() * factor, std::min(kLeastDays, whole), whole);
    if (width >= whole) {
        showAll();
        return;
    }
    around = std::clamp(around, m_low, m_high);
    const double share = (around - m_low) / this->width();
    m_low = around - share * width;
    m_high = m_low + width;
    pan(0);
}

void TimeWindow::pan(double days)
{
    const double width = this->width();
    m_low = std::clamp(m_low + days, m_wholeLow, std::max(m_wholeLow, m_wholeHigh - width));
    m_high = std::min(m_low + width, m_wholeHigh);
}

void TimeWindow::show(double day)
{
    if (day < m_low) pan(day - m_low);
    if (day > m_high) pan(day - m_high);
}

}  // namespace steelyard
