#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "codes/gtin.h"
#include "measure/amount.h"
#include "measure/moment.h"

namespace gw {

enum class CodeKind {
    Gs1, ///< an element string, bracketed or scanned
    Gtin, ///< a bare trade item number (EAN/UPC/ITF-14)
    OwnLabel, ///< the short code of one of our containers
    DigitalLink, ///< a GS1 Digital Link URI
    Plain, ///< any other text: shown, never opened, never run
};

/// One element: application identifier and value, as scanned.
struct Element {
    std::string ai;
    std::string value;
    friend bool operator==(const Element&, const Element&) = default;
};

/// What is wrong with a code. kind is a short stable word ("check digit", "date", "length", ...).
struct CodeError {
    std::string kind;
    std::string sentence;
};

/// What a scanned or typed text says. A text with an error still carries whatever was read before it,
/// for showing only: the elements. What they mean (item number, lot, dates, amounts) stays empty, so that
/// nothing can be booked in from it.
struct Code {
    CodeKind kind = CodeKind::Plain;
    std::string
        text; ///< exactly as scanned, less the symbology identifier; in element strings separators as byte 29
    std::vector<Element> elements;
    std::optional<Gtin>
        gtin; ///< AI 01; else 02, 03 or the item of 8006 and 8026; or the whole of a bare number
    std::string lot; ///< AI 10
    std::string serial; ///< AI 21
    std::optional<Date> made; ///< AI 11, else the day of 8008
    std::optional<Date> packed; ///< AI 13
    std::optional<Date> bestBefore; ///< AI 15
    std::optional<Date> useBy; ///< AI 17, else the day of 7003
    std::vector<Amount> amounts; ///< AIs 310n, 315n, 30 ... that a shop can use
    std::optional<int>
        itemsInside; ///< AI 37: how many of the item are in what carries the code; 1 to 99,999,999
    std::vector<std::string> warnings; ///< association rules and the like: shown, never refused
    std::optional<CodeError> error;
};

/// Reads a scanned or typed text. symbology is the ISO/IEC 15424 identifier ("]d2", "]C1", "]E0"...) when the
/// reader gave one, else empty; the text itself may also start with one. "<GS>" may stand for byte 29.
/// Two-digit years are placed in the century window around today (GS1 General Specifications 7.12: from 49
/// years back to 50 ahead). A text longer than 8192 bytes is an error and only its beginning is kept. Day 00:
/// for 15 and 17 the last day of the month; for 11 and 13 the first, the cautious reading for a life clock.
Code readCode(std::string_view text, std::string_view symbology, Date today);

} // namespace gw
