#pragma once

#include <vector>

#include <QByteArray>
#include <QString>
#include <QTemporaryDir>

#include "exchange/readingsfile.h"

namespace gw::test {

/// The day on which the tests of readings take place.
inline constexpr Moment readingsNow { std::chrono::sys_days { std::chrono::November / 25 / 2026 } };

/// What a file gave.
struct Imported {
    ReadingsLook look;
    ReadingsRead read;
    std::vector<Reading> readings;
    std::vector<DayReading> days;
};

/// Looks and reads, as a command line would: a doubt that must be answered is a refusal.
Result<Imported> importFile(const QString& path, const ReadingsChoices& choices);

/// A file that holds a text, gone with the object.
class TextFile {
public:
    explicit TextFile(const QByteArray& text, const QString& name = QStringLiteral("readings.csv"));
    QString path() const { return m_path; }

private:
    QTemporaryDir m_dir;
    QString m_path;
};

Result<Imported> importText(const QByteArray& text, const ReadingsChoices& choices);

/// A shop in Berlin's zone.
ReadingsChoices berlin();
Moment moment(const char* text);

} // namespace gw::test
