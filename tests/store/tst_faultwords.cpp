#include <QTest>

#include "store/faults.h"

using namespace gw;

/// What an engine says and what a person is told: every code that has words of its own.
class FaultWordsTest : public QObject {
    Q_OBJECT

private Q_SLOTS:
    // Codes as in sqlite.org/rescode.html and appendix A of PostgreSQL's manual.
    void code_hasItsSentence_data()
    {
        QTest::addColumn<int>("engine");
        QTest::addColumn<QString>("code");
        QTest::addColumn<QString>("words");
        QTest::addColumn<int>("expected");
        QTest::addColumn<QString>("told");
        const auto row
            = [](Engine engine, const char* code, const char* words, ErrorCode expected, const char* told) {
                  QTest::addRow("%s %s %s", word(engine).data(), code, told)
                      << static_cast<int>(engine) << QString::fromUtf8(code) << QString::fromUtf8(words)
                      << static_cast<int>(expected) << QString::fromUtf8(told);
              };
        using enum ErrorCode;
        const auto sqlite = [&](auto... rest) { row(Engine::Sqlite, rest...); };
        const auto postgres = [&](auto... rest) { row(Engine::Postgres, rest...); };
        sqlite("5", "database is locked", StoreLocked, "held by another program");
        sqlite("261", "database is locked", StoreLocked, "held by another program"); // BUSY_RECOVERY
        sqlite("517", "database is locked", StoreLocked, "held by another program"); // BUSY_SNAPSHOT
        sqlite("6", "database table is locked", StoreLocked, "held by another program");
        sqlite("8", "attempt to write a readonly database", StoreReadOnly, "may not be written");
        sqlite("1544", "attempt to write a readonly database", StoreReadOnly,
            "may not be written"); // READONLY_DIRECTORY
        sqlite("14", "unable to open database file", StoreReadOnly, "folder");
        sqlite("13", "database or disk is full", StoreFull, "is full");
        sqlite("11", "database disk image is malformed", StoreDamaged, "malformed");
        sqlite("779", "database disk image is malformed", StoreDamaged, "malformed"); // CORRUPT_INDEX
        sqlite("26", "file is not a database", StoreForeign, "not a Gluewright store");
        sqlite("275", "CHECK constraint failed: amount_milli > 0", BadInput, "amount_milli > 0");
        sqlite("1299", "NOT NULL constraint failed: place.note", BadInput, "place.note");
        sqlite("787", "FOREIGN KEY constraint failed", NotFound, "not in the store");
        sqlite("1555", "UNIQUE constraint failed: container.id", Conflict, "first");
        sqlite("2067", "UNIQUE constraint failed: container.label", Conflict, "label code");
        sqlite("2067", "UNIQUE constraint failed: pack.gtin14", Conflict, "bar code");
        sqlite("2067", "UNIQUE constraint failed: place.name", Conflict, "place of that name");
        sqlite("2067", "UNIQUE constraint failed: entry.reverses", Refused, "undone already");
        sqlite("1811", "entry_reversed_once: that entry is reversed already", Refused, "undone already");
        sqlite("1811", "the ledger is append-only: an entry is never changed", Refused, "append-only");
        sqlite("778", "disk I/O error", StoreFailed, "disk I/O error"); // IOERR_WRITE
        sqlite("1", "no such table: entry", StoreFailed, "no such table: entry");
        sqlite("", "", StoreFailed, "no words given");
        postgres("55P03", "ERROR:  canceling statement due to lock timeout\n(55P03)", StoreLocked,
            "held by another program");
        postgres("57014", "ERROR:  canceling statement due to user request", StoreLocked,
            "held by another program");
        postgres("25006", "ERROR:  cannot execute INSERT in a read-only transaction", StoreReadOnly,
            "may not be written");
        postgres("42501", "ERROR:  permission denied for table entry", StoreReadOnly,
            "permission denied for table entry");
        postgres("3F000", "ERROR:  no schema has been selected to create in", StoreReadOnly, "no schema");
        postgres("53100", "ERROR:  could not extend file: No space left on device", StoreFull, "is full");
        postgres("XX001", "ERROR:  invalid page in block 3 of relation base/5/16", StoreDamaged,
            "invalid page in block 3");
        postgres("08006", "server closed the connection unexpectedly", StoreUnreachable, "does not answer");
        postgres("57P01", "FATAL:  terminating connection due to administrator command", StoreUnreachable,
            "does not answer");
        postgres("57P03", "FATAL:  the database system is starting up", StoreUnreachable, "starting up");
        postgres("25P03", "FATAL:  terminating connection due to idle-in-transaction timeout",
            StoreUnreachable, "idle");
        postgres("53300", "FATAL:  sorry, too many clients already", StoreUnreachable, "too many clients");
        postgres(
            "28P01", "FATAL:  password authentication failed for user \"me\"", StoreUnreachable, "password");
        postgres("28000", "FATAL:  role \"me\" does not exist", StoreUnreachable, "user");
        postgres("3D000", "FATAL:  database \"x\" does not exist", NotFound, "no database");
        postgres("23514", "ERROR:  new row violates check constraint \"pack_check\"", BadInput, "pack_check");
        postgres("23502", "ERROR:  null value in column \"note\"", BadInput, "null value");
        postgres("22003", "ERROR:  bigint out of range", BadInput, "out of range");
        postgres("23503", "ERROR:  violates foreign key constraint", NotFound, "not in the store");
        postgres("23505", "ERROR:  duplicate key value violates unique constraint \"entry_pkey\"", Conflict,
            "first");
        postgres("23505", "FEHLER:  doppelter Schlüsselwert \"container_label_key\"", Conflict, "label code");
        postgres("23505", "ERROR:  \"entry_reversed_once\"\nDETAIL:  Key (reverses)=(x)", Refused,
            "undone already");
        postgres("P0001", "ERROR:  the ledger is append-only: an entry is never changed or removed", Refused,
            "append-only");
        postgres(
            "40001", "ERROR:  could not serialize access due to concurrent update", Conflict, "same moment");
        postgres("40P01", "ERROR:  deadlock detected", Conflict, "same moment");
        postgres("42P01", "ERROR:  relation \"entry\" does not exist\nLINE 1: SELECT", StoreFailed,
            "does not exist");
    }
    void code_hasItsSentence()
    {
        QFETCH(int, engine);
        QFETCH(QString, code);
        QFETCH(QString, words);
        QFETCH(int, expected);
        QFETCH(QString, told);
        const Error error = faultOf(
            static_cast<Engine>(engine), code.toStdString(), words.toStdString(), "/shop/glue.store");
        const QString sentence = QString::fromStdString(error.sentence);
        QVERIFY2(error.code == static_cast<ErrorCode>(expected), qPrintable(sentence));
        QVERIFY2(sentence.contains(told), qPrintable(sentence));
        QVERIFY2(
            sentence.endsWith(u'.') && !sentence.contains(u'\n') && sentence.count(QStringLiteral(". ")) == 0,
            qPrintable(sentence));
        QVERIFY2(sentence.contains(u';') || sentence.contains(u','), "it says what to do");
        QVERIFY2(!sentence.contains(QStringLiteral("ERROR:")) && !sentence.contains(QStringLiteral("FATAL:")),
            qPrintable(sentence));
    }
};

QTEST_GUILESS_MAIN(FaultWordsTest)
#include "tst_faultwords.moc"
