#pragma once

#include <memory>
#include <string>
#include <vector>

#include "scan/symbolreader.h"

namespace gw {

/// What is asked of the engine at a time. Bar codes are asked for one by one: 1.4 compares those it finds and
/// fails an assertion when two say the same, as on a shelf of equal bottles. The weak ones go apart, lest
/// they stand before a better one.
enum class Question { Squares, DataMatrixAlone, Bars, WeakBars, DataBars };

/// ZXing-C++, of any version from 1.4 on. All that knows of it is in zxingengine.cpp.
class ZxingEngine {
public:
    explicit ZxingEngine(Effort effort);
    ~ZxingEngine();

    static std::string name();
    /// What a picture answers to one question; nothing when it cannot be answered, whatever the reason.
    std::vector<Symbol> ask(const LuminanceView& picture, Question question) const;

private:
    struct Settings;
    std::unique_ptr<Settings> m_settings;
};

} // namespace gw
