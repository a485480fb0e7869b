#include "store/faults.h"

#include <array>
#include <charconv>
#include <string_view>

#include <QSqlError>

namespace gw {

namespace {

// What went wrong, whichever engine says so.
enum class Fault {
    Locked,
    ReadOnly,
    Full,
    Foreign,
    Damaged,
    Unreachable,
    Credentials,
    NoDatabase,
    NoRights,
    Taken,
    Raced,
    Missing,
    Impossible,
    Guarded,
    CannotOpen,
    Other
};

// Result codes of SQLite: sqlite.org/rescode.html. The low byte is the kind, the rest the case.
Fault sqliteFault(int code)
{
    constexpr int foreignKey = 787, byTrigger = 1811, checkFailed = 275, notNull = 1299;
    switch (code) {
    case foreignKey:
        return Fault::Missing;
    case byTrigger:
        return Fault::Guarded;
    case checkFailed:
    case notNull:
        return Fault::Impossible;
    default:
        break;
    }
    switch (code & 0xff) {
    case 5: // busy
    case 6:
        return Fault::Locked;
    case 8:
        return Fault::ReadOnly;
    case 11:
        return Fault::Damaged;
    case 13:
        return Fault::Full;
    case 14:
        return Fault::CannotOpen;
    case 19:
        return Fault::Taken; // what is left of the constraints: unique and primary keys
    case 26:
        return Fault::Foreign;
    default:
        return Fault::Other;
    }
}

struct SqlState {
    std::string_view code; ///< or the two characters of a whole class
    Fault fault;
};

// SQLSTATE of PostgreSQL 15, appendix A of its manual. The first that fits counts.
constexpr std::array sqlStates {
    SqlState { "23505", Fault::Taken },
    SqlState { "23503", Fault::Missing },
    SqlState { "23", Fault::Impossible },
    SqlState { "22", Fault::Impossible },
    SqlState { "P0001", Fault::Guarded },
    SqlState { "40001", Fault::Raced },
    SqlState { "40P01", Fault::Raced },
    SqlState { "55P03", Fault::Locked },
    SqlState { "57014", Fault::Locked },
    SqlState { "25006", Fault::ReadOnly },
    SqlState { "42501", Fault::NoRights },
    SqlState { "3F000", Fault::NoRights }, // no schema that this user may use
    SqlState { "53100", Fault::Full },
    SqlState { "28", Fault::Credentials },
    SqlState { "3D000", Fault::NoDatabase },
    SqlState { "08", Fault::Unreachable },
    SqlState { "25P03", Fault::Unreachable },
    SqlState { "53", Fault::Unreachable },
    SqlState { "57", Fault::Unreachable },
    SqlState { "XX001", Fault::Damaged },
    SqlState { "XX002", Fault::Damaged },
};

Fault postgresFault(std::string_view state)
{
    for (const auto& known : sqlStates) {
        if (state.starts_with(known.code))
            return known.fault;
    }
    return Fault::Other;
}

struct Taken {
    std::string_view postgres, sqlite;
    ErrorCode code;
    std::string_view sentence;
};

// Unique keys by the name each engine gives them in its message.
constexpr std::array takenKeys {
    Taken { "entry_reversed_once", "entry.reverses", ErrorCode::Refused,
        "That entry was undone already; look at the container's history." },
    Taken { "container_label_key", "container.label", ErrorCode::Conflict,
        "Another container carries that label code; use a fresh label." },
    Taken { "batch_note_reversed_once", "batch_note.reverses", ErrorCode::Refused,
        "That note was undone already; look at the batch's notes." },
    Taken { "batch_label_key", "batch.label", ErrorCode::Conflict,
        "Another batch carries that label code; use a fresh label." },
    Taken { "pack_gtin14_key", "pack.gtin14", ErrorCode::Conflict,
        "Another pack carries that bar code number; look it up, or check the digits." },
    Taken { "place_name_key", "place.name", ErrorCode::Conflict,
        "There is a place of that name; choose another name." },
};

Error takenFault(std::string_view words, ErrorCode code, std::string sentence)
{
    for (const auto& key : takenKeys) {
        if (words.find(key.postgres) != std::string_view::npos
            || words.find(key.sqlite) != std::string_view::npos)
            return { key.code, std::string(key.sentence) };
    }
    return { code, std::move(sentence) };
}

// The first line of the engine's words without a full stop, to stand inside a sentence. PostgreSQL begins it
// with a word for how bad it is, in its own language, and two blanks.
std::string firstLine(std::string_view words)
{
    while (!words.empty() && (words.front() == '\n' || words.front() == ' '))
        words.remove_prefix(1);
    words = words.substr(0, words.find('\n'));
    if (const auto begins = words.find(":  "); begins != std::string_view::npos)
        words.remove_prefix(begins + 3);
    while (!words.empty() && (words.back() == ' ' || words.back() == '.'))
        words.remove_suffix(1);
    return words.empty() ? "no words given" : std::string(words);
}

Error sentenceOf(Fault fault, std::string_view words, const std::string& shown)
{
    const std::string said = firstLine(words);
    const std::string store = "The store " + shown;
    switch (fault) {
    case Fault::Locked:
        return { ErrorCode::StoreLocked,
            store + " is held by another program; nothing was written, try again in a moment." };
    case Fault::ReadOnly:
        return { ErrorCode::StoreReadOnly,
            store + " may not be written; give the right to write to it and to its folder." };
    case Fault::NoRights:
        return { ErrorCode::StoreReadOnly,
            store + " may not be written by this user (" + said + "); ask for the rights on its tables." };
    case Fault::Full:
        return { ErrorCode::StoreFull,
            "The disk of the store " + shown + " is full; nothing was written, make room and try again." };
    case Fault::Foreign:
        return { ErrorCode::StoreForeign, shown + " is not a Gluewright store; choose another file." };
    case Fault::Damaged:
        return { ErrorCode::StoreDamaged,
            store + " is damaged (" + said + "); keep a copy of it and restore the latest backup." };
    case Fault::Unreachable:
        return { ErrorCode::StoreUnreachable,
            store + " does not answer (" + said + "); check that the server runs and the network is up." };
    case Fault::Credentials:
        return {
            ErrorCode::StoreUnreachable,
            store + " refuses the user or the password; check both, and the server's list of who may connect."
        };
    case Fault::NoDatabase:
        return { ErrorCode::NotFound,
            "There is no database " + shown + " on its server; have it created, or check the name." };
    case Fault::Taken:
        return takenFault(
            words, ErrorCode::Conflict, "Somebody else wrote the same thing first; look again.");
    case Fault::Raced:
        return { ErrorCode::Conflict,
            "Somebody else changed the same stock at the same moment; nothing was written, try again." };
    case Fault::Missing:
        return { ErrorCode::NotFound,
            "Something this refers to is not in the store, or is still needed there (" + said
                + "); look again." };
    case Fault::Impossible:
        return { ErrorCode::BadInput, "The store refuses an impossible value (" + said + "); correct it." };
    case Fault::Guarded:
        return takenFault(
            words, ErrorCode::Refused, "The ledger refuses that (" + said + "); undo the entry instead.");
    case Fault::CannotOpen:
        return { ErrorCode::StoreReadOnly,
            store + " cannot be opened; check that its folder is there and may be written." };
    case Fault::Other:
        break;
    }
    return { ErrorCode::StoreFailed, store + " failed: " + said + "; try again, then verify the store." };
}

} // namespace

std::string_view word(Engine engine) { return engine == Engine::Sqlite ? "sqlite" : "postgresql"; }

Error faultOf(Engine engine, const std::string& code, const std::string& words, const std::string& shown)
{
    if (engine == Engine::Postgres)
        return sentenceOf(postgresFault(code), words, shown);
    int number = 0;
    std::from_chars(code.data(), code.data() + code.size(), number);
    return sentenceOf(sqliteFault(number), words, shown);
}

Error faultOf(Engine engine, const QSqlError& error, const std::string& shown)
{
    std::string code = error.nativeErrorCode().toStdString();
    // A connection that broke has no SQLSTATE: no server was there to give one.
    if (engine == Engine::Postgres && code.empty())
        code = "08006";
    return faultOf(engine, code, error.databaseText().toStdString(), shown);
}

bool isReferenceFault(Engine engine, const QSqlError& error)
{
    const QString code = error.nativeErrorCode();
    return code == (engine == Engine::Sqlite ? QStringLiteral("787") : QStringLiteral("23503"));
}

} // namespace gw
