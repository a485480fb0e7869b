#include "app/timechart.h"

namespace gw {

void TimeChart::draw(ChartDrawn next)
{
    m_drawn = std::move(next);
    Q_EMIT drawn();
}

} // namespace gw
