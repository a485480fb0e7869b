#pragma once

#include <string>
#include <utility>

#include <tl/expected.hpp>

namespace gw {

/// Why an answer could not be given. Each names a case a person is told about in other words.
enum class ErrorCode {
    BadInput, ///< what was typed or scanned cannot be understood or is impossible
    NotFound, ///< no such container, material, place, job type, entry ...
    Refused, ///< understood, but the shelf does not allow it (taking out more than is there, undoing twice)
    Conflict, ///< somebody else changed the same thing first; ask again
    StoreLocked, ///< another program holds the store
    StoreReadOnly, ///< the store or its folder may not be written
    StoreFull, ///< the disk is full
    StoreForeign, ///< the file or database is not a Gluewright store
    StoreNewer, ///< the store was written by a newer Gluewright
    StoreDamaged, ///< the store fails its own checks
    StoreUnreachable, ///< the server does not answer, or refuses the credentials
    StoreFailed, ///< any other fault of the engine; the sentence carries its words
    FileUnreadable, ///< a file is missing, may not be read, or is not what it should be
    FileUnwritable, ///< a file could not be written
    NoSymbol, ///< the picture is fine but no bar code or square code was found in it
    CameraAbsent, ///< no camera, or it may not be used
};

/// A value, never an exception past a room's edge. The sentence says what is wrong and what to do,
/// ready to show; it ends with a full stop.
struct Error {
    ErrorCode code = ErrorCode::BadInput;
    std::string sentence;
};

template <class T> using Result = tl::expected<T, Error>;

inline tl::unexpected<Error> fail(ErrorCode code, std::string sentence)
{
    return tl::unexpected<Error>(Error { code, std::move(sentence) });
}

} // namespace gw
