#include "base/number_text.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "document/check.hpp"
#include "document/field_table.hpp"
#include "materials/solids.hpp"
#include "output/bench_text.hpp"
#include "output/log_csv.hpp"

#include <cmath>
#include <cstdlib>

namespace evenfall::cli {
namespace {

using document::Reading;
using document::ReadingKind;
using units::number_text;
using units::Unit;
using Side = Table::Side;

Problem misuse(std::string path, std::string sentence) {
    return {ProblemCode::unknown_name, std::move(path), "", std::move(sentence) + " See “evenfall --help”."};
}

template <class Words>
std::string all_words(const Words& words) {
    std::string text;
    for (const auto& word : words)
        text += (text.empty() ? "" : ", ") + std::string(word.word);
    return text;
}

template <class Words, class E>
bool find_word(const Words& words, const std::string& text, E& into) {
    for (const auto& word : words) {
        if (word.word != text) continue;
        into = word.value;
        return true;
    }
    return false;
}

Unit unit_of(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::tub_fall:
        return Unit::one;
    case ReadingKind::floats_showing:
        return Unit::mm;
    case ReadingKind::hang_angle:
        return Unit::degree;
    default:
        return Unit::gram;
    }
}

/// "4.3s" is four point three seconds, which is no unit of the bench's tables.
std::string without_seconds(std::string text) {
    if (text.size() > 1 && text.back() == 's') text.pop_back();
    return text;
}

Problems take(const std::optional<std::string>& text, const char* path, Unit unit,
              std::optional<double>& into) {
    if (!text) return {};
    const Outcome<double> value =
        units::read_number(unit == Unit::one ? without_seconds(*text) : *text, unit, path);
    if (!value) return value.problems();
    into = *value;
    return {};
}

Outcome<int> counted(const std::string& text, const char* path) {
    const Outcome<double> value = units::read_number(text, Unit::one, path);
    if (!value) return value.problems();
    if (!(*value >= 1.0 && *value <= 1000.0) || *value != std::floor(*value)) {
        return misuse(path, "“" + text + "” is no number of an entry: 1, 2, 3 …");
    }
    return static_cast<int>(*value);
}

/// "200x30x45" in mm, or with units.
Problems take_sides(const std::optional<std::string>& text, Reading& r) {
    if (!text) return {misuse("--size", "A block needs its size: --size LENGTHxWIDTHxHEIGHT.")};
    std::array<std::string, 3> parts;
    std::size_t part = 0;
    for (const char c : *text) {
        if (c == 'x' || c == 'X') {
            if (++part == parts.size()) return {misuse("--size", "A block has three sides.")};
        } else {
            parts[part] += c;
        }
    }
    const std::array<std::optional<double>*, 3> into{&r.length_m, &r.width_m, &r.height_m};
    for (std::size_t i = 0; i < parts.size(); ++i) {
        if (Problems p = take(parts[i], "--size", Unit::mm, *into[i]); !p.empty()) return p;
    }
    return {};
}

/// Of a date of the right form: whether its month has that day (Gregorian calendar). Any other text passes:
/// the document's check has its say.
bool is_in_calendar(const std::string& date) {
    if (date.size() != 10) return true;
    const int year = std::atoi(date.c_str()), month = std::atoi(date.c_str() + 5),
              day = std::atoi(date.c_str() + 8);
    const bool leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    const int days = month == 2                                              ? (leap ? 29 : 28)
                     : month == 4 || month == 6 || month == 9 || month == 11 ? 30
                                                                             : 31;
    return day <= days;
}

/// The words behind “add” → a reading. Only what text alone can tell is judged here; the rest is the
/// document's check.
Outcome<Reading> reading_of(const Arguments& a) {
    const LogWords& w = a.log;
    Reading r;
    if (w.words.size() != 2)
        return misuse("add", "“add” takes a kind and a value: log PRESET add dry_weight 31.2.");
    if (!find_word(document::table::reading_kinds, w.words[0], r.kind)) {
        return misuse("add", "“" + w.words[0] + "” is no kind of reading; there are " +
                                 all_words(document::table::reading_kinds) + ".");
    }
    if (w.stage && !find_word(document::table::stage_words, *w.stage, r.stage)) {
        return misuse("--stage", "“" + *w.stage + "” is no stage; there are " +
                                     all_words(document::table::stage_words) + ".");
    }
    if (!w.stage && r.kind != ReadingKind::block)
        return misuse("--stage", "Say at which stage: --stage sealed, for one.");
    const Unit unit = unit_of(r.kind);
    const bool weight = unit == Unit::gram;
    std::optional<double>& value = weight                            ? r.mass_kg
                                   : r.kind == ReadingKind::tub_fall ? r.time_s
                                   : unit == Unit::mm                ? r.showing_m
                                                                     : r.angle_rad;
    std::optional<double>& sigma = weight                            ? r.mass_sigma_kg
                                   : r.kind == ReadingKind::tub_fall ? r.time_sigma_s
                                   : unit == Unit::mm                ? r.showing_sigma_m
                                                                     : r.angle_sigma_rad;
    if (Problems p = take(w.words[1], "value", unit, value); !p.empty()) return p;
    if (Problems p = take(w.sigma, "--sigma", unit, sigma); !p.empty()) return p;
    if (Problems p = take(w.holder, "--holder", Unit::gram, r.holder_kg); !p.empty()) return p;
    if (Problems p = take(w.temperature, "--water", Unit::celsius, r.temperature_c); !p.empty()) return p;
    r.depth_m = a.depth_m;
    if (r.kind == ReadingKind::tub_fall && !r.depth_m)
        return misuse("--depth", "A fall needs its depth: --depth 500mm.");
    if (r.kind == ReadingKind::block || w.size) {
        if (Problems p = take_sides(w.size, r); !p.empty()) return p;
    }
    r.clip_material = w.material.value_or("");
    for (const auto& [text, path, into] :
         {std::tuple{&w.lure, "--lure", &r.lure}, std::tuple{&w.segment, "--segment", &r.segment}}) {
        if (!*text) continue;
        const Outcome<int> number = counted(**text, path);
        if (!number) return number.problems();
        *into = *number - 1;
    }
    if (r.lure == 0) r.lure.reset();
    r.date = w.date.value_or("");
    if (!is_in_calendar(r.date))
        return misuse("--date", "There is no “" + r.date + "” in the calendar; write it like 2026-03-14.");
    r.note = w.note.value_or("");
    return r;
}

std::string value_text(const Reading& r) {
    const auto two = [](double core, Unit unit, const char* symbol) {
        return number_text(core, unit, 2) + symbol;
    };
    switch (r.kind) {
    case ReadingKind::tub_fall:
        return two(r.time_s.value_or(0.0), Unit::one, " s over ") +
               number_text(r.depth_m.value_or(0.0), Unit::mm, 0) + " mm";
    case ReadingKind::floats_showing:
        return two(r.showing_m.value_or(0.0), Unit::mm, " mm");
    case ReadingKind::hang_angle:
        return number_text(r.angle_rad.value_or(0.0), Unit::degree, 1) + "°";
    case ReadingKind::block:
        return two(r.mass_kg.value_or(0.0), Unit::gram, " g, ") +
               number_text(r.length_m.value_or(0.0), Unit::mm, 1) + " × " +
               number_text(r.width_m.value_or(0.0), Unit::mm, 1) + " × " +
               number_text(r.height_m.value_or(0.0), Unit::mm, 1) + " mm";
    default:
        break;
    }
    std::string text = two(r.mass_kg.value_or(0.0), Unit::gram, " g");
    if (r.holder_kg) text += " less " + two(*r.holder_kg, Unit::gram, " g");
    if (!r.clip_material.empty()) text += " of " + material_name(r.clip_material);
    return text;
}

int list(const document::Document& document) {
    if (document.log.empty()) {
        print("The log of “" + document.name + "” is empty.\n");
        return done;
    }
    const Outcome<Uncertainty> s = evenfall::uncertainty(document);
    if (!s.ok()) return report(s.problems());
    Table table(
        {Side::right, Side::right, Side::left, Side::left, Side::left, Side::right, Side::right, Side::left});
    table.row({"No", "lure", "date", "stage", "what", "read", "off σ", "note"});
    for (std::size_t i = 0; i < document.log.size(); ++i) {
        const Reading& r = document.log[i];
        const ReadingFit& v = s->readings[i];
        const std::string stage = r.segment ? stage_name(r.stage) + ", " +
                                                  document.segment_names[static_cast<std::size_t>(*r.segment)]
                                            : stage_name(r.stage);
        table.row({std::to_string(i + 1), std::to_string(document::lure_of(r) + 1), r.date, stage,
                   output::reading_name(r.kind), value_text(r),
                   v.used ? number_text(v.z_score, Unit::one, 1) : "–",
                   r.struck ? "(struck out) " + r.note : r.note});
    }
    std::string text = table.text();
    for (const ReadingFit& v : s->readings) {
        if (v.warning.empty()) continue;
        text += "! " + v.warning + '\n';
        for (const std::string& why : v.explanations)
            text += "    " + why + '\n';
    }
    print(text);
    return done;
}

/// Checks the whole document as any reading of it would, and writes it in one piece over the old file.
int write_back(const Arguments& a, const document::Document& document) {
    if (const Problems problems = document::check(document); !problems.empty()) return report(problems);
    if (const Outcome<Evaluation> e = evaluate(document); !e.ok()) return report(e.problems());
    const std::string& path = a.write_to ? *a.write_to : a.operand;
    if (const Problems problems = keep(path, document); !problems.empty()) return report(problems);
    return done;
}

} // namespace

