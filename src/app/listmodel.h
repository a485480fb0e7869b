#pragma once

#include <vector>

#include <QAbstractListModel>
#include <QHash>
#include <QtQmlIntegration/qqmlintegration.h>

namespace gw {

/// What changed between two lists of keys, as the fewest runs of rows that go and come; rows that stay keep
/// their order.
struct RowChanges {
    struct Run {
        int first = 0;
        int count = 0;
    };
    std::vector<Run> gone; ///< in the old list, last first
    std::vector<Run> come; ///< in the new list, first first
};
RowChanges rowChanges(const QStringList& before, const QStringList& after);

/// A list whose rows are values with a key. Taking over a fresh list tells the view only what differs, so
/// that the place a person has scrolled to stays.
class ListModel : public QAbstractListModel {
    Q_OBJECT
    QML_ANONYMOUS
    Q_PROPERTY(int count READ count NOTIFY countChanged)

public:
    using QAbstractListModel::QAbstractListModel;
    int count() const { return rowCount(); }
    int rowCount(const QModelIndex& parent = {}) const override = 0;

Q_SIGNALS:
    void countChanged();

protected:
    /// Row has `QString key`, unique in the list, and ==.
    template <class Row> void takeOver(std::vector<Row>& rows, std::vector<Row> next)
    {
        constexpr std::size_t worthTelling = 100; // runs; past that a reset is quicker for everybody
        const auto changes = rowChanges(keysOf(rows), keysOf(next));
        const bool otherCount = rows.size() != next.size();
        if (changes.gone.size() + changes.come.size() > worthTelling) {
            beginResetModel();
            rows = std::move(next);
            endResetModel();
        } else {
            for (const auto& run : changes.gone) {
                beginRemoveRows({}, run.first, run.first + run.count - 1);
                rows.erase(rows.begin() + run.first, rows.begin() + run.first + run.count);
                endRemoveRows();
            }
            for (const auto& run : changes.come) {
                beginInsertRows({}, run.first, run.first + run.count - 1);
                rows.insert(
                    rows.begin() + run.first, next.begin() + run.first, next.begin() + run.first + run.count);
                endInsertRows();
            }
            for (std::size_t i = 0; i < rows.size(); ++i) {
                if (rows[i] == next[i])
                    continue;
                rows[i] = std::move(next[i]);
                const QModelIndex at = index(static_cast<int>(i));
                Q_EMIT dataChanged(at, at);
            }
        }
        if (otherCount)
            Q_EMIT countChanged();
    }

private:
    template <class Row> static QStringList keysOf(const std::vector<Row>& rows)
    {
        QStringList keys;
        keys.reserve(static_cast<qsizetype>(rows.size()));
        for (const Row& row : rows)
            keys.append(row.key);
        return keys;
    }
};

} // namespace gw
