#pragma once

#include <QTest>

#include "store/records.h"

/// What a call must answer, told with its sentence when it does not.
#define GW_OK(call)                                                                                          \
    do {                                                                                                     \
        const auto& gwAnswer = (call);                                                                       \
        QVERIFY2(gwAnswer.has_value(), gwAnswer.has_value() ? "" : gwAnswer.error().sentence.c_str());       \
    } while (false)

/// A failure of one kind, in one whole sentence that says something.
#define GW_FAILS(call, expectedCode)                                                                         \
    do {                                                                                                     \
        const auto& gwAnswer = (call);                                                                       \
        QVERIFY2(!gwAnswer.has_value(), "it went through");                                                  \
        QVERIFY2(gwAnswer.error().code == (expectedCode), gwAnswer.error().sentence.c_str());                \
        QVERIFY2(gwAnswer.error().sentence.size() > 20 && gwAnswer.error().sentence.back() == '.',           \
            gwAnswer.error().sentence.c_str());                                                              \
    } while (false)

namespace gw::test {

inline bool sameEntry(const Entry& a, const Entry& b)
{
    return a.id == b.id && a.act == b.act && a.kind == b.kind && a.container == b.container && a.at == b.at
        && a.recorded == b.recorded && a.deltaMilli == b.deltaMilli && a.place == b.place && a.job == b.job
        && a.other == b.other && a.lotMaterial == b.lotMaterial && a.lot == b.lot && a.passed == b.passed
        && a.woodFailurePercent == b.woodFailurePercent && a.grainy == b.grainy && a.reverses == b.reverses
        && a.note == b.note && a.device == b.device;
}

} // namespace gw::test
