#include "codes/applicationidentifiers.h"

#include <algorithm>
#include <cassert>
#include <initializer_list>

namespace gw {

namespace {

using enum Content;

constexpr std::uint8_t small(int value) { return static_cast<std::uint8_t>(value); }

constexpr Part digits(int length, Content content = Anything)
{
    return { CharSet::Digits, small(length), small(length), content, false };
}
constexpr Part digitsUpTo(int longest) { return { CharSet::Digits, 1, small(longest), Anything, false }; }
constexpr Part text(int length, Content content = Anything)
{
    return { CharSet::Set82, small(length), small(length), content, false };
}
constexpr Part textUpTo(int longest) { return { CharSet::Set82, 1, small(longest), Anything, false }; }
constexpr Part perhaps(Part part)
{
    part.optional = true;
    return part;
}

struct Flags {
    bool predefinedLength;
    bool linkAttribute;
};
constexpr Flags fixed { true, true }; ///< predefined length, may stand in a link's query
constexpr Flags ended { false, true }; ///< ends with a separator, may stand in a link's query
constexpr Flags fixedNotInQuery { true, false };
constexpr Flags endedNotInQuery { false, false };

constexpr Identifier ai(std::string_view first, std::string_view last, Flags flags,
    std::initializer_list<Part> parts, std::string_view needs, std::string_view excludes,
    std::string_view name)
{
    const auto number = [](std::string_view text) {
        int value = 0;
        for (const char c : text)
            value = value * 10 + (c - '0');
        return static_cast<std::uint16_t>(value);
    };
    Identifier made { number(first), number(last), small(static_cast<int>(first.size())),
        flags.predefinedLength, flags.linkAttribute, small(static_cast<int>(parts.size())), {}, needs,
        excludes, name };
    std::copy(parts.begin(), parts.end(), made.parts.begin());
    return made;
}

constexpr Identifier ai(std::string_view only, Flags flags, std::initializer_list<Part> parts,
    std::string_view needs, std::string_view excludes, std::string_view name)
{
    return ai(only, only, flags, parts, needs, excludes, name);
}

/// A trade measure, six digits, the identifier's last digit saying how many of them are decimals (0 to 5).
constexpr Identifier measure(std::string_view first, std::string_view last, std::string_view self,
    std::string_view name, std::string_view needs = "01,02")
{
    return ai(first, last, fixed, { digits(6) }, needs, self, name);
}
/// The same of a logistic unit: gross, of what is shipped rather than of what is in it.
constexpr Identifier shipped(
    std::string_view first, std::string_view last, std::string_view self, std::string_view name)
{
    return measure(first, last, self, name, "00,01");
}

constexpr std::string_view item = "01,02,8006,8026";
constexpr std::string_view itemOrOrder = "01,02,03,8006,8026";
constexpr std::string_view measured = "30,31nn,32nn,35nn,36nn";

// Kept in the order of the identifiers. Left unchecked, as no shop decides by them: country, currency, bank
// account and coupon contents, company prefixes, latitude and longitude, the check characters of model
// numbers.
// clang-format off
constexpr std::array identifiers {
    ai("00", fixed, { digits(18, CheckDigit) }, "", "", "shipping unit"),
    ai("01", fixed, { digits(14, CheckDigit) }, "", "02,255,37", "item number"),
    ai("02", fixed, { digits(14, CheckDigit) }, "37", "01,03", "item number of the contents"),
    ai("03", fixedNotInQuery, { digits(14, CheckDigit) }, "", "01,02,37", "item number made to order"),
    ai("10", ended, { textUpTo(20) }, itemOrOrder, "", "lot"),
    ai("11", fixed, { digits(6, DayMayBeZero) }, itemOrOrder, "", "production date"),
    ai("12", fixed, { digits(6, DayMayBeZero) }, "8020", "", "due date"),
    ai("13", fixed, { digits(6, DayMayBeZero) }, itemOrOrder, "", "packaging date"),
    ai("15", fixed, { digits(6, DayMayBeZero) }, itemOrOrder, "", "best before"),
    ai("16", fixed, { digits(6, DayMayBeZero) }, itemOrOrder, "", "sell by"),
    ai("17", fixed, { digits(6, DayMayBeZero) }, "01,02,03,255,8006,8026", "", "use by"),
    ai("20", fixed, { digits(2) }, item, "", "variant"),
    ai("21", endedNotInQuery, { textUpTo(20) }, "01,03,8006", "235", "serial number"),
    ai("22", endedNotInQuery, { textUpTo(20) }, "01", "", "consumer variant"),
    ai("235", endedNotInQuery, { textUpTo(28) }, "01", "", "third-party serial number"),
    ai("240", ended, { textUpTo(30) }, item, "", "maker's article code"),
    ai("241", ended, { textUpTo(30) }, item, "", "customer's article code"),
    ai("242", ended, { digitsUpTo(6) }, item, "", "made-to-order variant"),
    ai("243", ended, { textUpTo(20) }, "01", "", "packaging component"),
    ai("250", ended, { textUpTo(30) }, "01,8006;21", "", "second serial number"),
    ai("251", ended, { textUpTo(30) }, "01,8006", "", "source"),
    ai("253", ended, { digits(13, CheckDigit), perhaps(textUpTo(17)) }, "", "", "document"),
    ai("254", endedNotInQuery, { textUpTo(20) }, "414", "", "part of a location"),
    ai("255", ended, { digits(13, CheckDigit), perhaps(digitsUpTo(12)) }, "", "01,02,415,8006,8020,8026", "coupon"),
    ai("30", ended, { digitsUpTo(8) }, "01,02", "", "count of items"),
    measure("3100", "3105", "310n", "net weight in kg"),
    measure("3110", "3115", "311n", "length in m"),
    measure("3120", "3125", "312n", "width in m"),
    measure("3130", "3135", "313n", "height in m"),
    measure("3140", "3145", "314n", "area in m2"),
    measure("3150", "3155", "315n", "net volume in l"),
    measure("3160", "3165", "316n", "net volume in m3"),
    measure("3200", "3205", "320n", "net weight in lb"),
    measure("3210", "3215", "321n", "length in in"),
    measure("3220", "3225", "322n", "length in ft"),
    measure("3230", "3235", "323n", "length in yd"),
    measure("3240", "3245", "324n", "width in in"),
    measure("3250", "3255", "325n", "width in ft"),
    measure("3260", "3265", "326n", "width in yd"),
    measure("3270", "3275", "327n", "height in in"),
    measure("3280", "3285", "328n", "height in ft"),
    measure("3290", "3295", "329n", "height in yd"),
    shipped("3300", "3305", "330n", "gross weight in kg"),
    shipped("3310", "3315", "331n", "shipped length in m"),
    shipped("3320", "3325", "332n", "shipped width in m"),
    shipped("3330", "3335", "333n", "shipped height in m"),
    shipped("3340", "3345", "334n", "shipped area in m2"),
    shipped("3350", "3355", "335n", "shipped volume in l"),
    shipped("3360", "3365", "336n", "shipped volume in m3"),
    measure("3370", "3375", "337n", "kg per m2", "01"),
    shipped("3400", "3405", "340n", "gross weight in lb"),
    shipped("3410", "3415", "341n", "shipped length in in"),
    shipped("3420", "3425", "342n", "shipped length in ft"),
    shipped("3430", "3435", "343n", "shipped length in yd"),
    shipped("3440", "3445", "344n", "shipped width in in"),
    shipped("3450", "3455", "345n", "shipped width in ft"),
    shipped("3460", "3465", "346n", "shipped width in yd"),
    shipped("3470", "3475", "347n", "shipped height in in"),
    shipped("3480", "3485", "348n", "shipped height in ft"),
    shipped("3490", "3495", "349n", "shipped height in yd"),
    measure("3500", "3505", "350n", "area in in2"),
    measure("3510", "3515", "351n", "area in ft2"),
    measure("3520", "3525", "352n", "area in yd2"),
    shipped("3530", "3535", "353n", "shipped area in in2"),
    shipped("3540", "3545", "354n", "shipped area in ft2"),
    shipped("3550", "3555", "355n", "shipped area in yd2"),
    measure("3560", "3565", "356n", "net weight in troy oz"),
    measure("3570", "3575", "357n", "net volume in fl oz"),
    measure("3600", "3605", "360n", "net volume in qt"),
    measure("3610", "3615", "361n", "net volume in gal"),
    shipped("3620", "3625", "362n", "shipped volume in qt"),
    shipped("3630", "3635", "363n", "shipped volume in gal"),
    measure("3640", "3645", "364n", "net volume in in3"),
    measure("3650", "3655", "365n", "net volume in ft3"),
    measure("3660", "3665", "366n", "net volume in yd3"),
    shipped("3670", "3675", "367n", "shipped volume in in3"),
    shipped("3680", "3685", "368n", "shipped volume in ft3"),
    shipped("3690", "3695", "369n", "shipped volume in yd3"),
    ai("37", ended, { digitsUpTo(8) }, "00;02,8026", "", "count of the contents"),
    ai("3900", "3909", ended, { digitsUpTo(15) }, "255,8020", "390n,391n,394n,8111", "amount to pay"),
    ai("3910", "3919", ended, { digits(3), digitsUpTo(15) }, "8020", "391n", "amount to pay with currency"),
    ai("3920", "3929", ended, { digitsUpTo(15) }, "01;30,31nn,32nn,35nn,36nn", "392n,393n", "price"),
    ai("3930", "3939", ended, { digits(3), digitsUpTo(15) }, measured, "393n", "price with currency"),
    ai("3940", "3943", ended, { digits(4) }, "255", "394n,8111", "percent off"),
    ai("3950", "3955", ended, { digits(6) }, measured, "392n,393n,395n,8005", "price per unit"),
    ai("400", ended, { textUpTo(30) }, "", "", "order number"),
    ai("401", ended, { textUpTo(30) }, "", "", "consignment"),
    ai("402", ended, { digits(17, CheckDigit) }, "", "", "shipment"),
    ai("403", ended, { textUpTo(30) }, "00", "", "route"),
    ai("410", fixed, { digits(13, CheckDigit) }, "", "", "ship to"),
    ai("411", fixed, { digits(13, CheckDigit) }, "", "", "bill to"),
    ai("412", fixed, { digits(13, CheckDigit) }, "", "", "bought from"),
    ai("413", fixed, { digits(13, CheckDigit) }, "", "", "ship for"),
    ai("414", fixed, { digits(13, CheckDigit) }, "", "", "location"),
    ai("415", fixed, { digits(13, CheckDigit) }, "8020", "", "pay to"),
    ai("416", fixed, { digits(13, CheckDigit) }, "", "", "place of production"),
    ai("417", fixed, { digits(13, CheckDigit) }, "", "", "party"),
    ai("420", ended, { textUpTo(20) }, "", "421", "postal code"),
    ai("421", ended, { digits(3), textUpTo(9) }, "", "4307", "postal code with country"),
    ai("422", ended, { digits(3) }, item, "426", "country of origin"),
    ai("423", ended, { digits(3), perhaps(digits(3)), perhaps(digits(3)), perhaps(digits(3)), perhaps(digits(3)) }, "01,02", "426", "country of first processing"),
    ai("424", ended, { digits(3) }, "01,02", "426", "country of processing"),
    ai("425", ended, { digits(3), perhaps(digits(3)), perhaps(digits(3)), perhaps(digits(3)), perhaps(digits(3)) }, "01,02", "426", "country of taking apart"),
    ai("426", ended, { digits(3) }, "01,02", "", "country of all processing"),
    ai("427", ended, { textUpTo(3) }, "01,02;422", "", "region of origin"),
    ai("4300", "4301", ended, { textUpTo(35) }, "00", "", "ship to name"),
    ai("4302", ended, { textUpTo(70) }, "00", "", "ship to address"),
    ai("4303", ended, { textUpTo(70) }, "4302", "", "ship to address, second line"),
    ai("4304", "4306", ended, { textUpTo(70) }, "00", "", "ship to town or region"),
    ai("4307", ended, { text(2) }, "00", "", "ship to country"),
    ai("4308", ended, { textUpTo(30) }, "00", "", "ship to telephone"),
    ai("4309", ended, { digits(10), digits(10) }, "00", "", "ship to position"),
    ai("4310", "4311", ended, { textUpTo(35) }, "00", "", "return to name"),
    ai("4312", ended, { textUpTo(70) }, "00", "", "return to address"),
    ai("4313", ended, { textUpTo(70) }, "4312", "", "return to address, second line"),
    ai("4314", "4316", ended, { textUpTo(70) }, "00", "", "return to town or region"),
    ai("4317", ended, { text(2) }, "00", "", "return to country"),
    ai("4318", ended, { textUpTo(20) }, "00", "", "return to postal code"),
    ai("4319", ended, { textUpTo(30) }, "00", "", "return to telephone"),
    ai("4320", ended, { textUpTo(35) }, "00", "", "carrier's service"),
    ai("4321", ended, { digits(1, YesNo) }, "00", "", "dangerous goods"),
    ai("4322", ended, { digits(1, YesNo) }, "00", "", "may be left"),
    ai("4323", ended, { digits(1, YesNo) }, "00", "", "signature needed"),
    ai("4324", ended, { digits(6, DayMayBeZero), digits(2), digits(2) }, "00", "", "deliver not before"),
    ai("4325", ended, { digits(6, DayMayBeZero), digits(2), digits(2) }, "00", "", "deliver not after"),
    ai("4326", ended, { digits(6, Day) }, "00", "", "release date"),
    ai("4330", ended, { digits(6), perhaps(text(1, Hyphen)) }, "00", "4331", "warmest allowed in F"),
    ai("4331", ended, { digits(6), perhaps(text(1, Hyphen)) }, "00", "4330", "warmest allowed in C"),
    ai("4332", ended, { digits(6), perhaps(text(1, Hyphen)) }, "00", "4333", "coldest allowed in F"),
    ai("4333", ended, { digits(6), perhaps(text(1, Hyphen)) }, "00", "4332", "coldest allowed in C"),
    ai("7001", ended, { digits(13) }, item, "", "stock number of the forces"),
    ai("7002", ended, { textUpTo(30) }, "01,02", "", "cut"),
    ai("7003", ended, { digits(6, Day), digits(2, Hour), digits(2, Minute) }, "01,02", "", "use by, with the time"),
    ai("7004", ended, { digitsUpTo(4) }, "01;10", "", "active potency"),
    ai("7005", ended, { textUpTo(12) }, "01,02", "", "catch area"),
    ai("7006", ended, { digits(6, Day) }, "01,02", "", "first frozen on"),
    ai("7007", ended, { digits(6, Day), perhaps(digits(6, Day)) }, "01,02", "", "harvest date"),
    ai("7008", ended, { textUpTo(3) }, "01,02", "", "species"),
    ai("7009", ended, { textUpTo(10) }, "01,02", "", "fishing gear"),
    ai("7010", ended, { textUpTo(2) }, "01,02", "", "production method"),
    ai("7011", ended, { digits(6, Day), perhaps(digits(2, Hour)), perhaps(digits(2, Minute)) }, "01,02", "", "test by"),
    ai("7020", ended, { textUpTo(20) }, "01,8006;416", "", "refurbished lot"),
    ai("7021", ended, { textUpTo(20) }, "01,8006", "", "functional status"),
    ai("7022", ended, { textUpTo(20) }, "7021", "", "revision"),
    ai("7023", ended, { textUpTo(30) }, "", "", "assembly"),
    ai("7030", "7039", ended, { digits(3), textUpTo(27) }, "01,02", "", "processor"),
    ai("7040", endedNotInQuery, { digits(1), text(1), text(1), text(1) }, "", "", "issuer"),
    ai("7041", ended, { textUpTo(4) }, "00", "", "freight unit"),
    ai("710", "716", ended, { textUpTo(20) }, "01", "", "national reimbursement number"),
    ai("7230", "7239", ended, { text(2), textUpTo(28) }, "01,8004", "", "certificate"),
    ai("7240", ended, { textUpTo(20) }, "01,8006", "", "protocol"),
    ai("7241", ended, { digits(2) }, "8017,8018", "", "kind of data carrier"),
    ai("7242", ended, { textUpTo(25) }, "8017,8018", "", "version control number"),
    ai("8001", ended, { digits(4, NotZero), digits(5, NotZero), digits(3, NotZero), digits(1), digits(1) }, "01", "", "roll dimensions"),
    ai("8002", ended, { textUpTo(20) }, "", "", "telephone serial number"),
    ai("8003", ended, { digits(1, Zero), digits(13, CheckDigit), perhaps(textUpTo(16)) }, "", "", "returnable container"),
    ai("8004", ended, { textUpTo(30) }, "", "", "asset"),
    ai("8005", ended, { digits(6) }, "01,02", "", "price per unit of measure"),
    ai("8006", ended, { digits(14, CheckDigit), digits(4, PieceOfTotal) }, "", "01,37", "piece of an item"),
    ai("8007", ended, { textUpTo(34) }, "415", "", "bank account"),
    ai("8008", ended, { digits(6, Day), digits(2, Hour), perhaps(digits(2, Minute)), perhaps(digits(2, Second)) }, "01,02", "", "production time"),
    ai("8009", ended, { textUpTo(50) }, "00,01", "", "sensor"),
    ai("8010", ended, { Part { CharSet::Set39, 1, 30, Anything, false } }, "", "", "component"),
    ai("8011", endedNotInQuery, { digitsUpTo(12) }, "8010", "", "component serial number"),
    ai("8012", ended, { textUpTo(20) }, "01,8006", "", "software version"),
    ai("8013", ended, { textUpTo(25) }, "", "", "model"),
    ai("8014", endedNotInQuery, { textUpTo(25) }, "01", "", "device model"),
    ai("8017", ended, { digits(18, CheckDigit) }, "", "8018", "service provider"),
    ai("8018", ended, { digits(18, CheckDigit) }, "", "8017", "service recipient"),
    ai("8019", endedNotInQuery, { digitsUpTo(10) }, "8017,8018", "", "service instance"),
    ai("8020", endedNotInQuery, { textUpTo(25) }, "415", "", "payment slip"),
    ai("8026", ended, { digits(14, CheckDigit), digits(4, PieceOfTotal) }, "37", "02,8006", "piece of the contents"),
    ai("8030", ended, { Part { CharSet::Set64, 1, 90, Anything, false } }, "00,01+21,253,255,8003,8004,8006+21,8010+8011,8017,8018", "", "signature"),
    ai("8110", ended, { textUpTo(70) }, "", "", "coupon of North America"),
    ai("8111", ended, { digits(4) }, "255", "", "points"),
    ai("8112", ended, { textUpTo(70) }, "", "", "paperless coupon"),
    ai("8200", endedNotInQuery, { textUpTo(70) }, "01", "", "address on the net"),
    ai("90", ended, { textUpTo(30) }, "", "", "agreed between partners"),
    ai("91", "99", ended, { textUpTo(90) }, "", "", "the company's own"),
};

constexpr std::array linkKeys {
    LinkKey { "00", { "", "" } },
    LinkKey { "01", { "22,10,21", "235" } },
    LinkKey { "253", { "", "" } },
    LinkKey { "255", { "", "" } },
    LinkKey { "401", { "", "" } },
    LinkKey { "402", { "", "" } },
    LinkKey { "414", { "254", "7040" } },
    LinkKey { "415", { "8020", "" } },
    LinkKey { "417", { "7040", "" } },
    LinkKey { "8003", { "", "" } },
    LinkKey { "8004", { "7040", "" } },
    LinkKey { "8006", { "22,10,21", "" } },
    LinkKey { "8010", { "8011", "" } },
    LinkKey { "8013", { "", "" } },
    LinkKey { "8017", { "8019", "" } },
    LinkKey { "8018", { "8019", "" } },
};
// clang-format on

constexpr int powerOfTen(int exponent)
{
    int value = 1;
    for (; exponent > 0; --exponent)
        value *= 10;
    return value;
}

/// Where the rows of each two-digit prefix begin and end.
struct PrefixIndex {
    std::array<std::uint8_t, 100> begin {};
    std::array<std::uint8_t, 100> end {};
};

constexpr PrefixIndex makeIndex()
{
    PrefixIndex index;
    for (std::size_t i = 0; i < identifiers.size(); ++i) {
        for (int number = identifiers[i].first; number <= identifiers[i].last; ++number) {
            const auto prefix = static_cast<std::size_t>(number / powerOfTen(identifiers[i].digits - 2));
            if (index.end[prefix] == 0)
                index.begin[prefix] = static_cast<std::uint8_t>(i);
            index.end[prefix] = static_cast<std::uint8_t>(i + 1);
        }
    }
    return index;
}

static_assert(identifiers.size() < 255);
constexpr PrefixIndex prefixIndex = makeIndex();

/// The number of so many leading digits, -1 when they are not all there.
int leadingDigits(std::string_view data, std::size_t count)
{
    if (data.size() < count)
        return -1;
    int value = 0;
    for (const char c : data.substr(0, count)) {
        if (c < '0' || c > '9')
            return -1;
        value = value * 10 + (c - '0');
    }
    return value;
}

} // namespace

std::size_t Identifier::shortest() const
{
    std::size_t sum = 0;
    for (const Part& part : usedParts())
        sum += part.optional ? 0 : part.shortest;
    return sum;
}

std::size_t Identifier::longest() const
{
    std::size_t sum = 0;
    for (const Part& part : usedParts())
        sum += part.longest;
    return sum;
}

const Identifier* identifierAtStart(std::string_view data)
{
    const int prefix = leadingDigits(data, 2);
    if (prefix < 0)
        return nullptr;
    const auto p = static_cast<std::size_t>(prefix);
    for (std::size_t row = prefixIndex.begin[p]; row < prefixIndex.end[p]; ++row) {
        const Identifier& identifier = identifiers[row];
        const int number = leadingDigits(data, identifier.digits);
        if (number >= identifier.first && number <= identifier.last)
            return &identifier;
    }
    return nullptr;
}

const Identifier* identifierNamed(std::string_view ai)
{
    const Identifier* identifier = identifierAtStart(ai);
    return identifier && identifier->digits == ai.size() ? identifier : nullptr;
}

std::string named(const Identifier& identifier, std::string_view ai)
{
    return '(' + std::string(ai) + ") " + std::string(identifier.name);
}

const LinkKey* linkKey(std::string_view ai)
{
    const auto key
        = std::find_if(linkKeys.begin(), linkKeys.end(), [&](const LinkKey& k) { return k.ai == ai; });
    return key == linkKeys.end() ? nullptr : &*key;
}

} // namespace gw
