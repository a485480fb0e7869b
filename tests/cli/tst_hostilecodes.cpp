// What somebody may have put into a square code: it is shown as text, in JSON to the last byte, never opened,
// never run, and books nothing in.
#include <QTest>

#include "cli/program.h"
#include "support/drawnsymbol.h"

using namespace gw::test;
using namespace Qt::StringLiterals;

class HostileCodes : public QObject {
    Q_OBJECT

private:
    static QString draw(const Program& program, const QByteArray& text)
    {
        const QString picture = program.file(u"code.png"_s);
        if (!drawSymbol(Symbology::Qr, text, 2).save(picture))
            qFatal("cannot write a test file");
        return picture;
    }

private Q_SLOTS:
    void code_isShownAsText_data()
    {
        QTest::addColumn<QByteArray>("text");
        QTest::addColumn<QByteArray>("shown"); // on a terminal
        const auto same
            = [](const char* name, const QByteArray& text) { QTest::newRow(name) << text << text; };
        same("web address", "https://example.com/free?gift=1&x=%3Cscript%3E");
        same("file address", "file:///etc/passwd");
        same("SQL", "'); DROP TABLE entry; DELETE FROM container WHERE ('1'='1");
        same("HTML", "<img src=\"https://example.com/a.png\"><b>Hide glue</b>&amp;");
        same("shell", "$(touch /tmp/x); `id` | sh && rm -rf ~");
        same("an option", "--help");
        same("a way to a file", "../../../../shop.gluewright");
        same("a format", "%s%n %1 %99 {0}");
        QTest::newRow("a terminal's commands")
            << QByteArray("\x1b]0;owned\x07\x1b[2J\x7f.") << QByteArray("␛]0;owned␇␛[2J␦.");
        same("other directions",
            "\xE2\x80\xAE"
            "evitcefed\xE2\x80\xAC glue");
    }

    void code_isShownAsText()
    {
        QFETCH(QByteArray, text);
        QFETCH(QByteArray, shown);
        const Program program;
        const QString picture = draw(program, text);
        const Ran plain = program.plain({ u"read"_s, picture });
        QCOMPARE(plain.status, 0);
        QVERIFY2(plain.out.contains(shown), plain.out.constData());
        QVERIFY(!plain.out.contains('\x1b') && !plain.out.contains('\x07'));
        const QJsonObject symbol = program({ u"read"_s, picture })
                                       .json()[u"files"]
                                       .toArray()[0][u"symbols"]
                                       .toArray()[0]
                                       .toObject();
        QCOMPARE(symbol[u"text"].toString(), QString::fromUtf8(text));

        // It names no material, so nothing is booked in on its word alone.
        const Ran arrived = program({ u"arrive"_s, u"--picture"_s, picture });
        QVERIFY(arrived.json()[u"containers"].toArray().isEmpty());
        const Ran shelf = program({ u"shelf"_s });
        QCOMPARE(shelf.status, 0);
        QVERIFY(shelf.json()[u"containers"].toArray().isEmpty());
    }

    // The most that a QR Code holds: version 40, level L, 2953 bytes (ISO/IEC 18004, table of capacities).
    void fullestCode_isReadToTheLastByte()
    {
        QByteArray text;
        for (int i = 0; text.size() < 2953; ++i)
            text += QByteArray::number(i) + (i % 3 == 0 ? " <br>" : "; ");
        text.truncate(2953);
        const Program program;
        const Ran ran = program({ u"read"_s, draw(program, text) });
        QCOMPARE(ran.status, 0);
        QCOMPARE(ran.json()[u"files"].toArray()[0][u"symbols"].toArray()[0][u"text"].toString(),
            QString::fromUtf8(text));
        const Ran arrived = program({ u"arrive"_s, u"--picture"_s, program.file(u"code.png"_s) });
        QVERIFY(arrived.json()[u"containers"].toArray().isEmpty());
    }

    // More than any code holds, typed or handed over: refused with a sentence, and quickly. (One argument of
    // a program takes 128 KiB at most on Linux.)
    void textBeyondAnyCode_isRefused()
    {
        const Program program;
        const Ran ran = program({ u"code"_s, QString(120'000, u'A') });
        QCOMPARE(ran.status, 1);
        const QByteArray said = ran.err.trimmed();
        QVERIFY2(said.endsWith('.') && said.size() < 1000, said.left(300).constData());
    }

    void version_namesTheEngines()
    {
        const QByteArray said = Program().plain({ u"--version"_s }).out;
        QVERIFY2(said.contains("zxing-cpp ") && said.contains("zbar "), said.constData());
        QVERIFY2(said.contains("qzxing ") != said.contains("built without QZXing"), said.constData());
    }
};

QTEST_GUILESS_MAIN(HostileCodes)
#include "tst_hostilecodes.moc"
