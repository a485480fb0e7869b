#pragma once

#include <memory>

#include <QTemporaryDir>

#include "store/store.h"

namespace gw::test {

/// A place for one test's own store, on either engine; gone with the object. On PostgreSQL a database of its
/// own in the cluster that ctest starts (fixture "postgres"). No cluster stops the test program: it must not
/// pass without.
class StorePlace {
public:
    explicit StorePlace(bool postgres);
    ~StorePlace();
    StorePlace(const StorePlace&) = delete;
    StorePlace& operator=(const StorePlace&) = delete;

    bool isPostgres() const { return m_postgres; }
    StoreLocation location() const;
    /// The same database for another user; PostgreSQL only.
    StoreLocation locationFor(const QString& user, const QString& password = {}) const;
    /// A folder of the test's own, for backups and files.
    QString folder() const { return m_folder.path(); }
    std::string file(const QString& name) const { return m_folder.filePath(name).toStdString(); }
    /// Moves the database to a folder, such as a small disk, or back with an empty one; PostgreSQL only.
    bool putOn(const QString& folder);
    /// Runs one statement past the store, as a stranger with the right to do anything: to damage, to lock, to
    /// look. What the engine says when it refuses; empty when it went through.
    QString asStranger(const QString& sql) const;

private:
    bool m_postgres;
    QString m_database;
    QTemporaryDir m_folder;
};

/// Opens it at a fixed moment, and stops the test program when it will not open.
std::unique_ptr<Store> openAt(const StorePlace& place, Moment now = fromMilliseconds(1'750'000'000'000));

/// Data rows "sqlite" and "postgresql" in a column `postgres`; read with QFETCH(bool, postgres).
void addEngines();

} // namespace gw::test