int log(const Arguments& arguments) {
    if (arguments.log.verb == LogVerb::how) {
        ReadingKind kind{};
        if (arguments.log.words.size() != 1 ||
            !find_word(document::table::reading_kinds, arguments.log.words[0], kind)) {
            return report(
                {misuse("how", "Say which reading: " + all_words(document::table::reading_kinds) + ".")});
        }
        std::string text = output::reading_name(kind) + "\n";
        int number = 0;
        for (const std::string& step : output::reading_steps(kind))
            text += "  " + std::to_string(++number) + ". " + step + '\n';
        print(text);
        return done;
    }
    Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    switch (arguments.log.verb) {
    case LogVerb::list:
        return list(*document);
    case LogVerb::csv:
        print(output::log_csv(*document));
        return done;
    case LogVerb::how:
        return done;
    case LogVerb::next: {
        const Outcome<document::Document> next = for_next_lure(*document);
        if (!next.ok()) return report(next.problems());
        if (!arguments.write_to) {
            print(write_document(*next));
            return done;
        }
        if (const Problems problems = keep(*arguments.write_to, *next); !problems.empty())
            return report(problems);
        return done;
    }
    case LogVerb::add: {
        Outcome<Reading> r = reading_of(arguments);
        if (!r.ok()) return report(r.problems());
        document->log.push_back(*r);
        return write_back(arguments, *document);
    }
    case LogVerb::strike: {
        if (arguments.log.words.size() != 1)
            return report({misuse("strike", "“strike” takes the number of one reading.")});
        const Outcome<int> number = counted(arguments.log.words[0], "strike");
        if (!number.ok()) return report(number.problems());
        const auto index = static_cast<std::size_t>(*number - 1);
        if (index >= document->log.size()) {
            return report(
                {misuse("strike", "There is no reading " + arguments.log.words[0] + "; the log has " +
                                      std::to_string(document->log.size()) + ".")});
        }
        document->log[index].struck = !document->log[index].struck;
        return write_back(arguments, *document);
    }
    }
    return bad_input;
}

} // namespace evenfall::cli
