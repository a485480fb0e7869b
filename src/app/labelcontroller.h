#pragma once

#include <QImage>
#include <QUrl>
#include <QVariant>

#include "app/controller.h"
#include "exchange/labelfile.h"

namespace gw {

/// Our labels on their way out: whose, on what paper, what they look like there, and where they go. How they
/// were printed last is remembered for this device.
class LabelController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    /// Codes or ids of the containers to label; none: all that stands on the shelf, or in one place.
    Q_PROPERTY(QList<QString> containers READ containers NOTIFY asked)
    Q_PROPERTY(QList<QString> places READ places NOTIFY shown) ///< the first stands for all of them
    Q_PROPERTY(int place READ place WRITE setPlace NOTIFY asked)
    Q_PROPERTY(QList<QString> sizes READ sizes CONSTANT) ///< the last one is for ownSize
    Q_PROPERTY(int size READ size WRITE setSize NOTIFY asked)
    Q_PROPERTY(QString ownSize READ ownSize WRITE setOwnSize NOTIFY asked) ///< "63.5 x 38.1", as typed
    Q_PROPERTY(int dots READ dots WRITE setDots NOTIFY asked) ///< 0: 203 dots per inch, 1: 300
    Q_PROPERTY(Page page READ page WRITE setPage NOTIFY asked)
    Q_PROPERTY(int columns READ columns WRITE setColumns NOTIFY asked)
    Q_PROPERTY(int rows READ rows WRITE setRows NOTIFY asked)
    Q_PROPERTY(int first READ first WRITE setFirst NOTIFY asked) ///< label still on a begun sheet, from 1
    Q_PROPERTY(QVariant preview READ preview NOTIFY shown) ///< a QImage of the first label as it prints
    Q_PROPERTY(QString previewWords READ previewWords NOTIFY shown) ///< what stands on it
    Q_PROPERTY(QString summary READ summary NOTIFY shown) ///< "12 labels on 1 sheet"
    Q_PROPERTY(QString leftOut READ leftOut NOTIFY shown) ///< what finds no room; empty when all does
    Q_PROPERTY(bool ready READ ready NOTIFY shown) ///< there is something that fits
    Q_PROPERTY(QList<QString> printers READ printers NOTIFY printersChanged)
    Q_PROPERTY(int printer READ printer WRITE setPrinter NOTIFY printersChanged)
    Q_PROPERTY(bool printersKnown READ printersKnown NOTIFY printersChanged) ///< the system has answered
    Q_PROPERTY(QUrl folder READ folder CONSTANT) ///< where a file is offered to go
    Q_PROPERTY(QUrl suggestedFile READ suggestedFile NOTIFY shown)

public:
    enum Page { Single, A4, Letter };
    Q_ENUM(Page)

    using Controller::Controller;

    QStringList containers() const { return m_containers; }
    QStringList places() const;
    int place() const { return m_place; }
    void setPlace(int place);
    QStringList sizes() const;
    int size() const { return m_size; }
    void setSize(int size);
    QString ownSize() const { return m_ownSize; }
    void setOwnSize(const QString& size);
    int dots() const { return m_dots; }
    void setDots(int dots);
    Page page() const { return m_page; }
    void setPage(Page page);
    int columns() const { return m_columns; }
    void setColumns(int columns);
    int rows() const { return m_rows; }
    void setRows(int rows);
    int first() const { return m_first; }
    void setFirst(int first);
    QVariant preview() const { return m_preview; }
    QString previewWords() const;
    QString summary() const;
    QString leftOut() const { return m_leftOut; }
    bool ready() const { return m_pages > 0; }
    QStringList printers() const { return m_printers; }
    int printer() const { return m_printer; }
    void setPrinter(int printer);
    bool printersKnown() const { return m_printersKnown; }
    QUrl folder() const;
    QUrl suggestedFile() const;

    /// Takes up the labels of these containers (none: of the whole shelf), as things stand now.
    Q_INVOKABLE void take(const QStringList& containers);
    Q_INVOKABLE void savePdf(const QUrl& file);
    Q_INVOKABLE void sendToPrinter();

Q_SIGNALS:
    void asked();
    void shown();
    void printersChanged();
    void done(); ///< they are in a file, or went to the printer

protected:
    void begin() override;

private:
    using Controller::take;

    struct PlaceName {
        QString id, name;
    };

    void readLabels();
    void look();
    void fillSheet();
    void askPrinters();
    void remember();
    Result<LabelPrint> asChosen() const;
    Result<QSizeF> labelSize() const;
    void wentOut(const LabelsPrinted& printed, const QString& words);
    void nothingFits(const Error& why);

    QStringList m_containers;
    std::vector<PlaceName> m_allPlaces;
    int m_place = 0;
    int m_size = 1;
    QString m_ownSize;
    int m_dots = 0;
    Page m_page = Single;
    int m_columns = 3, m_rows = 8, m_first = 1;

    std::vector<Label> m_labels;
    QImage m_preview;
    QString m_leftOut;
    int m_pages = 0; ///< 0: nothing to print, or it does not fit
    QStringList m_printers;
    int m_printer = -1;
    bool m_printersKnown = false;
    int m_turn = 0; ///< of readLabels() and look(): only the newest answer counts
};

} // namespace gw
