#pragma once

#include <QDate>
#include <QObject>
#include <QStringList>
#include <QtQmlIntegration/qqmlintegration.h>

#include "app/choicemodel.h"
#include "app/labelsays.h"
#include "shop/arrivallot.h"

namespace gw {

/// What a person says of what arrives, as typed and picked, over what the code said already. It asks only
/// what is missing, unless everything is to be changed. GUI thread.
class ArrivalForm : public QObject {
    Q_OBJECT
    QML_ELEMENT
    QML_UNCREATABLE("made by ArrivalController")
    // What it is
    Q_PROPERTY(bool isNew READ isNew NOTIFY changed) ///< the shop does not buy it yet
    Q_PROPERTY(QString name READ name WRITE setName NOTIFY changed)
    Q_PROPERTY(QString className READ className NOTIFY changed) ///< empty: not said yet
    Q_PROPERTY(QString shape READ shape NOTIFY changed)
    Q_PROPERTY(QString contents READ contents NOTIFY changed)
    Q_PROPERTY(QString articleCode MEMBER m_articleCode NOTIFY changed)
    // As the code and the shop say it, in words
    Q_PROPERTY(QString amountWords READ amountWords NOTIFY changed) ///< empty: not known
    Q_PROPERTY(QList<QString> facts READ facts NOTIFY changed) ///< "Use by 31 May 2027", "Lot H-2291"
    Q_PROPERTY(QString caution READ caution NOTIFY changed) ///< "That day has passed."
    // What is asked
    Q_PROPERTY(bool asksAmount READ asksAmount NOTIFY changed)
    Q_PROPERTY(bool asksDate READ asksDate NOTIFY changed)
    Q_PROPERTY(bool changing MEMBER m_changing NOTIFY changed) ///< everything may be changed
    // How much
    Q_PROPERTY(QString amount MEMBER m_amount NOTIFY changed)
    Q_PROPERTY(QString amountUnit MEMBER m_amountUnit NOTIFY changed)
    Q_PROPERTY(QList<QString> amountUnits READ amountUnits NOTIFY changed)
    Q_PROPERTY(QString amountError READ amountError NOTIFY changed)
    Q_PROPERTY(QList<QString> packs READ packs NOTIFY changed) ///< sizes to pick from, when there are several
    Q_PROPERTY(int packAt READ packAt WRITE setPackAt NOTIFY changed)
    Q_PROPERTY(int count MEMBER m_count NOTIFY changed) ///< 0: a case, not said yet
    Q_PROPERTY(bool isCase READ isCase NOTIFY changed) ///< it came as a case of several
    // Where
    Q_PROPERTY(QList<QString> places READ places NOTIFY changed) ///< the last two: another place, not known
    Q_PROPERTY(int placeAt READ placeAt WRITE setPlaceAt NOTIFY changed) ///< -1: not said
    Q_PROPERTY(bool otherPlace READ otherPlace NOTIFY changed)
    Q_PROPERTY(QString place MEMBER m_place NOTIFY changed)
    // How old
    Q_PROPERTY(int dateKind MEMBER m_dateKind NOTIFY changed) ///< -1: not said; see DateKind
    Q_PROPERTY(QString date MEMBER m_date NOTIFY changed) ///< "2027-05-31" or "2027-05"
    Q_PROPERTY(QString dateError READ dateError NOTIFY changed)
    Q_PROPERTY(QString todayText READ todayText NOTIFY changed)
    Q_PROPERTY(bool dateWanted READ dateWanted NOTIFY changed) ///< the kind needs a day
    // What else the label says
    Q_PROPERTY(QString lot READ lot WRITE setLot NOTIFY changed)
    // The made date that its lot code may give
    Q_PROPERTY(QList<QString> lotDates READ lotDates NOTIFY changed) ///< most plausible first; the last: none
    Q_PROPERTY(int lotDateAt READ lotDateAt NOTIFY changed) ///< -1: not said
    Q_PROPERTY(QString lotDateNote READ lotDateNote NOTIFY changed) ///< how it was read, when it was
    Q_PROPERTY(QString price MEMBER m_price NOTIFY changed)
    Q_PROPERTY(QString priceError READ priceError NOTIFY changed)
    Q_PROPERTY(QString currency READ currency NOTIFY changed)
    Q_PROPERTY(gw::LabelSays* says READ says CONSTANT) ///< of a new material
    // Whether it can be booked in
    Q_PROPERTY(bool complete READ complete NOTIFY changed)
    Q_PROPERTY(QString lacking READ lacking NOTIFY changed) ///< "Still to say: how much, where it stands"

public:
    enum DateKind { UseBy, BestBefore, MadeOn, NoDate, FoundUndated };
    Q_ENUM(DateKind)

