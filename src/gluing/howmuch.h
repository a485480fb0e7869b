#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "gluing/family.h"
#include "measure/error.h"

/// From the size of joints to grams of glue. Sizes in millimetres, areas in square centimetres.
namespace gw {

enum class JointShape {
    Tenon, ///< length x width x thickness: four cheeks and edges, the end not counted
    Dowel, ///< diameter x depth: one end of a round tenon or dowel
    Edge, ///< length x thickness
    Face, ///< length x width: veneer, patch, butt face, layer
    Block, ///< length x width of each of its two faces
    Dovetail, ///< tails x thickness x depth: one corner
    Mitre, ///< width x thickness: the slope is the longer by the root of two
    Break, ///< width x length of the slope along the grain x roughness 1 to 3
};
std::string_view word(JointShape shape); ///< "tenon", "dowel", ...

/// So many joints of one size.
struct JointWork {
    JointShape shape = JointShape::Face;
    std::vector<double> sizes; ///< as the shape has them
    int count = 1;
    std::string words() const; ///< "8 x tenon 30 x 40 x 10 mm"
};

/// "8 tenon 30x40x10", "6 x dowel 16x22", "edge 900x22", "break 45x200x1.8", "veneer 50x80". Errors:
/// BadInput, naming the shapes and sizes wanted.
Result<JointWork> parseJointWork(std::string_view text);

/// Glue line of all of them, cm2. Errors: BadInput for sizes that cannot be (each over 0, at most 10 m).
Result<double> areaOf(const JointWork& work);

/// What a family takes, from its reference figures.
struct SpreadFigures {
    double spread = 0; ///< g/m2 of glue line, both faces together
    double waste = 0; ///< share
    double fixedLoss = 0; ///< grams once each session: pot, brush, cup
    double fillDensity = 1.12; ///< g/ml, for lost wood
};

/// Work that is done on one pot or cup.
struct PotWork {
    std::string name;
    double areaCm2 = 0;
    double spread = 0, waste = 0; ///< as the family's, or the job type's own
    double fillGrams = 0; ///< for lost wood, waste included
    int pieces = 1;
};

struct PotShare {
    std::string name;
    double areaCm2 = 0, net = 0, waste = 0, fill = 0; ///< grams
    double fixed = 0; ///< its share of what stays in the pot: by grams spread
    double whole = 0; ///< all of it
    double alone = 0; ///< what it would take on a pot of its own
};

/// grams = area x spread x (1 + waste) + fill + what stays in the pot, which all of them share.
struct PotNeed {
    std::vector<PotShare> shares;
    double areaCm2 = 0, net = 0, waste = 0, fill = 0, fixed = 0;
    double whole = 0; ///< grams of ready glue
    double saved = 0; ///< against a pot for each
    bool fixedIsMost = false; ///< more stays in the pot than goes into the joints
};

/// Errors: BadInput for no work, areas or pieces that cannot be.
Result<PotNeed> needOnOnePot(const std::vector<PotWork>& works, double fixedLoss);

/// Work of some joints with a family's figures, and so many cubic centimetres of lost wood. Errors: those of
/// areaOf().
Result<PotWork> potWorkOf(const std::string& name, const std::vector<JointWork>& joints, double fillCm3,
    const SpreadFigures& figures, int pieces = 1);

} // namespace gw
