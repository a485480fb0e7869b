#pragma once

#include <string>
#include <vector>

#include <CLI/App.hpp>

#include <QJsonArray>
#include <QString>

#include "exchange/readingsfile.h"

namespace gw {

/// What a person says of a file of readings on the command line.
struct ReadingsOptions {
    std::string dateOrder, unit, zone, column, timeColumn, humidityColumn;
};

void addReadingsOptions(CLI::App& command, ReadingsOptions& options);
/// Errors: BadInput, naming the values there are.
Result<ReadingsChoices> choicesOf(const ReadingsOptions& options);

QJsonArray jsonSetAside(const std::vector<SetAside>& rows);
QJsonArray jsonDoubts(const std::vector<Doubt>& doubts);
/// Each row that was set aside on a line; how many there were in all where not all are listed.
QString setAsideText(const std::vector<SetAside>& rows, std::int64_t count);
/// What the file left open and how it was taken, each on a line.
QString doubtsText(const std::vector<Doubt>& doubts);

} // namespace gw
