#pragma once

#include <QString>

namespace gw::test {

/// A disk of its own, as small as asked for; gone with the object. Needs the right to mount.
class SmallDisk {
public:
    SmallDisk(const QString& folder, int kilobytes);
    ~SmallDisk();
    SmallDisk(const SmallDisk&) = delete;
    SmallDisk& operator=(const SmallDisk&) = delete;
    bool isThere() const { return m_isThere; }
    bool resize(int kilobytes) const;
    bool makeReadOnly() const;

private:
    bool again(const QString& options, unsigned long flags) const;
    QString m_folder;
    bool m_isThere;
};

/// Makes this program an ordinary user for a while, when it runs as root: file permissions do not bind root.
class OrdinaryUser {
public:
    OrdinaryUser();
    ~OrdinaryUser();
    OrdinaryUser(const OrdinaryUser&) = delete;
    OrdinaryUser& operator=(const OrdinaryUser&) = delete;

private:
    bool m_wasRoot;
};

/// Files may not grow beyond so many bytes while the object lives; what is written further on fails.
class FileSizeLimit {
public:
    explicit FileSizeLimit(unsigned long bytes);
    ~FileSizeLimit();
    FileSizeLimit(const FileSizeLimit&) = delete;
    FileSizeLimit& operator=(const FileSizeLimit&) = delete;

private:
    unsigned long m_before;
};

} // namespace gw::test
