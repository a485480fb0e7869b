#pragma once

#include <QTemporaryDir>

#include "app/appservices.h"

namespace gw::test {

/// The services of the window on a store of the test's own in a temporary folder, as main() makes them, at
/// noon UTC of 2 March 2026. GUI thread.
class AppBench {
public:
    enum class Stock { Places, Demo };

    /// Places: an empty store with "Bench" (18 to 22 C) and "Lean-to" (-8 to 34 C). Demo: the invented shop.
    explicit AppBench(Stock stock);

    static Moment noon();

    QTemporaryDir folder;
    Moment now = noon();
    Clock clock { [this] { return now; } };
    ShopThread shop { clock };
    Settings settings { folder.filePath(QStringLiteral("settings.ini")) };
    Scanner scanner;
    Navigation navigation;
    AppServices services { clock, shop, settings, scanner, navigation };

    std::string storeFile() const { return folder.filePath(QStringLiteral("shop.gluewright")).toStdString(); }

    /// Asks the shop and waits for its answer, which stops the test program when it is an error.
    template <class F> auto ask(F job)
    {
        auto answer = shop.run(std::move(job));
        answer.waitForFinished();
        auto result = answer.result();
        if (!result)
            qFatal("%s", result.error().sentence.c_str());
        if constexpr (!std::is_void_v<typename decltype(result)::value_type>)
            return std::move(*result);
    }
};

} // namespace gw::test
