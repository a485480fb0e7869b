#pragma once

#include <optional>
#include <string>
#include <vector>

#include "ageing/verdict.h"
#include "measure/id.h"
#include "measure/moment.h"

/// What is kept of a glue-up, as plain values. Written once; only an undoing can follow.
namespace gw {

using GlueUpId = Id<struct GlueUpTag>;

/// One thing said or measured: a number in the unit of its kind (shop/glueuprecord.h lists them), or a word.
struct GlueUpFact {
    std::string fact;
    std::optional<double> value;
    std::string text; ///< empty where there is a number
};

/// One gate of the check as it stood.
struct GlueUpGateRecord {
    std::string gate; ///< id, as in gluing/glueup.h
    std::string name;
    std::string result; ///< "pass", "warn", "stop", "unknown"
    std::string text;
};

/// A container that was used, as it stood.
struct GlueUpContainerRecord {
    ContainerId container;
    Verdict verdict = Verdict::NotKnown;
    std::string reason; ///< the first of its reasons, as a sentence
    std::optional<int> frostEvents; ///< none: not known
};

struct GlueUpRecord {
    GlueUpId id;
    ActId act; ///< the entries of what it used are of the same act
    JobId job;
    Moment at, recorded;
    std::string piece; ///< the client's piece
    std::string jobName;
    int pieces = 1; ///< how many of the job type
    FamilyId family; ///< empty for a finish
    std::string glue; ///< the family's name, or the class of a finish
    std::string answer; ///< "go", "fix_first", "stop", "not_known"
    std::string firstFix; ///< what there was to fix, or to find out; empty for a go
    std::string comesApart; ///< empty: not known
    std::string note;
    std::string device;
    std::vector<GlueUpFact> facts;
    std::vector<GlueUpGateRecord> gates; ///< in the order of the check
    std::vector<GlueUpContainerRecord> containers;
    int photos = 0; ///< how many there are; not written, see addGlueUp()
    std::optional<Moment> undone; ///< not written, see undoGlueUp()

    const GlueUpFact* fact(const std::string& key) const;
};

} // namespace gw
