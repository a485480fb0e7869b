#pragma once

#include <QJsonObject>
#include <QString>

#include "measure/error.h"

namespace gw {

/// What a command answers: for programs and for people. A complaint may come with it when part could not be
/// answered.
struct Answer {
    QJsonObject json;
    QString plain;
    std::string complaint; ///< empty, or a sentence for stderr; the exit status is then 1
};

/// Prints an answer and gives the exit status. Control characters in plain text are printed as their
/// pictures, a group separator as <GS>.
int print(const Result<Answer>& answer, bool asJson);

} // namespace gw
