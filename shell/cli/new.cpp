#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"
#include "starter.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <memory>

namespace evenfall::cli {

namespace {

using starter::LureCard;
using units::Unit;

template <class E>
struct Named {
    const char* word;
    E value;
};
constexpr std::array forms{Named<starter::Form>{"full", starter::Form::full},
                           Named<starter::Form>{"slender", starter::Form::slender},
                           Named<starter::Form>{"deep", starter::Form::deep},
                           Named<starter::Form>{"round", starter::Form::round}};
constexpr std::array falls{Named<starter::WantedFall>{"floats", starter::WantedFall::floats},
                           Named<starter::WantedFall>{"suspends", starter::WantedFall::suspends},
                           Named<starter::WantedFall>{"slow", starter::WantedFall::slow},
                           Named<starter::WantedFall>{"medium", starter::WantedFall::medium},
                           Named<starter::WantedFall>{"fast", starter::WantedFall::fast}};
constexpr std::array tails{Named<starter::TailFin>{"none", starter::TailFin::none},
                           Named<starter::TailFin>{"soft", starter::TailFin::soft}};

template <class E, std::size_t N>
std::optional<E> value_of(const std::array<Named<E>, N>& all, const std::string& word) {
    for (const auto& named : all) {
        if (word == named.word) return named.value;
    }
    return std::nullopt;
}

template <class E, std::size_t N>
std::string words_of(const std::array<Named<E>, N>& all) {
    std::string text;
    for (const auto& named : all)
        text += (text.empty() ? "" : ", ") + std::string(named.word);
    return text;
}

/// One word of a few.
template <class E, std::size_t N>
Take word_into(const std::array<Named<E>, N>& all, const char* option, E& into) {
    return [&all, option, &into](const std::string& typed) -> Problems {
        const auto value = value_of(all, typed);
        if (!value) return {misuse(option, "“" + typed + "” is none of " + words_of(all) + ".")};
        into = *value;
        return {};
    };
}

struct NewOptions {
    LureCard card;
    std::string write_to;
    bool json = false;
};

Ended run(const NewOptions& o, const Printing& in) {
    const auto lure = starter::new_lure(o.card);
    if (!lure) {
        const bool cannot = lure.problems().front().code == ProblemCode::cannot_be_met;
        return {cannot ? cannot_be_met : bad_input, lure.problems()};
    }
    if (!o.write_to.empty()) {
        if (const Problems problems = keep(o.write_to, *lure); !problems.empty()) return problems;
    }
    if (o.json) {
        print(write_document(*lure));
        return done;
    }
    const auto evaluation = evaluate(*lure);
    if (!evaluation) return evaluation.problems();
    print(lure->name + ": " + std::to_string(lure->joints.size() + 1) +
              (lure->joints.empty() ? " segment, " : " segments, ") + std::to_string(lure->holes.size()) +
              " holes; finished " + in.mass(evaluation->answers.mass.kg, 1) + " " + in.mass_symbol() + ", " +
              in.mass(evaluation->answers.in_water.kg) + " " + in.mass_symbol() + " in water\n" +
              (o.write_to.empty() ? "--write FILE keeps it; “evenfall lead FILE” is its drill table.\n"
                                  : "Written: " + for_terminal(o.write_to) + ". “evenfall lead " +
                                        for_terminal(o.write_to) + "” is its drill table.\n"),
          in);
    return done;
}

} // namespace

void new_lure(Options& options) {
    auto o = std::make_shared<NewOptions>();
    options.purpose("a whole lure from a few choices, with its lead planned");
    options.flag("--json", o->json, "the document itself");
    options.text("--name", o->card.name, "NAME", "what it is called");
    options.number("--length", o->card.length_m, Unit::mm, "LENGTH", "of the wood: 160mm, 6 1/4in");
    options.number("--height", o->card.height_m, Unit::mm, "HEIGHT", "usual for the form where not given");
    options.number("--thickness", o->card.thickness_m, Unit::mm, "THICKNESS",
                   "usual for the form where not given");
    options.add("--form", "WORD", "full, slender, deep or round", word_into(forms, "--form", o->card.form));
    options.read("--segments", read_whole, o->card.segments, "NUMBER", "1 to 6");
    options.text("--wood", o->card.wood, "ID", "one of “evenfall woods”");
    options.read("--hooks", read_whole, o->card.hooks, "NUMBER", "0, 1 or 2");
    options.add("--tail", "WORD", "soft, cast and set in a slot, or none",
                word_into(tails, "--tail", o->card.tail));
    options.add("--fall", "WORD", "floats, suspends, slow, medium, fast, or a rate: 0.9s/ft, 300mm/s",
                [o](const std::string& typed) -> Problems {
                    if (const auto word = value_of(falls, typed)) {
                        o->card.fall = *word;
                        return {};
                    }
                    const auto speed = units::read_number(typed, Unit::mm_per_s, "--fall");
                    if (!speed) return speed.problems();
                    o->card.fall = starter::WantedFall::by_speed;
                    o->card.speed_m_s = *speed;
                    return {};
                });
    options.text("--write", o->write_to, "FILE", "where the lure goes");
    options.run([o](const Printing& in) { return run(*o, in); });
}

} // namespace evenfall::cli
