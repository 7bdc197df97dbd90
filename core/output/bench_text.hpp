#pragma once

#include "base/sentence.hpp"
#include "bench/uncertainty/uncertainty.hpp"

#include <string>
#include <vector>

namespace evenfall::output {

/// Whether lead is drilled out of a hole or laid into one: cautions::lead_chips is to be said before.
[[nodiscard]] bool works_lead(const DoNow& now);

/// Behind a stage's name, of a test with all of the rigged lure hung on: ", hooks and tail on".
[[nodiscard]] std::string with_all_words(const document::Document& document);

/// What hung on for a reading: "hooks and tail on", "Front hook, 2.00 g of lead on"; "" for nothing.
[[nodiscard]] Sentence hung_words(const document::Document& document, const document::HungList& with);

/// A bit's diameter to the nearest 64th: "1/4 in"; "near 5/16 in" where that is 0.05 mm off or more.
[[nodiscard]] std::string bit_inch_text(double diameter_m);

/// What a lead plan leaves out of account: "No paint, no clear coat yet: …"
/// Empty where each of sealer, paint and clear coat is there.
[[nodiscard]] std::string missing_coats_text(const document::Document& document);

/// "Held under water on the scale", as a heading.
[[nodiscard]] std::string reading_name(document::ReadingKind kind);
/// "Scale and caliper, each segment": what is read, without its stage.
[[nodiscard]] std::string next_reading_name(const NextReading& next);

/// Instructions for a reading, step by step: set-up, what to subtract, what to watch for, with safety notes.
[[nodiscard]] std::vector<Sentence> reading_steps(document::ReadingKind kind);

/// Of a lure that may do more than one of them: "Near neutral. Chances: rises 30 %, hangs 10 %, sinks 60 %.
/// Two in three such lures lie from −20 mm/s to +45 mm/s, down positive." Empty where one is as good as
/// certain.
[[nodiscard]] Sentence near_neutral_sentence(const UnderWater& under_water);

} // namespace evenfall::output
