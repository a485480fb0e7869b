#include "exchange/readingsstream.h"

#include <algorithm>

#include <QFileInfo>

#include <csv.h>

namespace gw {

namespace {

constexpr std::size_t longestRow = std::size_t { 64 } * 1024;
constexpr qint64 pieceSize = 256LL * 1024;

/// Blanks belong to the cell (RFC 4180 section 2.4); the parser would trim them.
int noBlank(unsigned char) { return 0; }

// How far the parser is, of its states those that matter here (its source, not its header, names them).
constexpr int rowNotBegun = 0;
constexpr int fieldBegun = 2;

/// UTF-16 without a byte order mark shows by its zero bytes: Latin letters have one each, all on one side.
TextEncoding encodingOf(const QByteArray& start, int& mark)
{
    mark = 0;
    if (start.startsWith("\xEF\xBB\xBF")) {
        mark = 3;
        return TextEncoding::Utf8;
    }
    if (start.startsWith("\xFF\xFE") || start.startsWith("\xFE\xFF")) {
        mark = 2;
        return start.startsWith("\xFF\xFE") ? TextEncoding::Utf16Little : TextEncoding::Utf16Big;
    }
    const qsizetype length = std::min<qsizetype>(start.size(), 4096) & ~qsizetype { 1 };
    qsizetype even = 0;
    qsizetype odd = 0;
    for (qsizetype i = 0; i < length; i += 2) {
        even += start[i] == 0 ? 1 : 0;
        odd += start[i + 1] == 0 ? 1 : 0;
    }
    const qsizetype most = length / 2 * 8 / 10;
    if (length >= 8 && odd >= most && even * 20 < odd)
        return TextEncoding::Utf16Little;
    if (length >= 8 && even >= most && odd * 20 < even)
        return TextEncoding::Utf16Big;
    return TextEncoding::Utf8;
}

} // namespace

CsvRows::CsvRows(char delimiter, std::function<bool(const CsvRow&)> row)
    : m_row(std::move(row))
    , m_parser(std::make_unique<csv_parser>())
{
    csv_init(m_parser.get(), 0);
    csv_set_delim(m_parser.get(), static_cast<unsigned char>(delimiter));
    csv_set_space_func(m_parser.get(), noBlank);
}

CsvRows::~CsvRows() { csv_free(m_parser.get()); }

// The parser is C: nothing may be thrown across it, and the only thing thrown here is bad_alloc.
void CsvRows::onCell(void* text, std::size_t length, void* self) noexcept
{
    auto& rows = *static_cast<CsvRows*>(self);
    rows.m_text.append(static_cast<const char*>(text), length);
    rows.m_ends.push_back(rows.m_text.size());
}

void CsvRows::onRow(int, void* self) noexcept
{
    auto& rows = *static_cast<CsvRows*>(self);
    rows.m_rowDone = true;
    rows.hand(!rows.m_finishing, rows.m_finishQuote, false);
}

void CsvRows::hand(bool ended, bool openQuote, bool tooLong)
{
    m_cells.clear();
    std::size_t start = 0;
    for (const std::size_t end : m_ends) {
        m_cells.emplace_back(m_text.data() + start, end - start);
        start = end;
    }
    if (m_goOn)
        m_goOn = m_row({ m_rowLine, m_cells, ended, openQuote, tooLong });
    m_text.clear();
    m_ends.clear();
}

/// A line or the start of one. A row longer than any logger writes is given up, or a file of zero bytes or
/// with a stray quotation mark would end up in memory whole.
bool CsvRows::feedLine(std::string_view line, bool whole)
{
    if (m_skipping) {
        m_skipping = !whole;
    } else {
        m_rowDone = false;
        m_rowBytes += line.size();
        csv_parse(m_parser.get(), line.data(), line.size(), onCell, onRow, this);
        if (m_rowDone)
            m_rowBytes = 0;
        if (m_rowBytes > longestRow) {
            if (m_parser->quoted != 0 && m_parser->pstate >= fieldBegun) {
                m_openQuoteLine = m_rowLine;
                m_goOn = false;
            }
            csv_fini(m_parser.get(), nullptr, nullptr, nullptr);
            m_text.clear();
            m_ends.clear();
            m_rowBytes = 0;
            hand(true, false, true);
            m_skipping = !whole;
        }
    }
    m_line += whole ? 1 : 0;
    if (m_rowBytes == 0 || (m_ends.empty() && m_parser->pstate == rowNotBegun)) {
        m_rowBytes = 0;
        if (whole)
            m_rowLine = m_line;
    }
    return m_goOn;
}

bool CsvRows::feed(std::string_view piece)
{
    if (m_lineEnd == 0 && !piece.empty())
        m_lineEnd = piece.find('\n') == std::string_view::npos && piece.find('\r') != std::string_view::npos
            ? '\r'
            : '\n';
    while (m_goOn && !piece.empty()) {
        const auto end = piece.find(m_lineEnd);
        const bool whole = end != std::string_view::npos;
        const auto line = piece.substr(0, whole ? end + 1 : std::string_view::npos);
        feedLine(line, whole);
        piece.remove_prefix(line.size());
    }
    return m_goOn;
}

void CsvRows::finish()
{
    if (!m_goOn)
        return;
    m_finishing = true;
    m_finishQuote = m_parser->quoted != 0 && m_parser->pstate == fieldBegun;
    csv_fini(m_parser.get(), onCell, onRow, this);
}

TextPieces::TextPieces(const QString& path)
    : m_file(path)
    , m_name(QFileInfo(path).fileName().toStdString())
{
}

Result<std::unique_ptr<TextPieces>> TextPieces::open(const QString& path)
{
    std::unique_ptr<TextPieces> text(new TextPieces(path));
    if (!QFileInfo::exists(path))
        return fail(
            ErrorCode::FileUnreadable, text->m_name + " was not found; check the name and the folder.");
    if (!QFileInfo(path).isFile() || !text->m_file.open(QIODevice::ReadOnly | QIODevice::Unbuffered))
        return fail(ErrorCode::FileUnreadable,
            text->m_name + " cannot be read; check that it is a file and may be read.");
    return text;
}

Result<std::string_view> TextPieces::next()
{
    m_raw.resize(pieceSize);
    const qint64 count = m_file.read(m_raw.data(), pieceSize);
    if (count < 0)
        return fail(ErrorCode::FileUnreadable, m_name + " cannot be read to its end; copy it again.");
    m_raw.resize(count);
    int mark = 0;
    if (m_first && count > 0) {
        m_first = false;
        m_encoding = encodingOf(m_raw, mark);
        if (m_encoding == TextEncoding::Utf16Little || m_encoding == TextEncoding::Utf16Big)
            m_decoder = QStringDecoder(
                m_encoding == TextEncoding::Utf16Little ? QStringDecoder::Utf16LE : QStringDecoder::Utf16BE);
    }
    std::string_view text(m_raw.constData(), std::size_t(m_raw.size()));
    text.remove_prefix(std::size_t(mark));
    if (!m_decoder.isValid() || text.empty())
        return text;
    const QString decoded = m_decoder.decode(QByteArrayView(text.data(), qsizetype(text.size())));
    m_recoded = decoded.toUtf8();
    return std::string_view(m_recoded.constData(), std::size_t(m_recoded.size()));
}

std::string shownText(std::string_view text, TextEncoding encoding, int most)
{
    const auto start = QByteArray::fromStdString(std::string(text.substr(0, std::size_t(most) * 4)));
    QString shown = encoding == TextEncoding::Latin1 ? QString::fromLatin1(start) : QString::fromUtf8(start);
    for (QChar& c : shown)
        if (c.category() == QChar::Other_Control)
            c = c == QLatin1Char('\t') ? QLatin1Char(' ') : QLatin1Char('?');
    if (shown.size() > most)
        shown = shown.left(most) + QStringLiteral("...");
    return shown.toStdString();
}

} // namespace gw
