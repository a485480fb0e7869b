#pragma once

#include <QDate>
#include <QString>

#include "ageing/verdict.h"
#include "measure/amount.h"
#include "measure/moment.h"
#include "measure/temperature.h"

/// Values as a person reads them: their language, decimals and time zone. Any thread.
namespace gw {

inline QString q(const std::string& text) { return QString::fromStdString(text); }
inline QString q(std::string_view text) { return QString::fromUtf8(text.data(), qsizetype(text.size())); }

QString amountText(Amount amount, UnitSystem units); ///< "1,5 kg" where the comma is the decimal mark
QString temperatureText(Celsius degrees, UnitSystem units); ///< "−6 °C", "22 °F"
QString degreeUnit(UnitSystem units); ///< "°C" or "°F"
QString numberText(double number, int decimals); ///< no group marks, no empty decimals
QString dateText(QDate date); ///< "25 May 2026"
QString dateText(Date date);
QString dayText(Moment moment); ///< the day of a moment, in the person's time zone
QString monthText(Moment moment); ///< "May 2026": for what lies months ahead
QString momentText(Moment moment, QDate today); ///< "Today 14:03", "Yesterday 9:10", "25 May 2026"
/// For what is near: "14:03", "tomorrow 14:03", "Friday 14:03"; else the day.
QString whenText(Moment moment, QDate today);
/// The verdict's word as the theme and the signs take it: "good", "test_first" ...
QString verdictKey(Verdict verdict);
/// A few words for a card: until when it is good, or the worst reason.
QString reasonText(const Judgement& judgement);

} // namespace gw
