#pragma once

#include <QTimer>

#include "app/controller.h"
#include "app/glueupcondition.h"
#include "app/rowsmodel.h"
#include "shop/batch.h"

namespace gw {

inline const QByteArrayList mixPartRoles { "what", "amount", "from", "result" };

/// A batch to be mixed, ready for the screen.
struct MixShown {
    QString name; ///< "Hot hide glue, 50 g"
    std::vector<ShownRow> parts; ///< mixPartRoles; key: the part's
    QStringList steps, limits, warnings;
    QStringList cautions; ///< first that hazards are recorded, where they are
    bool covered = false; ///< the shelf has every part
};

/// Mixing: which recipe and how much, what to weigh out of which container, the steps; and recording that it
/// was mixed, in one tap. What cannot be mixed is told in `problem`, as it is no fault of the program's.
class MixController : public gw::Controller {
    Q_OBJECT
    QML_ELEMENT
    Q_PROPERTY(QList<QString> recipes READ recipes NOTIFY recipesChanged)
    Q_PROPERTY(int recipe READ recipe WRITE setRecipe NOTIFY askedChanged)
    /// What else may be said of it: "hot", "epoxy", "shellac" or empty.
    Q_PROPERTY(QString kind READ kind NOTIFY askedChanged)
    Q_PROPERTY(QString need MEMBER m_need NOTIFY askedChanged)
    Q_PROPERTY(QString needUnit READ needUnit NOTIFY askedChanged)
    Q_PROPERTY(int form MEMBER m_form NOTIFY askedChanged) ///< 0 granules, 1 pearls, 2 cake
    Q_PROPERTY(
        int pressing MEMBER m_pressing NOTIFY askedChanged) ///< 0 not said, 1 at once, 2 after a minute
    Q_PROPERTY(int hardener MEMBER m_hardener NOTIFY askedChanged) ///< 0 not said, 1 slow, 2 fast
    Q_PROPERTY(int filler MEMBER m_filler NOTIFY askedChanged) ///< in the order of gw::Filler
    Q_PROPERTY(int consistency MEMBER m_consistency NOTIFY askedChanged) ///< in the order of gw::Consistency
    Q_PROPERTY(QString massRatio MEMBER m_massRatio NOTIFY askedChanged)
    Q_PROPERTY(QString potLife MEMBER m_potLife NOTIFY askedChanged) ///< minutes, as typed
    Q_PROPERTY(QString cut MEMBER m_cut NOTIFY askedChanged) ///< pounds, as typed
    Q_PROPERTY(bool waxy MEMBER m_waxy NOTIFY askedChanged)
    Q_PROPERTY(gw::GlueUpCondition* room READ room CONSTANT)
    Q_PROPERTY(QString who MEMBER m_who NOTIFY whoChanged)
    Q_PROPERTY(QString name READ name NOTIFY shown)
    Q_PROPERTY(QString problem READ problem NOTIFY shown)
    Q_PROPERTY(gw::RowsModel* parts READ parts CONSTANT)
    Q_PROPERTY(QList<QString> steps READ steps NOTIFY shown)
    Q_PROPERTY(QList<QString> limits READ limits NOTIFY shown)
    Q_PROPERTY(QList<QString> warnings READ warnings NOTIFY shown)
    Q_PROPERTY(QList<QString> cautions READ cautions NOTIFY shown)
    Q_PROPERTY(bool canRecord READ canRecord NOTIFY shown)

public:
    explicit MixController(QObject* parent = nullptr);

    QStringList recipes() const;
    int recipe() const { return m_recipe; }
    void setRecipe(int recipe);
    QString kind() const;
    QString needUnit() const;
    GlueUpCondition* room() { return &m_room; }
    QString name() const { return m_shown.name; }
    QString problem() const { return m_problem; }
    RowsModel* parts() { return &m_parts; }
    QStringList steps() const { return m_shown.steps; }
    QStringList limits() const { return m_shown.limits; }
    QStringList warnings() const { return m_shown.warnings; }
    QStringList cautions() const { return m_shown.cautions; }
    bool canRecord() const { return m_turnShown == m_turn && m_shown.covered; }

    /// Reads the recipes, and the shelf anew: as the sheet opens.
    Q_INVOKABLE void look();
    /// Writes that it was mixed, in one act that can be undone.
    Q_INVOKABLE void record();

Q_SIGNALS:
    void recipesChanged();
    void askedChanged();
    void whoChanged();
    void shown();
    void recorded();

protected:
    void begin() override;

private:
    struct Choice {
        std::string id;
        QString name;
    };
    Result<MixAsked> asked() const;
    std::string recipeId() const;
    void ask();
    void reckon();
    void show(Result<MixShown> answer);

    std::vector<Choice> m_recipes;
    int m_recipe = 0, m_form = 0, m_pressing = 0, m_hardener = 0, m_filler = 0, m_consistency = 2;
    QString m_need, m_massRatio, m_potLife, m_cut, m_who, m_problem;
    bool m_waxy = false;
    GlueUpCondition m_room;
    QTimer m_pause; // while a person is still typing
    int m_turn = 0, m_turnShown = -1; // of what is asked
    MixShown m_shown;
    RowsModel m_parts;
};

/// The mix with what it takes from the shelf, in words. Runs on the shop's thread.
Result<MixShown> mixShown(const Shop& shop, const MixAsked& asked, Moment now);

} // namespace gw
