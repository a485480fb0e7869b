#pragma once

#include <memory>

#include "shop/acts.h"
#include "shop/arrival.h"
#include "shop/shelf.h"
#include "shop/work.h"
#include "support/storeplace.h"
#include "support/verdicts.h"

namespace gw::test {

/// A shop on an empty store with its reference data in and two places: "Bench" (18 to 22 C) and "Lean-to" (-8
/// to 34 C).
class Workbench {
public:
    explicit Workbench(bool postgres);

    StorePlace place;
    std::unique_ptr<Shop> shop;

    /// Opens the shop anew, as after the program was closed.
    void reopen();

    /// Noon of a day so many days after 1 March 2026.
    static Moment day(double days);
    static ActTime on(double days) { return { day(days), day(days) }; }

    /// Books one in; stops the test program when that fails. Answers its label code.
    std::string arrive(const char* name, const char* cls, const char* amount, double days = 0,
        const std::function<void(ArrivalDraft&)>& change = {});

    ContainerPage page(const std::string& container, double days = 400) const;
    double left(const std::string& container) const { return page(container).item.left.value(); }
    Verdict verdict(const std::string& container, double days) const
    {
        return page(container, days).item.judgement.verdict;
    }
    bool says(const std::string& container, double days, std::string_view reason) const;
};

inline Date dateIn2026(unsigned month, unsigned day)
{
    return Date { std::chrono::year { 2026 }, std::chrono::month { month }, std::chrono::day { day } };
}

} // namespace gw::test
