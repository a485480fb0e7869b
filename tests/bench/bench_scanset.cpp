// How many of many spoiled pictures each engine reads by itself, how many our reader over all of them, how
// many wrongly, and what it takes. Arguments: the set (another one has other pictures), how many pictures,
// and "tell" to name those read wrongly or read by an engine and not by us. Or a folder of photographs with
// an expected.csv in it (columns file, text with <GS> for the group separator, perhaps format and trouble),
// and "tell". Prints milliseconds of processor time a picture.
#include <algorithm>
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include <QDir>
#include <QGuiApplication>

#include "scan/engine.h"
#include "scan/finding.h"
#include "scan/picturefile.h"
#include "support/csvrows.h"
#include "support/distortedsymbol.h"

using namespace gw;
using namespace gw::test;

namespace {

double now()
{
    timespec time {};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &time);
    return double(time.tv_sec) * 1e3 + double(time.tv_nsec) / 1e6;
}

/// Counts what is spent in an engine.
class TimedEngine final : public Engine {
public:
    TimedEngine(std::unique_ptr<Engine> engine, double& spent)
        : m_engine(std::move(engine))
        , m_spent(spent)
    {
    }
    std::string name() const override { return m_engine->name(); }
    std::vector<Symbol> ask(const LuminanceView& picture, Question question) override
    {
        const double start = now();
        auto symbols = m_engine->ask(picture, question);
        m_spent += now() - start;
        return symbols;
    }

private:
    std::unique_ptr<Engine> m_engine;
    double& m_spent;
};

struct Sample {
    QImage picture;
    std::string text;
    std::string kind;
    std::string trouble;
};

Sample drawn(unsigned set, unsigned number)
{
    const DistortedSymbol symbol = distortedSymbol(set, number);
    return { symbol.picture, symbol.text, symbol.symbology, symbol.trouble };
}

Sample photographed(const QDir& folder, const CsvRow& row)
{
    const auto picture = loadPicture(folder.filePath(row[QStringLiteral("file")]));
    if (!picture)
        qFatal("%s", picture.error().sentence.c_str());
    return { picture->convertToFormat(QImage::Format_Grayscale8),
        QString(row[QStringLiteral("text")])
            .replace(QStringLiteral("<GS>"), QString(QChar(29)))
            .toStdString(),
        row[QStringLiteral("format")].toStdString(), row[QStringLiteral("trouble")].toStdString() };
}

struct Outcome {
    bool right = false;
    bool wrong = false;
};

Outcome judged(const std::vector<Symbol>& found, const std::string& text)
{
    Outcome outcome;
    for (const Symbol& symbol : found)
        (symbol.text == text ? outcome.right : outcome.wrong) = true;
    return outcome;
}

struct Score {
    int right = 0;
    int wrong = 0;
    int missed = 0; ///< nothing was read
    std::vector<double> spent;

    void add(Outcome outcome, double milliseconds)
    {
        right += outcome.right ? 1 : 0;
        wrong += outcome.wrong ? 1 : 0;
        missed += outcome.right || outcome.wrong ? 0 : 1;
        spent.push_back(milliseconds);
    }
    double sum() const
    {
        double all = 0;
        for (const double one : spent)
            all += one;
        return all;
    }
    void print(const char* name)
    {
        std::sort(spent.begin(), spent.end());
        std::printf("%-22s %5d right %4d wrong %5d missed", name, right, wrong, missed);
        if (!spent.empty() && spent.back() > 0)
            std::printf(" %8.1f ms, half within %.1f, 95 %% within %.1f",
                sum() / static_cast<double>(spent.size()), spent[spent.size() / 2],
                spent[spent.size() * 95 / 100]);
        std::printf("\n");
    }
};

