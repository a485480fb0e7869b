#include "app/scanner.h"

#include <memory>

#include <QFuture>
#include <QPromise>
#include <QThreadPool>

#include "app/whendone.h"
#include "app/words.h"
#include "scan/picturefile.h"

namespace gw {

Scanner::Scanner(QObject* parent)
    : QObject(parent)
{
    connect(&m_wedge, &Wedge::scanned, this, [this](const QString& text) { Q_EMIT scanned(text, {}); });
    connect(&m_camera, &Camera::read, this, &Scanner::scanned);
}

void Scanner::readPicture(const QUrl& file)
{
    setTrouble({});
    ++m_reading;
    Q_EMIT readingChanged();
    // A large picture takes a while; the screen does not wait for it.
    auto promise = std::make_shared<QPromise<Result<std::vector<Symbol>>>>();
    promise->start();
    whenDone(promise->future(), this, [this](const Result<std::vector<Symbol>>& symbols) {
        --m_reading;
        Q_EMIT readingChanged();
        if (!symbols) {
            setTrouble(q(symbols.error().sentence));
            return;
        }
        const Symbol& symbol = mostTelling(*symbols);
        Q_EMIT scanned(q(symbol.text), q(symbol.symbology));
    });
    QThreadPool::globalInstance()->start([promise, path = file.toLocalFile()] {
        promise->addResult(gw::readPicture(path));
        promise->finish();
    });
}

void Scanner::typed(const QString& text)
{
    setTrouble({});
    if (!text.trimmed().isEmpty())
        Q_EMIT scanned(text.trimmed(), {});
}

void Scanner::setTrouble(const QString& trouble)
{
    if (trouble == m_trouble)
        return;
    m_trouble = trouble;
    Q_EMIT troubleChanged();
}

} // namespace gw
