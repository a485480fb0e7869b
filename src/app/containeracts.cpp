#include "app/containeracts.h"

#include "app/labeltext.h"
#include "measure/number.h"

namespace gw {

ContainerActs::ContainerActs(QObject* parent)
    : Controller(parent)
{
}

void ContainerActs::open()
{
    doIt([](Shop& shop, const std::string& container, ActTime time) {
        return openContainer(shop, container, time);
    });
}

void ContainerActs::use(const QString& amount, const QString& unit)
{
    const auto taken = readAmount(amount, unit);
    if (!taken)
        return setError(taken.error());
    doIt([taken = *taken](Shop& shop, const std::string& container, ActTime time) {
        return useSome(shop, container, taken, {}, time);
    });
}

void ContainerActs::count(const QString& amount, const QString& unit)
{
    const auto left = readAmount(amount, unit);
    if (!left)
        return setError(left.error());
    doIt([left = *left](Shop& shop, const std::string& container, ActTime time) {
        return countLeft(shop, container, left, time);
    });
}

void ContainerActs::decant(const QString& amount, const QString& unit, const QString& place)
{
    const auto poured = readAmount(amount, unit);
    if (!poured)
        return setError(poured.error());
    doIt([poured = *poured, place = place.toStdString()](Shop& shop, const std::string& container,
             ActTime time) { return gw::decant(shop, container, poured, place, time); });
}

void ContainerActs::move(const QString& place)
{
    doIt([place = place.toStdString()](Shop& shop, const std::string& container, ActTime time) {
        return moveTo(shop, container, place, time);
    });
}

void ContainerActs::test(bool passed, const QString& woodFailure, bool grainy, const QString& note)
{
    TestResult result { passed, {}, grainy, note.trimmed().toStdString() };
    if (!woodFailure.trimmed().isEmpty()) {
        const std::string typed = woodFailure.toStdString();
        const auto percent = leadingNumber(typed);
        if (!percent || (!percent->rest.empty() && percent->rest != "%") || percent->value < 0
            || percent->value > 100)
            return setError(
                tr("Wood failure is a percentage from 0 to 100; leave it empty when nobody looked."));
        result.woodFailurePercent = percent->value;
    }
    doIt([result](Shop& shop, const std::string& container, ActTime time) {
        return recordTest(shop, container, result, time);
    });
}

void ContainerActs::retire(const QString& why)
{
    doIt([why = why.trimmed().toStdString()](Shop& shop, const std::string& container, ActTime time) {
        return gw::retire(shop, container, why, time);
    });
}

void ContainerActs::hold(const QString& why)
{
    doIt([lot = m_lot.toStdString(), why = why.trimmed().toStdString()](
             Shop& shop, const std::string&, ActTime time) { return holdLot(shop, lot, why, time); });
}

void ContainerActs::release()
{
    doIt([lot = m_lot.toStdString()](
             Shop& shop, const std::string&, ActTime time) { return releaseLot(shop, lot, time); });
}

} // namespace gw
