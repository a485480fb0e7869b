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
    QString plain = q(formatAmount(amount, units));
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
QString temperatureText(Celsius degrees, UnitSystem units)
{
    QString text = q(formatTemperature(degrees, units));
    text.replace(u'-', QChar(0x2212));
    return text;
}

QString degreeUnit(UnitSystem units)
{
    return units == UnitSystem::Us ? QStringLiteral("°F") : QStringLiteral("°C");
}

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

QString whenText(Moment moment, QDate today)
{
    const QDateTime at = local(moment);
    QString time = QLocale().toString(at.time(), QLocale::ShortFormat);
    const qint64 days = today.daysTo(at.date());
    if (days == 0)
        return time;
    if (days == 1)
        return Words::tr("tomorrow %1").arg(time);
    if (days == -1)
        return Words::tr("yesterday %1").arg(time);
    //: a day of the week and a time
    return days > 0 && days < 7 ? Words::tr("%1 %2").arg(QLocale().dayName(at.date().dayOfWeek()), time)
                                : dateText(at.date());
}

QString verdictKey(Verdict verdict) { return q(word(verdict)); }

namespace {

/// A reason in the few words a card has room for.
QString briefly(const Reason& reason)
{
    const QString day = reason.when ? dayText(*reason.when) : QString();
    const bool certain = reason.verdict == Verdict::DoNotUse;
    if (reason.code == "printed_date")
        return certain ? Words::tr("Use by %1 has gone by").arg(day)
                       : Words::tr("The label says %1").arg(day);
    if (reason.code == "sealed_life")
        return certain ? Words::tr("Past its life unopened") : Words::tr("May be past its life unopened");
    if (reason.code == "opened_life")
        return certain ? Words::tr("Opened %1, past its life").arg(day)
                       : Words::tr("Opened %1, may be past its life").arg(day);
    if (reason.code == "life_not_known")
        return Words::tr("How long it keeps is not known");
    if (reason.code == "age_not_known")
        return Words::tr("Its age is not known");
    if (reason.code == "place_not_known")
        return Words::tr("Where it stood is not known");
    if (reason.code == "frost_not_known")
        return reason.verdict == Verdict::NotKnown ? Words::tr("Whether it froze is not known")
                                                   : Words::tr("Stood in the cold: warm it through");
    if (reason.code == "frozen")
        return Words::tr("Froze, last on %1").arg(day);
    if (reason.code == "may_have_crystallised")
        return Words::tr("Stood in the cold: look for crystals");
    if (reason.code == "too_hot")
        return Words::tr("Stood too warm");
    if (reason.code == "bench_test_failed")
        return Words::tr("Failed its test on %1").arg(day);
    if (reason.code == "lot_on_hold")
        return Words::tr("Lot on hold since %1").arg(day);
    if (reason.code == "does_not_age")
        return Words::tr("Time does not use it up");
    return q(reason.text);
}

} // namespace

QString reasonText(const Judgement& judgement)
{
    if (judgement.verdict == Verdict::Good && judgement.goodUntil)
        return Words::tr("Good until %1").arg(dayText(*judgement.goodUntil));
    return judgement.reasons.empty() ? QString() : briefly(judgement.reasons.front());
}

} // namespace gw
