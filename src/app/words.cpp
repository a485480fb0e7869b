#include "app/words.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QLocale>
#include <QTimeZone>

#include "app/clock.h"

namespace gw {

namespace {

struct Words {
    Q_DECLARE_TR_FUNCTIONS(gw::Words)
};

QDateTime local(Moment moment)
{
    return QDateTime::fromMSecsSinceEpoch(toMilliseconds(moment)).toLocalTime();
}

/// The unit words that are words; symbols stay what they are.
QString unitWord(const QString& unit)
{
    if (unit == QLatin1String("pieces"))
        return Words::tr("pieces");
    if (unit == QLatin1String("piece"))
        return Words::tr("piece");
    return unit;
}

} // namespace

QString amountText(Amount amount, UnitSystem units)
{
    const QString plain = q(formatAmount(amount, units));
    const qsizetype blank = plain.indexOf(u' ');
    if (blank < 0)
        return plain;
    QString number = plain.left(blank);
    number.replace(u'.', QLocale().decimalPoint());
    return number + QChar::Nbsp + unitWord(plain.mid(blank + 1));
}

QString numberText(double number, int decimals)
{
    QLocale locale;
    locale.setNumberOptions(QLocale::OmitGroupSeparator);
    QString text = locale.toString(number, 'f', decimals);
    const QString mark = locale.decimalPoint();
    if (text.contains(mark)) {
        while (text.endsWith(locale.zeroDigit()))
            text.chop(locale.zeroDigit().size());
        if (text.endsWith(mark))
            text.chop(mark.size());
    }
    return text;
}

//: How a day is written; see QLocale::toString for the letters.
QString dateText(QDate date) { return QLocale().toString(date, Words::tr("d MMM yyyy")); }
QString dateText(Date date) { return dateText(toQDate(date)); }
QString dayText(Moment moment) { return dateText(local(moment).date()); }
//: How a month is written; see QLocale::toString for the letters.
QString monthText(Moment moment) { return QLocale().toString(local(moment).date(), Words::tr("MMM yyyy")); }

QString momentText(Moment moment, QDate today)
{
    const QDateTime at = local(moment);
    const QString time = QLocale().toString(at.time(), QLocale::ShortFormat);
    if (at.date() == today)
        return Words::tr("Today %1").arg(time);
    if (at.date() == today.addDays(-1))
        return Words::tr("Yesterday %1").arg(time);
    return dateText(at.date());
}

QString verdictKey(Verdict verdict) { return q(word(verdict)); }

QString reasonText(const Judgement& judgement)
{
    if (judgement.verdict == Verdict::Good && judgement.goodUntil)
        return Words::tr("Good until %1").arg(dayText(*judgement.goodUntil));
    if (judgement.reasons.empty())
        return {};
    return q(judgement.reasons.front().text);
}

} // namespace gw
