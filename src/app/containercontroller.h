#pragma once

#include "app/containershown.h"
#include "app/controller.h"

namespace gw {

/// One container: is it still good and why, what it is, what happened to it.
class ContainerController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    /// Its id or label code.
    Q_PROPERTY(QString container READ container WRITE setContainer NOTIFY containerChanged REQUIRED)
    Q_PROPERTY(bool loaded READ loaded NOTIFY shown)
    Q_PROPERTY(QString name READ name NOTIFY shown)
    Q_PROPERTY(QString label READ label NOTIFY shown) ///< its label code
    Q_PROPERTY(QString subtitle READ subtitle NOTIFY shown) ///< "GW-7K3M, White PVA"
    Q_PROPERTY(QString shape READ shape NOTIFY shown)
    Q_PROPERTY(QString contents READ contents NOTIFY shown)
    Q_PROPERTY(double level READ level NOTIFY shown)
    Q_PROPERTY(QString amountLeft READ amountLeft NOTIFY shown)
    Q_PROPERTY(QString capacity READ capacity NOTIFY shown) ///< "of 500 g"
    Q_PROPERTY(QString place READ place NOTIFY shown)
    Q_PROPERTY(QString lot READ lot NOTIFY shown)
    Q_PROPERTY(QString parentLabel READ parentLabel NOTIFY shown)
    Q_PROPERTY(QString verdict READ verdict NOTIFY shown)
    Q_PROPERTY(QString headline READ headline NOTIFY shown)
    Q_PROPERTY(QList<QString> reasons READ reasons NOTIFY shown)
    Q_PROPERTY(QList<QString> reasonVerdicts READ reasonVerdicts NOTIFY shown)
    Q_PROPERTY(QList<QString> factNames READ factNames NOTIFY shown)
    Q_PROPERTY(QList<QString> factValues READ factValues NOTIFY shown)
    Q_PROPERTY(QList<QString> clockNames READ clockNames NOTIFY shown)
    Q_PROPERTY(QList<QString> clockTexts READ clockTexts NOTIFY shown)
    Q_PROPERTY(QList<double> clockLevels READ clockLevels NOTIFY shown)
    Q_PROPERTY(QList<QString> clockVerdicts READ clockVerdicts NOTIFY shown)
    Q_PROPERTY(QList<QString> benchTest READ benchTest NOTIFY shown)
    Q_PROPERTY(bool frostHarms READ frostHarms NOTIFY shown) ///< frost spoils what is in it
    Q_PROPERTY(QString spoilageSigns READ spoilageSigns NOTIFY shown)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY shown)
    Q_PROPERTY(QList<QString> places READ places NOTIFY shown) ///< where it may be moved to
    Q_PROPERTY(QList<QString> allPlaces READ allPlaces NOTIFY shown)
    /// What the verdict asks for first: "use", "test" or "retire"
    Q_PROPERTY(QString mainAct READ mainAct NOTIFY shown)
    Q_PROPERTY(QList<QString> units READ units NOTIFY shown) ///< to write amounts of it in
    Q_PROPERTY(bool opened READ opened NOTIFY shown)
    Q_PROPERTY(bool retired READ retired NOTIFY shown)
    Q_PROPERTY(bool onHold READ onHold NOTIFY shown)
    Q_PROPERTY(gw::RowsModel* entries READ entries CONSTANT) ///< newest first; see entryRoles()
    Q_PROPERTY(bool moreEntries READ moreEntries NOTIFY shown) ///< entries holds only the newest of them
    Q_PROPERTY(gw::RowsModel* figures READ figures CONSTANT) ///< see figureRoles()

public:
    explicit ContainerController(QObject* parent = nullptr);

    QString container() const { return m_container; }
    void setContainer(const QString& idOrLabel);

    bool loaded() const { return m_loaded; }
    QString name() const { return m_page.name; }
    QString label() const { return m_page.label; }
    QString subtitle() const;
    QString shape() const { return m_page.shape; }
    QString contents() const { return m_page.contents; }
    double level() const { return m_page.level; }
    QString amountLeft() const { return m_page.amountLeft; }
    QString capacity() const { return m_page.capacity; }
    QString place() const { return m_page.place; }
    QString lot() const { return m_page.lot; }
    QString parentLabel() const { return m_page.parentLabel; }
    QString verdict() const { return m_page.verdict; }
    QString headline() const { return m_page.headline; }
    QStringList reasons() const { return m_page.reasons; }
    QStringList reasonVerdicts() const { return m_page.reasonVerdicts; }
    QStringList factNames() const { return m_page.factNames; }
    QStringList factValues() const { return m_page.factValues; }
    QStringList clockNames() const { return m_page.clockNames; }
    QStringList clockTexts() const { return m_page.clockTexts; }
    QList<double> clockLevels() const { return m_page.clockLevels; }
    QStringList clockVerdicts() const { return m_page.clockVerdicts; }
    QStringList benchTest() const { return m_page.benchTest; }
    bool frostHarms() const { return m_page.frostHarms; }
    QString spoilageSigns() const { return m_page.spoilageSigns; }
    QStringList cautions() const { return m_page.cautions; }
    QStringList places() const;
    QStringList allPlaces() const { return m_page.places; }
    QString mainAct() const;
    QStringList units() const { return m_page.units; }
    bool opened() const { return m_page.opened; }
    bool retired() const { return m_page.retired; }
    bool onHold() const { return m_page.onHold; }
    RowsModel* entries() { return &m_entries; }
    bool moreEntries() const
    {
        return m_page.entries.size() > static_cast<std::size_t>(m_entries.rowCount());
    }
    Q_INVOKABLE void showAllEntries();
    RowsModel* figures() { return &m_figures; }

Q_SIGNALS:
    void containerChanged();
    void shown();

protected:
    void begin() override;

private:
    void read();
    void show(ContainerShown page);
    void showEntries();

    QString m_container;
    ContainerShown m_page;
    RowsModel m_entries, m_figures;
    bool m_loaded = false;
    bool m_allEntries = false;
};

} // namespace gw
