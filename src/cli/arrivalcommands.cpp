#include "cli/commands.h"
#include "cli/json.h"
#include "cli/quietlibraries.h"

#include <QJsonArray>

#include "scan/picturefile.h"
#include "shop/arrival.h"
#include "shop/arrivallot.h"
#include "shop/setup.h"

namespace gw {

namespace {

struct ArriveOptions {
    std::string code, picture, material, cls, amount, place, made, labelDate, lot, lotDate, price;
    bool useBy = false, found = false;
    std::optional<int> count;
};

Result<std::vector<Symbol>> readQuietly(const std::string& file)
{
    const QuietLibraries quiet;
    return readPicture(QString::fromStdString(file));
}

/// The code of an arrival: typed, or the first one in the picture that names a product.
Result<std::optional<Code>> codeOf(const ArriveOptions& options, Date today)
{
    if (!options.code.empty())
        return std::optional<Code>(readCode(options.code, {}, today));
    if (options.picture.empty())
        return std::optional<Code> {};
    auto symbols = readQuietly(options.picture);
    if (!symbols)
        return tl::unexpected(symbols.error());
    std::optional<Code> first;
    for (const Symbol& symbol : *symbols) {
        Code code = readCode(symbol.text, symbol.symbology, today);
        if (!code.error && code.gtin)
            return std::optional<Code>(std::move(code));
        if (!first)
            first = std::move(code);
    }
    return first;
}

/// What was typed beside the code goes over what the code and the shop say.
Result<void> typedOver(const Shop& shop, const ArriveOptions& options, ArrivalDraft& draft)
{
    const auto date = [](const std::string& text, std::optional<Date>& into) -> Result<void> {
        if (text.empty())
            return {};
        auto read = parseDate(text);
        if (!read)
            return tl::unexpected(read.error());
        into = *read;
        return {};
    };
    if (!options.material.empty()) {
        auto materials = shop.store().materials();
        if (!materials)
            return tl::unexpected(materials.error());
        draft.newName = options.material;
        for (const MaterialRecord& material : *materials) {
            if (QString::fromStdString(material.name)
                    .compare(QString::fromStdString(options.material), Qt::CaseInsensitive)
                == 0)
                draft.material = material.id;
        }
    }
    if (!options.cls.empty())
        draft.newClass = ClassId { options.cls };
    if (!options.amount.empty()) {
        auto amount = parseAmount(options.amount);
        if (!amount)
            return tl::unexpected(amount.error());
        draft.amount = *amount;
    }
    if (auto read = date(options.made, draft.made); !read)
        return read;
    if (auto read = date(options.labelDate, draft.printed); !read)
        return read;
    if (!options.labelDate.empty())
        draft.printedIsUseBy = options.useBy;
    if (!options.place.empty())
        draft.place = options.place;
    if (!options.lot.empty())
        draft.lot = options.lot;
    if (!options.price.empty()) {
        auto price = parsePrice(options.price);
        if (!price)
            return tl::unexpected(price.error());
        draft.price = *price;
    }
    if (options.count)
        draft.count = options.count.value();
    draft.foundUndated = options.found;
    return {};
}

QJsonArray jsonLotDates(const std::vector<LotDate>& dates)
{
    QJsonArray json;
    for (const LotDate& date : dates)
        json.append(QJsonObject { { QStringLiteral("date"), jsonDate(date.days.low) },
            { QStringLiteral("to"), jsonDate(date.days.high) },
            { QStringLiteral("text"), jsonText(date.words) }, { QStringLiteral("read"), jsonText(date.read) },
            { QStringLiteral("read_as"), jsonText(date.manner) },
            { QStringLiteral("as_last_time"), date.asLastTime } });
    return json;
}

QString listedLotDates(const std::vector<LotDate>& dates)
{
    QString lines;
    for (std::size_t i = 0; i < dates.size(); ++i)
        lines += QStringLiteral("  %1  %2%3\n")
                     .arg(i + 1)
                     .arg(QString::fromStdString(dates[i].words),
                         dates[i].asLastTime ? QStringLiteral(" (read as last time)") : QString());
    return lines;
}

/// Takes the date that was picked out of the lot code, or the one read as last time. Answers those there
/// were.
Result<std::vector<LotDate>> readLotCode(
    const Shop& shop, const ArriveOptions& options, ArrivalDraft& draft, Moment now)
{
    auto context = lotDateContext(shop, draft.material, draft.newClass, now);
    if (!context)
        return tl::unexpected(context.error());
    // The lot may have been typed over what the code said.
    if (!draft.lotReadAs.empty() && options.made.empty()) {
        draft.made.reset();
        draft.lotReadAs.clear();
    }
    if (!options.made.empty())
        draft.lotReadAs.clear();
    auto dates = lotDatesOf(draft, *context);
    if (options.lotDate.empty()) {
        if (!draft.foundUndated)
            readLotAsLastTime(draft, dates);
        return dates;
    }
    if (options.lotDate == "none")
        return dates;
    const std::size_t picked
        = options.lotDate == "first" ? 1 : QString::fromStdString(options.lotDate).toUInt();
    if (picked < 1 || picked > dates.size()) {
        return fail(ErrorCode::BadInput,
            dates.empty() ? "No date can be read from that lot code; give --made, or leave --lot-date out."
                          : "The lot code offers " + std::to_string(dates.size())
                    + " dates; pick one of them by its number, or \"first\" or \"none\".");
    }
    takeLotDate(draft, dates[picked - 1]);
    return dates;
}

QString askText(const std::vector<std::string>& asks)
{
    QStringList words;
    for (const std::string& ask : asks)
        words.append(QString::fromStdString(ask).replace(u'_', u' '));
    return words.join(QStringLiteral(", "));
}

Result<Answer> arrive(CommandContext& context, const ArriveOptions& options)
{
    return withShop(context, [&](Shop& shop, Moment asOf) -> Result<Answer> {
        auto code = codeOf(options, dateOf(asOf));
        if (!code)
            return tl::unexpected(code.error());
        ArrivalDraft draft;
        if (*code) {
            auto proposal = proposeArrival(shop, **code, asOf);
            if (!proposal)
                return tl::unexpected(proposal.error());
            if ((*code)->error || proposal->kind == ArrivalProposal::Kind::OurContainer)
                return fail(ErrorCode::BadInput, proposal->say);
            draft = proposal->draft;
        }
        if (auto typed = typedOver(shop, options, draft); !typed)
            return tl::unexpected(typed.error());

        auto lotDates = readLotCode(shop, options, draft, asOf);
        if (!lotDates)
            return tl::unexpected(lotDates.error());

        Answer answer;
        auto asks = missingFrom(shop, draft);
        if (!draft.made && !lotDates->empty() && options.lotDate.empty())
            asks.emplace_back("lot_date");
        QJsonArray asksJson;
        for (const std::string& ask : asks)
            asksJson.append(jsonText(ask));
        answer.json[u"read"] = QJsonObject {
            { QStringLiteral("gtin"), draft.gtin ? jsonText(draft.gtin->digits14) : QJsonValue() },
            { QStringLiteral("lot"), jsonTextOrNull(draft.lot) },
            { QStringLiteral("made"), jsonDate(draft.made) },
            { QStringLiteral("label_date"), jsonDate(draft.printed) },
            { QStringLiteral("amount"), draft.amount ? QJsonValue(jsonAmount(*draft.amount)) : QJsonValue() }
        };
        answer.json[u"asks"] = asksJson;
        answer.json[u"lot_dates"] = jsonLotDates(*lotDates);

        // A place and a label date may stay unknown; what it is and how much may not.
        const bool lacking = std::any_of(asks.begin(), asks.end(),
            [](const std::string& ask) { return ask != "place" && !ask.ends_with("_date"); });
        QJsonArray containers;
        if (lacking) {
            answer.json[u"containers"] = containers;
            answer.json[u"material"] = QJsonValue();
            answer.plain = QStringLiteral("Not booked in yet. Still to say: %1.\n").arg(askText(asks))
                + listedLotDates(*lotDates);
            return answer;
        }
        auto done = bookIn(shop, draft, { asOf, context.now });
        if (!done)
            return tl::unexpected(done.error());
        answer.plain = QString::fromStdString(done->said) + u'\n';
        for (const ContainerId& id : done->containers) {
            auto page = containerPage(shop, id.text, context.now);
            if (!page)
                return tl::unexpected(page.error());
            containers.append(jsonText(page->item.label));
            answer.json[u"material"] = jsonText(page->item.materialName);
            answer.plain += QStringLiteral("  %1\n").arg(QString::fromStdString(page->item.label));
        }
        if (draft.made && !draft.lotReadAs.empty())
            answer.plain += QStringLiteral("Made %1, read from the lot code as %2.\n")
                                .arg(QString::fromStdString(spokenDate(*draft.made)),
                                    QString::fromStdString(lotDateManner(draft.lotReadAs)));
        if (!asks.empty())
            answer.plain += QStringLiteral("Not known: %1.\n").arg(askText(asks));
        if (!draft.made && options.lotDate.empty() && !lotDates->empty())
            answer.plain
                += QStringLiteral("The lot code may say when it was made:\n") + listedLotDates(*lotDates);
        answer.json[u"containers"] = containers;
        answer.json[u"entry"] = jsonText(done->entry.text);
        return answer;
    });
}

Result<Answer> readPictures(const std::vector<std::string>& files)
{
    Answer answer;
    QJsonArray filesJson;
    bool any = false;
    for (const std::string& file : files) {
        QJsonArray symbolsJson;
        auto symbols = readQuietly(file);
        if (symbols) {
            any = true;
            for (const Symbol& symbol : *symbols) {
                symbolsJson.append(QJsonObject { { QStringLiteral("text"), jsonText(symbol.text) },
                    { QStringLiteral("format"), jsonText(symbol.format) },
                    { QStringLiteral("symbology"), jsonText(symbol.symbology) },
                    { QStringLiteral("engine"), jsonText(symbol.engine) } });
                answer.plain += QStringLiteral("%1: %2 %3\n")
                                    .arg(QString::fromStdString(file), QString::fromStdString(symbol.format),
                                        QString::fromStdString(symbol.text));
            }
        } else if (answer.complaint.empty()) {
            answer.complaint = symbols.error().sentence;
        }
        filesJson.append(QJsonObject { { QStringLiteral("file"), jsonText(file) },
            { QStringLiteral("symbols"), symbolsJson },
            { QStringLiteral("error"), symbols ? QJsonValue() : jsonText(symbols.error().sentence) } });
    }
    // Among many pictures one that shows nothing is an answer like the others.
    if (any)
        answer.complaint.clear();
    answer.json[u"files"] = filesJson;
    return answer;
}

Result<Answer> explainCode(const std::string& text, Date today)
{
    const Code code = readCode(text, {}, today);
    Answer answer;
    answer.json = jsonCode(code);
    LotDateContext context;
    context.today = today;
    context.notAfter = code.useBy ? code.useBy : code.bestBefore;
    const auto dates = code.made ? std::vector<LotDate> {} : lotDates(code.lot, context);
    answer.json[u"lot_dates"] = jsonLotDates(dates);
    if (code.error) {
        answer.complaint = code.error->sentence;
        return answer;
    }
    for (const Element& element : code.elements)
        answer.plain += QStringLiteral("(%1) %2\n")
                            .arg(QString::fromStdString(element.ai), QString::fromStdString(element.value));
    if (code.elements.empty())
        answer.plain = answer.json[u"kind"].toString() + QStringLiteral(": ")
            + QString::fromStdString(code.text) + u'\n';
    for (const std::string& warning : code.warnings)
        answer.plain += QString::fromStdString(warning) + u'\n';
    if (!dates.empty())
        answer.plain += QStringLiteral("The lot code may say when it was made:\n") + listedLotDates(dates);
    return answer;
}

} // namespace

void addArrivalCommands(CLI::App& program, CommandContext& context, PendingCommand& pending)
{
    auto options = std::make_shared<ArriveOptions>();
    auto* arriveCommand = program.add_subcommand("arrive", "Books in what has come");
    auto* codeOption
        = arriveCommand->add_option("--code", options->code, "The code on the label, scanned or typed");
    arriveCommand->add_option("--picture", options->picture, "A picture of the label")->excludes(codeOption);
    arriveCommand->add_option(
        "--material", options->material, "What it is; a new name makes a new material of its class");
    arriveCommand->add_option("--class", options->cls, "The class of a new material (see: classes)");
    arriveCommand->add_option("--amount", options->amount, "In one container: 500g, 8 fl oz, 2 each");
    arriveCommand->add_option("--count", options->count, "How many of the same");
    arriveCommand->add_option("--place", options->place, "Where it is put; a new name makes a new place");
    arriveCommand->add_option("--made", options->made, "Made or packed on, ISO 8601");
    arriveCommand->add_option("--label-date", options->labelDate, "The date printed on the label, ISO 8601");
    arriveCommand->add_flag(
        "--use-by", options->useBy, "The label date is a use-by date, not a best-before date");
    arriveCommand->add_option("--lot", options->lot, "The maker's batch number");
    arriveCommand->add_option("--lot-date", options->lotDate,
        "Which of the dates read from the lot code is the made date: first, its number, or none");
    arriveCommand->add_option("--price", options->price, "Of one, with its currency: \"12.50 EUR\"");
    arriveCommand->add_flag("--found", options->found, "Met at a stock-taking: nobody knows how old it is");
    arriveCommand->callback([&context, &pending, options] {
        pending = [&context, options] { return arrive(context, *options); };
    });

    auto files = std::make_shared<std::vector<std::string>>();
    auto* readCommand = program.add_subcommand("read", "Reads the bar codes and square codes in pictures");
    readCommand->add_option("FILE", *files, "Picture files")->required();
    readCommand->callback([&pending, files] { pending = [files] { return readPictures(*files); }; });

    auto text = std::make_shared<std::string>();
    auto* codeCommand = program.add_subcommand("code", "Says what a scanned or typed code means");
    codeCommand->add_option("TEXT", *text, "The text; <GS> may stand for the group separator")->required();
    codeCommand->callback([&context, &pending, text] {
        pending = [&context, text]() -> Result<Answer> {
            auto asOf = context.asOf();
            if (!asOf)
                return tl::unexpected(asOf.error());
            return explainCode(*text, dateOf(*asOf));
        };
    });
}

} // namespace gw
