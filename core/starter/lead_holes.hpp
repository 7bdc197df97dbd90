#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"

namespace evenfall::starter {

/// Ballast holes under the belly where wood, wire and hooks leave room, and the lead that meets the
/// document's targets in them, with as few holes as will do; those without lead are left out. The asked hang
/// moves by up to 10° nose-down or 4° nose-up where the holes cannot bring it. Refused ("/fall") with the
/// limit where no plan is met.
[[nodiscard]] Outcome<document::Document> with_lead(const document::Document& body);

} // namespace evenfall::starter
