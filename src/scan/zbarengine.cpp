#include "scan/engine.h"

#include <algorithm>
#include <cstring>
#include <memory>

#include <zbar.h>

#include "scan/abortguard.h"
#include "scan/plausible.h"

namespace gw {

namespace {

using namespace zbar; // all of whose names begin with zbar

struct Kind {
    zbar_symbol_type_t type;
    const char* format;
    const char* symbology;
};

constexpr Kind kinds[] = {
    { ZBAR_EAN13, "EAN-13", "]E0" },
    { ZBAR_EAN8, "EAN-8", "]E4" },
    { ZBAR_UPCA, "UPC-A", "]E0" },
    { ZBAR_UPCE, "UPC-E", "]E0" },
    { ZBAR_I25, "ITF", "]I0" },
    { ZBAR_CODE128, "Code 128", "]C0" },
};

constexpr unsigned long y800 = 0x30303859; // "Y800": one byte of brightness a pixel

const Kind* kindOf(zbar_symbol_type_t type)
{
    const auto* found = std::find_if(
        std::begin(kinds), std::end(kinds), [type](const Kind& kind) { return kind.type == type; });
    return found == std::end(kinds) ? nullptr : found;
}

std::string versionedName()
{
    unsigned major = 0;
    unsigned minor = 0;
    unsigned patch = 0;
    zbar_version(&major, &minor, &patch);
    return "zbar " + std::to_string(major) + '.' + std::to_string(minor) + '.' + std::to_string(patch);
}

/// ZBar gives a point for every line that read the symbol.
QPolygonF outlineOf(const zbar_symbol_t* symbol)
{
    QPolygonF points;
    for (unsigned i = 0; i < zbar_symbol_get_loc_size(symbol); ++i)
        points << QPointF(zbar_symbol_get_loc_x(symbol, i), zbar_symbol_get_loc_y(symbol, i));
    const QRectF box = points.boundingRect();
    return { box.topLeft(), box.topRight(), box.bottomRight(), box.bottomLeft() };
}

class ZbarEngine final : public Engine {
public:
    explicit ZbarEngine(Effort effort)
        : m_scanner(zbar_image_scanner_create())
        , m_leastLines(effort == Effort::Picture ? 2 : 3)
    {
        if (!m_scanner)
            return;
        set(ZBAR_NONE, ZBAR_CFG_ENABLE, 0);
        for (const Kind& kind : kinds)
            set(kind.type, ZBAR_CFG_ENABLE, 1);
        // Of an ITF any even part looks whole; less than this is never one on goods.
        set(ZBAR_I25, ZBAR_CFG_MIN_LEN, 8);
        const int density = effort == Effort::Picture ? 1 : 3;
        set(ZBAR_NONE, ZBAR_CFG_X_DENSITY, density);
        set(ZBAR_NONE, ZBAR_CFG_Y_DENSITY, density);
    }
    ~ZbarEngine() override
    {
        if (m_scanner)
            zbar_image_scanner_destroy(m_scanner);
    }

    std::string name() const override { return versionedName(); }

    std::vector<Symbol> ask(const LuminanceView& picture, Question question) override
    {
        if (!m_scanner || question != Question::Bars || picture.width < 8 || picture.height < 4)
            return {};
        std::vector<Symbol> symbols;
        auto work = [&]() noexcept {
            try {
                symbols = find(picture);
            } catch (...) {
                symbols.clear();
            }
        };
        if (!survivesAbort(work)) {
            m_scanner = nullptr; // left half changed, so not to be touched again
            return {};
        }
        return symbols;
    }

private:
    void set(zbar_symbol_type_t type, zbar_config_t config, int value)
    {
        zbar_image_scanner_set_config(m_scanner, type, config, value);
    }

    std::vector<Symbol> find(const LuminanceView& picture)
    {
        const auto width = static_cast<std::size_t>(picture.width);
        m_bytes.resize(width * static_cast<std::size_t>(picture.height));
        for (int y = 0; y < picture.height; ++y)
            std::memcpy(m_bytes.data() + static_cast<std::size_t>(y) * width,
                picture.data + y * picture.stride, width);
        const std::unique_ptr<zbar_image_t, decltype(&zbar_image_destroy)> image(
            zbar_image_create(), &zbar_image_destroy);
        if (!image)
            return {};
        zbar_image_set_format(image.get(), y800);
        zbar_image_set_size(
            image.get(), static_cast<unsigned>(picture.width), static_cast<unsigned>(picture.height));
        zbar_image_set_data(image.get(), m_bytes.data(), m_bytes.size(), nullptr);
        std::vector<Symbol> symbols;
        if (zbar_scan_image(m_scanner, image.get()) < 1)
            return symbols;
        for (const auto* found = zbar_image_first_symbol(image.get()); found;
            found = zbar_symbol_next(found)) {
            const Kind* kind = kindOf(zbar_symbol_get_type(found));
            if (!kind || zbar_symbol_get_quality(found) < m_leastLines)
                continue;
            Symbol symbol;
            symbol.text.assign(zbar_symbol_get_data(found), zbar_symbol_get_data_length(found));
            if (symbol.text.empty())
                continue;
            symbol.format = kind->format;
            symbol.symbology = kind->symbology;
            if (kind->type == ZBAR_CODE128 && (zbar_symbol_get_modifiers(found) & (1U << ZBAR_MOD_GS1)) != 0)
                symbol.symbology = "]C1";
            if (kind->type == ZBAR_I25)
                symbol.symbology = itfIdentifier(symbol.text);
            symbol.engine = versionedName();
            symbol.outline = outlineOf(found);
            symbols.push_back(std::move(symbol));
        }
        return symbols;
    }

    zbar_image_scanner_t* m_scanner;
    int m_leastLines; ///< of pixels that must say the same
    std::vector<std::uint8_t> m_bytes;
};

} // namespace

std::unique_ptr<Engine> makeZbarEngine(Effort effort) { return std::make_unique<ZbarEngine>(effort); }

} // namespace gw