class Race {
public:
    explicit Race(bool tell)
        : m_tell(tell)
    {
        std::vector<std::unique_ptr<Engine>> all;
        for (const auto make : { +[] { return makeZxingEngine(Effort::Picture); },
                 +[] { return makeQzxingEngine(); }, +[] { return makeZbarEngine(Effort::Picture); } }) {
            auto engine = make();
            if (!engine)
                continue;
            std::vector<std::unique_ptr<Engine>> one;
            one.push_back(std::move(engine));
            m_alone.emplace_back(makeReader(Effort::Picture, std::move(one)), Score());
            all.push_back(std::make_unique<TimedEngine>(make(), m_engineTime));
        }
        m_ours = makeReader(Effort::Picture, std::move(all));
    }

    void run(unsigned number, const Sample& sample)
    {
        const LuminanceView view { sample.picture.constBits(), sample.picture.width(),
            sample.picture.height(), sample.picture.bytesPerLine() };
        Outcome any;
        for (auto& [reader, score] : m_alone) {
            const double start = now();
            const Outcome outcome = judged(reader->read(view), sample.text);
            score.add(outcome, now() - start);
            any.right = any.right || outcome.right;
            any.wrong = any.wrong || outcome.wrong;
        }
        m_any.add(any, 0);
        const double start = now();
        const auto found = findSymbols(sample.picture, *m_ours);
        const Outcome outcome = judged(found, sample.text);
        m_together.add(outcome, now() - start);
        if (m_tell && (outcome.wrong || (any.right && !outcome.right)))
            for (const Symbol& symbol : found.empty() ? std::vector<Symbol> { {} } : found)
                std::printf("%u %s, %s: %s, read as %s %s by %s\n", number, sample.kind.c_str(),
                    sample.trouble.c_str(), sample.text.c_str(), symbol.format.c_str(), symbol.text.c_str(),
                    symbol.engine.c_str());
        for (auto* row : { &m_byTrouble[sample.trouble], &m_byKind[sample.kind] }) {
            ++(*row)[0];
            (*row)[1] += any.right ? 1 : 0;
            (*row)[2] += outcome.right ? 1 : 0;
            (*row)[3] += outcome.wrong ? 1 : 0;
        }
    }

    void print()
    {
        for (auto& [reader, score] : m_alone)
            score.print(reader->name().c_str());
        m_any.print("any of them");
        m_together.print("our reader");
        std::printf("our own share of the time: %.1f %% over that in the engines\n",
            100 * (m_together.sum() - m_engineTime) / m_engineTime);
        for (const auto* table : { &m_byTrouble, &m_byKind })
            for (const auto& [name, row] : *table)
                std::printf("%-16s %4d pictures %4d by any engine %4d by us %3d wrong\n", name.c_str(),
                    row[0], row[1], row[2], row[3]);
    }

private:
    bool m_tell;
    double m_engineTime = 0; ///< in the engines while our reader reads
    std::vector<std::pair<std::unique_ptr<SymbolReader>, Score>> m_alone;
    std::unique_ptr<SymbolReader> m_ours;
    Score m_any;
    Score m_together;
    std::map<std::string, std::array<int, 4>> m_byTrouble;
    std::map<std::string, std::array<int, 4>> m_byKind;
};

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication app(argc, argv);
    const QString first = argc > 1 ? QString::fromLocal8Bit(argv[1]) : QString();
    Race race(argc > 1 && std::string_view(argv[argc - 1]) == "tell");
    if (QDir folder(first); !first.isEmpty() && folder.exists()) {
        const auto rows = readCsvRows(folder.filePath(QStringLiteral("expected.csv")));
        std::printf("%s, %d pictures\n", argv[1], static_cast<int>(rows.size()));
        unsigned number = 0;
        for (const CsvRow& row : rows)
            race.run(number++, photographed(folder, row));
    } else {
        const auto set = argc > 1 ? static_cast<unsigned>(std::atoi(argv[1])) : 1U;
        const auto count = argc > 2 ? static_cast<unsigned>(std::atoi(argv[2])) : 1056U;
        std::printf("set %u, %u pictures\n", set, count);
        for (unsigned i = 0; i < count; ++i)
            race.run(i, drawn(set, i));
    }
    race.print();
    return 0;
}
