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

/// A code may hold anything, also what a terminal takes for commands: controls are shown, not carried out.
QString shown(QString text)
{
    text.replace(QChar(29), QStringLiteral("<GS>"));
    for (QChar& c : text) {
        const char16_t code = c.unicode();
        if (code < 0x20 && c != u'\n' && c != u'\t')
            c = QChar(0x2400 + code); // its picture
        else if (code >= 0x7f && code < 0xa0)
            c = QChar(0x2426); // the picture of a substitute
    }
    return text;
}

} // namespace

int print(const Result<Answer>& answer, bool asJson)
{
    if (!answer) {
        put(stderr, shown(QString::fromStdString(answer.error().sentence)).toUtf8());
        return 1;
    }
    put(stdout,
        asJson ? QJsonDocument(answer->json).toJson(QJsonDocument::Indented) : shown(answer->plain).toUtf8());
    if (answer->complaint.empty())
        return 0;
    std::fflush(stdout);
    put(stderr, shown(QString::fromStdString(answer->complaint)).toUtf8());
    return 1;
}

} // namespace gw
