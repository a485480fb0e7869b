#pragma once

#include <memory>
#include <string>
#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// What is asked of an engine at a time. The weak bar codes go apart, lest they stand before a better one.
enum class Question { Squares, DataMatrixAlone, Bars, WeakBars, DataBars };

/// A library that reads symbols, each known to one .cpp alone. One engine serves one thread at a time.
class Engine {
public:
    Engine() = default;
    Engine(const Engine&) = delete;
    Engine& operator=(const Engine&) = delete;
    virtual ~Engine() = default;

    virtual std::string name() const = 0; ///< the library and its version
    /// What a picture answers to one question; nothing when it cannot be answered, whatever the reason. Never
    /// throws. Outlines are in pixels of the view.
    virtual std::vector<Symbol> ask(const LuminanceView& picture, Question question) = 0;
};

/// ZXing-C++, which reads every symbology of Symbol::format.
std::unique_ptr<Engine> makeZxingEngine(Effort effort);
/// QZXing: EAN, UPC, ITF, Code 128, Data Matrix, QR Code, one symbol a question. Null where the program was
/// built without it.
std::unique_ptr<Engine> makeQzxingEngine();
/// ZBar: EAN, UPC, ITF and Code 128, also where the bars run into each other. Asked for Bars it answers with
/// the weak ones too.
std::unique_ptr<Engine> makeZbarEngine(Effort effort);

/// A reader over engines of one's own choice, the one that does most first. Null ones are left out.
std::unique_ptr<SymbolReader> makeReader(Effort effort, std::vector<std::unique_ptr<Engine>> engines);

} // namespace gw
