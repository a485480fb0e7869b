#pragma once

#include <QTranslator>

namespace gw {

/// The plurals of the sentences as they are written here, in English: "%n container(s)" becomes "1 container"
/// or "2 containers". Installed beneath any translation, which brings its own.
class Plurals : public QTranslator {
    Q_OBJECT

public:
    using QTranslator::QTranslator;
    bool isEmpty() const override { return false; }
    QString translate(const char* context, const char* source, const char* disambiguation = nullptr,
        int n = -1) const override;
};

} // namespace gw
