#include "cli/commands.h"
#include "cli/json.h"
#include "cli/words.h"

#include <QJsonArray>

#include "exchange/labelfile.h"
#include "exchange/labelprinter.h"
#include "shop/containerlabel.h"

namespace gw {

namespace {

struct LabelOptions {
    std::vector<std::string> containers;
    bool shelf = false;
    std::string pdf, printer, size = "50x25mm", sheet;
    int dpi = 203, columns = 3, rows = 8, firstFree = 1;
};

Result<LabelPrint> printOf(const LabelOptions& options)
{
    LabelPrint print;
    auto size = labelSizeOf(options.size);
    if (!size)
        return tl::unexpected(size.error());
    print.paper = { size->width(), size->height(), options.dpi };
    if (options.sheet.empty())
        return print;
    Result<QSizeF> page = QSizeF(210, 297);
    if (options.sheet == "Letter" || options.sheet == "letter")
        page = QSizeF(215.9, 279.4);
    else if (options.sheet != "A4" && options.sheet != "a4")
        page = labelSizeOf(options.sheet);
    if (!page)
        return tl::unexpected(page.error());
    auto sheet = sheetOf(print.paper, page->width(), page->height(), options.columns, options.rows);
    if (!sheet)
        return tl::unexpected(sheet.error());
    sheet->firstFree = options.firstFree - 1;
    print.sheet = *sheet;
    return print;
}

Result<Answer> writeLabels(CommandContext& context, const LabelOptions& options)
{
    auto print = printOf(options);
    if (!print)
        return tl::unexpected(print.error());
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        std::vector<std::string> codes = options.containers;
        if (options.shelf) {
            auto all = shelfLabelCodes(shop, asOf);
            if (!all)
                return tl::unexpected(all.error());
            codes.insert(codes.end(), all->begin(), all->end());
        }
        auto labels = containerLabels(shop, codes, asOf);
        if (!labels)
            return tl::unexpected(labels.error());
        const std::string& where = options.pdf.empty() ? options.printer : options.pdf;
        auto printed = options.pdf.empty() ? printLabels(*labels, *print, q(options.printer))
                                           : writeLabelsPdf(*labels, *print, q(options.pdf));
        if (!printed)
            return tl::unexpected(printed.error());
        Answer answer;
        answer.json[u"labels"] = static_cast<qint64>(labels->size());
        answer.json[u"pages"] = printed->pages;
        answer.json[options.pdf.empty() ? u"printer" : u"file"] = jsonText(where);
        QJsonArray leftOut;
        for (const std::string& word : printed->leftOut)
            leftOut.append(jsonText(word));
        answer.json[u"left_out"] = leftOut;
        answer.plain = QStringLiteral("%1 labels on %2 pages: %3\n")
                           .arg(labels->size())
                           .arg(printed->pages)
                           .arg(q(where));
        if (!printed->leftOut.empty()) {
            answer.plain += QStringLiteral("On some there was no room for:");
            for (const std::string& word : printed->leftOut)
                answer.plain += u' ' + q(word) + (&word == &printed->leftOut.back() ? u'.' : u',');
            answer.plain += QStringLiteral(" A larger label has it.\n");
        }
        return answer;
    });
}

} // namespace

void addLabelCommand(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<LabelOptions>();
    auto* command = program.add_subcommand("label", "Our labels for containers, as a PDF or on a printer");
    command->add_option("ID", options->containers, "The containers, by their codes");
    command->add_flag("--shelf", options->shelf, "All that stands on the shelf");
    auto* out = command->add_option_group("where to");
    out->add_option("--pdf", options->pdf, "The file to write");
    out->add_option("--printer", options->printer, "A printer of this machine, by its name");
    out->require_option(1);
    command->add_option("--size", options->size, "Width by height: 50x25mm, 2x1in");
    command->add_option("--dpi", options->dpi, "Dots per inch of the printer: 203, 300");
    command->add_option("--sheet", options->sheet, "Several on a sheet: A4, Letter or a size");
    command->add_option("--columns", options->columns, "Labels across the sheet");
    command->add_option("--rows", options->rows, "Labels down the sheet");
    command->add_option("--first", options->firstFree, "The first label still on a begun sheet, from 1");
    command->callback([&context, &pending, options] {
        pending = [&context, options] { return writeLabels(context, *options); };
    });
}

} // namespace gw
