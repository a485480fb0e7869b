#pragma once

#include <optional>
#include <string>
#include <vector>

#include "codes/code.h"
#include "codes/lotdate.h"
#include "shop/acts.h"

namespace gw {

/// What is booked in. Give a material (known one) or a name and class (new one).
struct ArrivalDraft {
    std::optional<MaterialId> material;
    std::string newName;
    ClassId newClass;
    std::string newArticleCode; ///< the maker's own code for a new material; typed, it is known again
    std::vector<Figure> newLabelFigures; ///< what a new material's label says
    std::optional<MaterialId> newPartner; ///< what a new resin or hardener is mixed with
    std::optional<Gtin> gtin; ///< learned with the pack: the next bottle needs one tap
    std::optional<PackId> pack;
    std::optional<Amount> amount; ///< of one container; a known pack says it
    int count = 1; ///< 1 to 200 of the same; 0: a case, and nobody has said yet how many are in it
    /// It came as a case with a number of its own; gtin and amount are those of one inside.
    std::optional<Gtin> caseNumber;
    std::string place; ///< name; made when there is none of that name
    std::optional<Date> made;
    std::optional<Date> printed;
    bool printedIsUseBy = false;
    bool foundUndated = false; ///< met at a stock-taking, age not known
    /// Met at a stock-taking with so much of it left, above 0 to 1; less than 1 was opened some time before,
    /// so that its age is not known either.
    double leftShare = 1;
    std::string lot;
    /// LotDate::key when the made date was read from the lot code, for the next lot; empty otherwise.
    std::string lotReadAs;
    std::string serial;
    std::optional<Money> price;
    std::optional<LabelPhoto> photo; ///< of the label, kept with the material
};

/// What a scanned or typed code means here.
struct ArrivalProposal {
    enum class Kind {
        OurContainer, ///< one of our labels: open its page
        KnownProduct, ///< one confirmation books it in
        NewMaterial, ///< a trade item number nobody here has learned yet
        NothingToBookIn, ///< a plain text or faulty code: shown, with why
    };
    Kind kind = Kind::NothingToBookIn;
    Code code;
    ArrivalDraft draft; ///< as far as code and shop fill it
    std::string materialName;
    std::string containerLabel; ///< for OurContainer
    std::vector<std::string> asks; ///< what is still missing, in order: "material", "class", "amount",
                                   ///< "count", "place", "label_date"
    LotDateContext lotContext; ///< what the dates of its lot code are judged by
    std::vector<LotDate> lotDates; ///< the made dates its lot code could mean, most plausible first
    std::string say; ///< one sentence for the screen
};

/// What to do with a code. Never writes.
Result<ArrivalProposal> proposeArrival(const Shop& shop, const Code& code, Moment now);

/// The same for a material the shop buys, chosen by name: where it was put last, and its pack when there is
/// one only. Errors: NotFound.
Result<ArrivalProposal> proposeMaterial(const Shop& shop, const MaterialId& material, Moment now);

/// What a draft still lacks, in the same words as asks. "label_date" is asked for but may stay unknown.
std::vector<std::string> missingFrom(const Shop& shop, const ArrivalDraft& draft);
/// The same where no shop is at hand.
std::vector<std::string> missingFrom(const ArrivalDraft& draft);

/// Books in: material, pack, containers and entries in one transaction. Errors: BadInput or Refused with what
/// is missing or impossible (count, a made date after today, a printed date before the made date, an amount
/// of zero, a class unknown).
Result<ActDone> bookIn(Shop& shop, const ArrivalDraft& draft, ActTime time);

} // namespace gw