    /// What the shop knows that the form offers.
    struct Offers {
        QStringList places;
        QString currency;
        UnitSystem units = UnitSystem::Metric;
    };

    using QObject::QObject;

    void setOffers(const Offers& offers);
    void setToday(QDate today) { m_today = today; }

    /// Begins anew from what a code said; material is what the shop buys under it, null when nothing yet.
    void load(const ArrivalDraft& draft, const ChoiceItem* material);
    /// It is a material the shop buys; usual is what proposeMaterial() says of it, packs the sizes it is sold
    /// in.
    void chooseMaterial(
        const ChoiceItem& material, const ArrivalDraft& usual, const std::vector<PackRecord>& packs);
    void chooseClass(const ChoiceItem& cls);
    /// It is none of what the shop buys.
    void chooseNew(const QString& name);
    /// Fills in what is still open from a second code on the same pack; whether that told anything.
    bool addFrom(const ArrivalDraft& more);
    /// What the dates of its lot code are judged by; reads it as last time where nothing else is known.
    void setLotContext(const LotDateContext& context);
    /// The made date is the one the lot code gives there; past the last one none of them is.
    Q_INVOKABLE void chooseLotDate(int at);

    /// The draft to book in. Errors: BadInput, the first thing that cannot be understood; from then on each
    /// field says what is wrong with it.
    Result<ArrivalDraft> submit();
    const ArrivalDraft& asRead() const { return m_read; }

    bool isNew() const { return m_materialKey.isEmpty(); }
    QString name() const { return m_name; }
    void setName(const QString& name);
    QString className() const { return m_className; }
    QString shape() const { return m_shape; }
    QString contents() const { return m_contents; }
    bool isCase() const { return m_read.caseNumber.has_value(); }
    QString lot() const { return m_lot; }
    void setLot(const QString& lot);
    QStringList lotDates() const;
    int lotDateAt() const;
    QString lotDateNote() const;
    QString amountWords() const;
    QStringList facts() const;
    QString caution() const;
    bool asksAmount() const { return m_asksAmount || m_changing; }
    bool asksDate() const { return m_asksDate || m_changing; }
    QStringList amountUnits() const;
    QString amountError() const;
    QStringList packs() const;
    int packAt() const;
    void setPackAt(int at);
    QStringList places() const;
    int placeAt() const;
    void setPlaceAt(int at);
    bool otherPlace() const { return m_placeKind == OtherPlace; }
    QString dateError() const;
    QString todayText() const { return m_today.toString(Qt::ISODate); }
    bool dateWanted() const { return m_dateKind >= UseBy && m_dateKind <= MadeOn; }
    QString priceError() const;
    QString currency() const { return m_offers.currency; }
    LabelSays* says() { return &m_says; }
    bool complete() const { return lackingWords().isEmpty(); }
    QString lacking() const;

Q_SIGNALS:
    void changed();

private:
    enum PlaceKind { PlaceNotSaid, NamedPlace, OtherPlace, NoPlace };

    std::vector<LotDate> possibleLotDates() const;
    void takeMade(const LotDate& date);
    void forgetLotDate();
    void readLotAsLastTime();
    void loadAmount();
    void loadDate();
    Result<std::optional<Amount>> amountSaid() const;
    Result<void> putDate(ArrivalDraft& draft) const;
    Result<std::optional<Money>> priceSaid() const;
    ArrivalDraft draftSoFar() const;
    QStringList lackingWords() const;

    Offers m_offers;
    QDate m_today;
    ArrivalDraft m_read;
    QString m_materialKey, m_name, m_classKey, m_className, m_shape, m_contents, m_articleCode;
    Dimension m_countedIn = Dimension::Mass;
    QString m_amount, m_amountUnit, m_amountLoaded;
    std::vector<PackRecord> m_packs;
    int m_count = 1;
    LotDateContext m_lotContext;
    bool m_noLotDate = false; ///< a person said that none of the lot's dates is right
    PlaceKind m_placeKind = PlaceNotSaid;
    QString m_place;
    int m_dateKind = -1;
    QString m_date, m_lot, m_price, m_priceLoaded;
    LabelSays m_says;
    bool m_asksAmount = false, m_asksDate = false, m_changing = false, m_tried = false;
};

} // namespace gw
