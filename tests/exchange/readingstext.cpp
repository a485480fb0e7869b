#include "readingstext.h"

#include <QFile>

namespace gw::test {

Result<Imported> importFile(const QString& path, const ReadingsChoices& choices)
{
    auto look = lookAtReadings(path, readingsNow, choices);
    if (!look)
        return tl::unexpected<Error>(look.error());
    if (auto refusal = unanswered(look->doubts, look->name))
        return tl::unexpected<Error>(*refusal);
    Imported imported;
    imported.look = std::move(*look);
    auto read = readReadings(
        path, imported.look.layout, readingsNow,
        [&](std::span<const Reading> batch) -> Result<void> {
            imported.readings.insert(imported.readings.end(), batch.begin(), batch.end());
            return {};
        },
        {},
        [&](std::span<const DayReading> batch) -> Result<void> {
            imported.days.insert(imported.days.end(), batch.begin(), batch.end());
            return {};
        });
    if (!read)
        return tl::unexpected<Error>(read.error());
    imported.read = std::move(*read);
    return imported;
}

TextFile::TextFile(const QByteArray& text, const QString& name)
    : m_path(m_dir.filePath(name))
{
    QFile file(m_path);
    if (!file.open(QIODevice::WriteOnly) || file.write(text) != text.size())
        qFatal("%s cannot be written", qPrintable(m_path));
}

Result<Imported> importText(const QByteArray& text, const ReadingsChoices& choices)
{
    const TextFile file(text);
    return importFile(file.path(), choices);
}

ReadingsChoices berlin()
{
    ReadingsChoices choices;
    choices.shopZone = "Europe/Berlin";
    return choices;
}

Moment moment(const char* text)
{
    const auto parsed = parseMoment(text);
    if (!parsed)
        qFatal("%s is no moment", text);
    return *parsed;
}

} // namespace gw::test
