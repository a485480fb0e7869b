// How many of many spoiled pictures each engine reads by itself, how many our reader over all of them, how
// many wrongly, and what it takes. Arguments: the set (another one has other pictures), how many pictures.
// Prints milliseconds of processor time a picture.
#include <array>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <map>
#include <memory>
#include <string>
#include <vector>

#include <QGuiApplication>

#include "scan/engine.h"
#include "scan/finding.h"
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

struct Score {
    int right = 0;
    int wrong = 0;
    double spent = 0;
};

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

void add(Score& score, Outcome outcome, double spent)
{
    score.right += outcome.right ? 1 : 0;
    score.wrong += outcome.wrong ? 1 : 0;
    score.spent += spent;
}

} // namespace

int main(int argc, char** argv)
{
    qputenv("QT_QPA_PLATFORM", "offscreen");
    const QGuiApplication app(argc, argv);
    const auto set = argc > 1 ? static_cast<unsigned>(std::atoi(argv[1])) : 1U;
    const auto count = argc > 2 ? static_cast<unsigned>(std::atoi(argv[2])) : 1056U;
    const bool tell = argc > 3;

    std::vector<std::unique_ptr<SymbolReader>> alone;
    std::vector<std::string> names;
    double engineTime = 0;
    std::vector<std::unique_ptr<Engine>> all;
    for (const auto make : { +[] { return makeZxingEngine(Effort::Picture); },
             +[] { return makeQzxingEngine(); }, +[] { return makeZbarEngine(Effort::Picture); } }) {
        if (auto engine = make()) {
            names.push_back(engine->name());
            std::vector<std::unique_ptr<Engine>> one;
            one.push_back(std::move(engine));
            alone.push_back(makeReader(Effort::Picture, std::move(one)));
            all.push_back(std::make_unique<TimedEngine>(make(), engineTime));
        }
    }
    const auto ours = makeReader(Effort::Picture, std::move(all));

    std::vector<Score> engines(alone.size());
    Score union_;
    Score together;
    std::map<std::string, std::array<int, 4>> byTrouble;
    std::map<std::string, std::array<int, 4>> byKind;
    for (unsigned i = 0; i < count; ++i) {
        const DistortedSymbol sample = distortedSymbol(set, i);
        const LuminanceView view { sample.picture.constBits(), sample.picture.width(),
            sample.picture.height(), sample.picture.bytesPerLine() };
        bool any = false;
        for (std::size_t e = 0; e < alone.size(); ++e) {
            const double start = now();
            const auto found = alone[e]->read(view);
            const Outcome outcome = judged(found, sample.text);
            add(engines[e], outcome, now() - start);
            any = any || outcome.right;
        }
        union_.right += any ? 1 : 0;
        const double start = now();
        const auto found = findSymbols(sample.picture, *ours);
        const double spent = now() - start;
        const Outcome outcome = judged(found, sample.text);
        add(together, outcome, spent);
        if (tell && (outcome.wrong || (any && !outcome.right)))
            for (const Symbol& symbol : found.empty() ? std::vector<Symbol> { {} } : found)
                std::printf("%u %s, %s: %s, read as %s %s by %s\n", i, sample.symbology, sample.trouble,
                    sample.text.c_str(), symbol.format.c_str(), symbol.text.c_str(), symbol.engine.c_str());
        for (auto* row : { &byTrouble[sample.trouble], &byKind[sample.symbology] }) {
            ++(*row)[0];
            (*row)[1] += any ? 1 : 0;
            (*row)[2] += outcome.right ? 1 : 0;
            (*row)[3] += outcome.wrong ? 1 : 0;
        }
    }

    const auto line = [count](const char* name, const Score& score) {
        std::printf(
            "%-22s %5d right %4d wrong %8.1f ms\n", name, score.right, score.wrong, score.spent / count);
    };
    std::printf("set %u, %u pictures\n", set, count);
    for (std::size_t e = 0; e < engines.size(); ++e)
        line(names[e].c_str(), engines[e]);
    line("any of them", union_);
    line("our reader", together);
    std::printf("our own share of the time: %.1f %% over that in the engines\n",
        100 * (together.spent - engineTime) / engineTime);
    for (const auto* table : { &byTrouble, &byKind })
        for (const auto& [name, row] : *table)
            std::printf("%-16s %4d pictures %4d by any engine %4d by us %3d wrong\n", name.c_str(), row[0],
                row[1], row[2], row[3]);
    return 0;
}
