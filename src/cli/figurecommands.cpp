#include <algorithm>
#include <cmath>

#include <QJsonArray>
#include <QStringList>

#include "cli/commands.h"
#include "cli/json.h"
#include "demand/compoundpoisson.h"
#include "demand/gammapoisson.h"
#include "demand/intermittent.h"
#include "demand/newsvendor.h"
#include "measure/moistair.h"

namespace gw {

namespace {

struct FigureOptions {
    std::string temperature, usage, method = "sba", use, service = "80 90 95 99", prior, seen;
    double humidity = 0, alpha = 0.1, ahead = 1;
    std::optional<double> jobsPerPeriod;
    double mean = 0, spread = 0, shortage = 0, excess = 0;
};

/// "0 0 3 1.5": numbers with blanks between. Errors: BadInput naming the one that is none.
Result<std::vector<double>> numbers(const std::string& text)
{
    std::vector<double> values;
    for (const QString& word : QString::fromStdString(text).simplified().split(u' ', Qt::SkipEmptyParts)) {
        bool ok = false;
        values.push_back(word.toDouble(&ok));
        if (!ok)
            return fail(ErrorCode::BadInput,
                "\"" + word.toStdString() + "\" is no number; give numbers with blanks between.");
    }
    return values;
}

/// "1:0.5 2:0.3": amounts with their chances.
Result<std::vector<AmountChance>> chances(const std::string& text)
{
    std::vector<AmountChance> severity;
    for (const QString& word : QString::fromStdString(text).simplified().split(u' ', Qt::SkipEmptyParts)) {
        const QStringList pair = word.split(u':');
        bool amountOk = false;
        bool chanceOk = false;
        severity.push_back({ pair.value(0).toDouble(&amountOk), pair.value(1).toDouble(&chanceOk) });
        if (pair.size() != 2 || !amountOk || !chanceOk)
            return fail(ErrorCode::BadInput,
                "Give each amount with its chance, such as \"1:0.5 2:0.5\", not \"" + word.toStdString()
                    + "\".");
    }
    return severity;
}

Result<Answer> air(const FigureOptions& options)
{
    auto temperature = parseTemperature(options.temperature);
    if (!temperature)
        return tl::unexpected(temperature.error());
    const RelativeHumidity humidity { options.humidity };
    auto moisture = equilibriumMoisture(*temperature, humidity);
    if (!moisture)
        return tl::unexpected(moisture.error());
    // Bone-dry air has no dew point: not known, though the wood's answer stands.
    const auto dew = dewPoint(*temperature, humidity);
    Answer answer;
    answer.json[u"emc_percent"] = moisture->percent;
    answer.json[u"dew_point_c"] = dew ? QJsonValue(dew->value) : QJsonValue();
    answer.json[u"in_handbook_table"] = inHandbookTable(*temperature, humidity);
    answer.plain
        = QStringLiteral("Wood left in this air settles at about %1 %. ").arg(moisture->percent, 0, 'f', 1);
    answer.plain += dew ? QStringLiteral("Anything colder than %1 °C sweats.\n").arg(dew->value, 0, 'f', 1)
                        : QStringLiteral("The dew point is not known.\n");
    return answer;
}

QJsonObject quantile(double percent, double amount)
{
    return { { QStringLiteral("service"), percent }, { QStringLiteral("level"), amount } };
}

Result<Answer> forecastUsage(const FigureOptions& options)
{
    auto usage = numbers(options.usage);
    if (!usage)
        return tl::unexpected(usage.error());
    auto method = intermittentMethod(options.method);
    if (!method)
        return tl::unexpected(method.error());
    auto perPeriod = intermittentForecast(*usage, *method, options.alpha);
    if (!perPeriod)
        return tl::unexpected(perPeriod.error());
    return Answer { QJsonObject { { QStringLiteral("per_period"), *perPeriod } },
        QStringLiteral("%1 a period\n").arg(*perPeriod), {} };
}

Result<Answer> forecastJobs(const FigureOptions& options)
{
    auto severity = chances(options.use);
    if (!severity)
        return tl::unexpected(severity.error());
    auto service = numbers(options.service);
    if (!service)
        return tl::unexpected(service.error());
    // Whole amounts stand on a lattice of ones, so that the n-th probability is that of n.
    const bool whole = std::all_of(severity->begin(), severity->end(),
        [](const AmountChance& chance) { return chance.amount == std::floor(chance.amount); });
    auto demand = whole ? CompoundPoisson::onLattice(*options.jobsPerPeriod, *severity, 1.0)
                        : CompoundPoisson::of(*options.jobsPerPeriod, *severity);
    if (!demand)
        return tl::unexpected(demand.error());

    Answer answer;
    QJsonArray quantiles;
    for (const double percent : *service) {
        auto level = demand->quantile(percent);
        if (!level)
            return tl::unexpected(level.error());
        quantiles.append(quantile(percent, *level));
        answer.plain += QStringLiteral("%1 % of the time %2 is enough\n").arg(percent).arg(*level);
    }
    QJsonArray pmf;
    for (const double probability : demand->probabilities())
        pmf.append(probability);
    answer.json = QJsonObject { { QStringLiteral("mean"), demand->mean() },
        { QStringLiteral("variance"), demand->variance() }, { QStringLiteral("step"), demand->step() },
        { QStringLiteral("quantiles"), quantiles }, { QStringLiteral("pmf"), pmf } };
    return answer;
}

Result<Answer> forecastRate(const FigureOptions& options)
{
    auto prior = numbers(options.prior);
    if (!prior)
        return tl::unexpected(prior.error());
    if (prior->size() != 2)
        return fail(ErrorCode::BadInput, "Give the prior as its shape and its rate, such as \"10 2\".");
    auto seen = numbers(options.seen);
    if (!seen)
        return tl::unexpected(seen.error());
    auto service = numbers(options.service);
    if (!service)
        return tl::unexpected(service.error());
    auto belief = posteriorRate({ prior->at(0), prior->at(1) }, *seen);
    if (!belief)
        return tl::unexpected(belief.error());
    auto mean = meanAhead(*belief, options.ahead);
    if (!mean)
        return tl::unexpected(mean.error());

    Answer answer;
    QJsonArray quantiles;
    for (const double percent : *service) {
        auto level = quantileAhead(*belief, options.ahead, percent);
        if (!level)
            return tl::unexpected(level.error());
        quantiles.append(quantile(percent, static_cast<double>(*level)));
        answer.plain += QStringLiteral("%1 % of the time %2 is enough\n").arg(percent).arg(*level);
    }
    answer.json = QJsonObject { { QStringLiteral("mean"), *mean }, { QStringLiteral("quantiles"), quantiles },
        { QStringLiteral("shape"), belief->shape }, { QStringLiteral("rate"), belief->rate } };
    return answer;
}

Result<Answer> forecast(const FigureOptions& options)
{
    if (!options.usage.empty())
        return forecastUsage(options);
    if (options.jobsPerPeriod)
        return forecastJobs(options);
    if (!options.prior.empty())
        return forecastRate(options);
    return fail(
        ErrorCode::BadInput, "Give --usage, or --jobs-per-period with --use, or --prior with --seen.");
}

Result<Answer> stocking(const FigureOptions& options)
{
    auto level = newsvendorLevel({ options.mean, options.spread }, options.shortage, options.excess);
    if (!level)
        return tl::unexpected(level.error());
    return Answer { QJsonObject { { QStringLiteral("level"), *level } },
        QStringLiteral("Stock %1\n").arg(*level), {} };
}

} // namespace

void addFigureCommands(CLI::App& program, CommandContext&, PendingCommand& pending)
{
    auto options = std::make_shared<FigureOptions>();

    auto* airCommand
        = program.add_subcommand("air", "What moisture wood settles at in this air, and what sweats in it");
    airCommand->add_option("--temp", options->temperature, "The air's temperature: 18C, 65F")->required();
    airCommand->add_option("--rh", options->humidity, "Its relative humidity, percent")->required();
    airCommand->callback([&pending, options] { pending = [options] { return air(*options); }; });

    auto* forecastCommand = program.add_subcommand("forecast", "How much will be used, from figures");
    forecastCommand->add_option("--usage", options->usage, "Use per period, oldest first: \"0 0 3 0 1\"");
    forecastCommand->add_option("--method", options->method, "croston, sba or sbj");
    forecastCommand->add_option("--alpha", options->alpha, "Smoothing, 0 to 1");
    forecastCommand->add_option("--jobs-per-period", options->jobsPerPeriod, "Mean number of jobs");
    forecastCommand->add_option(
        "--use", options->use, "Amounts a job takes, with chances: \"1:0.5 2:0.3 3:0.2\"");
    forecastCommand->add_option("--service", options->service, "Percentages of the time: \"80 95 99\"");
    forecastCommand->add_option("--prior", options->prior, "Shape and rate of the believed rate: \"10 2\"");
    forecastCommand->add_option("--seen", options->seen, "Counts seen, one a period: \"6 2 2 1\"");
    forecastCommand->add_option("--ahead", options->ahead, "Periods ahead");
    forecastCommand->callback([&pending, options] { pending = [options] { return forecast(*options); }; });

    auto* stockingCommand
        = program.add_subcommand("stocking", "How much to keep when too little and too much both cost");
    stockingCommand->add_option("--mean", options->mean, "Expected use")->required();
    stockingCommand->add_option("--sd", options->spread, "Its standard deviation")->required();
    stockingCommand->add_option("--shortage", options->shortage, "Cost of each unit short")->required();
    stockingCommand->add_option("--excess", options->excess, "Cost of each unit over")->required();
    stockingCommand->callback([&pending, options] { pending = [options] { return stocking(*options); }; });
}

} // namespace gw
