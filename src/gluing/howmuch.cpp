#include "gluing/howmuch.h"

#include <array>
#include <cctype>
#include <cmath>
#include <numbers>
#include <optional>

#include "gluing/sentences.h"
#include "measure/number.h"
#include "measure/quoted.h"

namespace gw {

namespace {

constexpr double mmSquaredPerCmSquared = 100;
constexpr double cmSquaredPerMSquared = 10'000;
constexpr double longestMm = 10'000;
constexpr int mostJoints = 10'000;

struct ShapeFacts {
    JointShape shape;
    std::string_view name;
    std::size_t sizes;
    std::string_view wants;
};
constexpr std::array shapes {
    ShapeFacts { JointShape::Tenon, "tenon", 3, "length x width x thickness" },
    ShapeFacts { JointShape::Dowel, "dowel", 2, "diameter x depth" },
    ShapeFacts { JointShape::Edge, "edge", 2, "length x thickness" },
    ShapeFacts { JointShape::Face, "face", 2, "length x width" },
    ShapeFacts { JointShape::Block, "block", 2, "length x width of one face" },
    ShapeFacts { JointShape::Dovetail, "dovetail", 3, "tails x thickness x depth" },
    ShapeFacts { JointShape::Mitre, "mitre", 2, "width x thickness" },
    ShapeFacts { JointShape::Break, "break", 3, "width x length of the slope x roughness 1 to 3" },
};
struct OtherName {
    std::string_view name;
    JointShape shape;
};
constexpr std::array otherNames {
    OtherName { "round", JointShape::Dowel },
    OtherName { "veneer", JointShape::Face },
    OtherName { "patch", JointShape::Face },
    OtherName { "layer", JointShape::Face },
};

const ShapeFacts& factsOf(JointShape shape) { return shapes.at(static_cast<std::size_t>(shape)); }

std::optional<JointShape> shapeOfWord(std::string_view name)
{
    if (name.ends_with('s') && name != "s")
        name.remove_suffix(1);
    for (const ShapeFacts& facts : shapes) {
        if (facts.name == name)
            return facts.shape;
    }
    for (const OtherName& other : otherNames) {
        if (other.name == name)
            return other.shape;
    }
    return std::nullopt;
}

tl::unexpected<Error> cannotRead(std::string_view text)
{
    std::string known;
    for (const ShapeFacts& facts : shapes)
        known
            += (known.empty() ? "" : ", ") + std::string(facts.name) + " (" + std::string(facts.wants) + ")";
    return fail(ErrorCode::BadInput,
        inQuotes(text)
            + " is no joint that can be reckoned: say how many, what and its sizes in mm, such as "
              "\"8 tenon 30x40x10\". There are "
            + known + ".");
}

/// A whole number at the start; nothing when there is none.
std::optional<int> countAt(std::string_view& text)
{
    std::size_t digits = 0;
    while (digits < text.size() && std::isdigit(static_cast<unsigned char>(text[digits])) != 0)
        ++digits;
    if (digits == 0 || digits > 5)
        return std::nullopt;
    const int count = std::stoi(std::string(text.substr(0, digits)));
    text = trimmed(text.substr(digits));
    if (text.starts_with("x ") || text.starts_with("X "))
        text = trimmed(text.substr(1));
    return count;
}

} // namespace

std::string_view word(JointShape shape) { return factsOf(shape).name; }

std::string JointWork::words() const
{
    std::string text = count == 1 ? std::string() : std::to_string(count) + " x ";
    text += word(shape);
    for (std::size_t i = 0; i < sizes.size(); ++i)
        text += (i == 0 ? " " : " x ") + numberWords(sizes[i], 2);
    // Tails and roughness are no millimetres.
    return shape == JointShape::Break || shape == JointShape::Dovetail ? text : text + " mm";
}

Result<JointWork> parseJointWork(std::string_view text)
{
    std::string_view rest = trimmed(text);
    JointWork work;
    const bool counted = !rest.empty() && std::isdigit(static_cast<unsigned char>(rest.front())) != 0;
    if (counted) {
        const auto count = countAt(rest);
        if (!count)
            return cannotRead(text);
        work.count = *count;
    }
    std::size_t letters = 0;
    while (letters < rest.size() && std::isalpha(static_cast<unsigned char>(rest[letters])) != 0)
        ++letters;
    std::string name(rest.substr(0, letters));
    for (char& c : name)
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    const auto shape = shapeOfWord(name);
    if (!shape)
        return cannotRead(text);
    work.shape = *shape;
    rest = trimmed(rest.substr(letters));
    while (!rest.empty()) {
        const auto number = leadingNumber(rest);
        if (!number)
            return cannotRead(text);
        work.sizes.push_back(number->value);
        rest = trimmed(number->rest);
        if (rest.starts_with("mm"))
            rest = trimmed(rest.substr(2));
        if (rest.empty())
            break;
        if (!rest.starts_with('x') && !rest.starts_with('X'))
            return cannotRead(text);
        rest = trimmed(rest.substr(1));
        if (rest.empty())
            return cannotRead(text); // a size was still to come
    }
    if (auto area = areaOf(work); !area)
        return tl::unexpected(area.error());
    return work;
}

Result<double> areaOf(const JointWork& work)
{
    const ShapeFacts& facts = factsOf(work.shape);
    const auto& s = work.sizes;
    if (s.size() != facts.sizes)
        return fail(ErrorCode::BadInput,
            "A " + std::string(facts.name) + " wants its sizes as " + std::string(facts.wants) + ", in mm.");
    if (work.count < 1 || work.count > mostJoints)
        return fail(ErrorCode::BadInput,
            std::to_string(work.count) + " joints cannot be: say 1 to " + std::to_string(mostJoints) + ".");
    for (const double size : s) {
        if (!(size > 0 && size <= longestMm))
            return fail(ErrorCode::BadInput,
                "A size of " + numberWords(size, 2) + " mm cannot be: say over 0 to 10,000 mm.");
    }
    double area = 0; // mm2 of one
    switch (work.shape) {
    case JointShape::Tenon:
        area = 2 * s[0] * s[1] + 2 * s[0] * s[2];
        break;
    case JointShape::Dowel:
        area = std::numbers::pi * s[0] * s[1];
        break;
    case JointShape::Edge:
    case JointShape::Face:
        area = s[0] * s[1];
        break;
    case JointShape::Block:
        area = 2 * s[0] * s[1];
        break;
    case JointShape::Dovetail:
        area = s[0] * 2 * s[1] * s[2];
        break;
    case JointShape::Mitre:
        area = std::numbers::sqrt2 * s[0] * s[1];
        break;
    case JointShape::Break:
        if (s[2] < 1 || s[2] > 3)
            return fail(ErrorCode::BadInput,
                "A break of roughness " + numberWords(s[2], 2)
                    + " cannot be: say 1 for smooth to 3 for torn.");
        area = s[0] * std::hypot(s[1], s[0]) * s[2];
        break;
    }
    return area * work.count / mmSquaredPerCmSquared;
}

Result<PotWork> potWorkOf(const std::string& name, const std::vector<JointWork>& joints, double fillCm3,
    const SpreadFigures& figures, int pieces)
{
    PotWork work { name, 0, figures.spread, figures.waste, 0, pieces };
    for (const JointWork& joint : joints) {
        const auto area = areaOf(joint);
        if (!area)
            return tl::unexpected(area.error());
        work.areaCm2 += *area;
    }
    if (!(fillCm3 >= 0 && fillCm3 <= 10'000))
        return fail(ErrorCode::BadInput,
            "Lost wood of " + numberWords(fillCm3, 1) + " cm3 cannot be: say 0 to 10,000 cm3.");
    work.fillGrams = fillCm3 * figures.fillDensity * (1 + figures.waste);
    return work;
}

Result<PotNeed> needOnOnePot(const std::vector<PotWork>& works, double fixedLoss)
{
    if (works.empty())
        return fail(ErrorCode::BadInput, "Say what is to be glued: at least one joint.");
    PotNeed need;
    need.fixed = fixedLoss;
    for (const PotWork& work : works) {
        if (work.pieces < 1 || work.pieces > 1000)
            return fail(
                ErrorCode::BadInput, std::to_string(work.pieces) + " pieces cannot be: say 1 to 1000.");
        if (!(work.areaCm2 >= 0 && work.areaCm2 <= 1e9 && work.spread > 0 && work.waste >= 0
                && work.fillGrams >= 0)
            || work.areaCm2 + work.fillGrams <= 0)
            return fail(ErrorCode::BadInput,
                "How much " + inQuotes(work.name)
                    + " takes is not known: give its joints and the glue's spread.");
        PotShare share { work.name, work.areaCm2 * work.pieces, 0, 0, work.fillGrams * work.pieces, 0, 0, 0 };
        share.net = share.areaCm2 / cmSquaredPerMSquared * work.spread;
        share.waste = share.net * work.waste;
        share.alone = share.net + share.waste + share.fill + fixedLoss;
        need.areaCm2 += share.areaCm2;
        need.net += share.net;
        need.waste += share.waste;
        need.fill += share.fill;
        need.shares.push_back(std::move(share));
    }
    const double spread = need.net + need.waste + need.fill;
    for (PotShare& share : need.shares) {
        const double own = share.net + share.waste + share.fill;
        share.fixed = fixedLoss * own / spread;
        share.whole = own + share.fixed;
        need.saved += share.alone - share.whole;
    }
    need.whole = spread + fixedLoss;
    need.fixedIsMost = fixedLoss > spread;
    return need;
}

} // namespace gw
