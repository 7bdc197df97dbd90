#pragma once

#include "document/document.hpp"

namespace evenfall::document {

/// What follows from a coat's kind. Whoever asks for a kind asks here: the compiler names this switch when a
/// kind is added.
struct CoatTraits {
    bool takes_room = false; ///< it lies on the wood and displaces water; its amount may be a thickness
    bool is_mixed = false;   ///< more is mixed than stays on the lure: brush and cup keep their share
};

[[nodiscard]] constexpr CoatTraits traits_of(CoatKind kind) {
    switch (kind) {
    case CoatKind::soaks:
        return {.takes_room = false, .is_mixed = false};
    case CoatKind::film:
        return {.takes_room = true, .is_mixed = true};
    }
    return {};
}

} // namespace evenfall::document
