#include "cli/answer.h"

#include <cstdio>

#include <QJsonDocument>

namespace gw {

namespace {

void put(FILE* to, QByteArray bytes)
{
    if (!bytes.isEmpty() && !bytes.endsWith('\n'))
        bytes.append('\n');
    std::fwrite(bytes.constData(), 1, static_cast<std::size_t>(bytes.size()), to);
}

} // namespace

int print(const Result<Answer>& answer, bool asJson)
{
    if (!answer) {
        put(stderr, QByteArray::fromStdString(answer.error().sentence));
        return 1;
    }
    put(stdout,
        asJson ? QJsonDocument(answer->json).toJson(QJsonDocument::Indented) : answer->plain.toUtf8());
    if (answer->complaint.empty())
        return 0;
    std::fflush(stdout);
    put(stderr, QByteArray::fromStdString(answer->complaint));
    return 1;
}

} // namespace gw
