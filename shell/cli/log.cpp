#include "cli/commands.hpp"
#include "cli/swum.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "document_fields.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <memory>

namespace evenfall::cli {
namespace {

using document::Reading;
using document::ReadingKind;
using units::number_text;
using units::Unit;
using Side = Table::Side;

/// What was typed behind “log PRESET”; the verbs behind it share what they have in common.
struct LogOptions {
    std::string preset, kind, value, number;
    std::optional<std::string> stage, sigma, temperature, lure, segment, hole, write_to;
    std::optional<double> depth_m, holder_kg, at_m, over_m, during_s, speed_m_s;
    std::optional<std::string> across;
    std::optional<Sides> size;
    std::string material, date, note;
    std::optional<std::string> with;
};

Problems take(const std::optional<std::string>& text, const char* path, Unit unit,
              std::optional<double>& into) {
    if (!text) return {};
    const Outcome<double> value = units::read_number(*text, unit, path);
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
Outcome<Reading> reading_of(const LogOptions& w) {
    Reading r;
    if (!find_word(document::table::reading_kinds, w.kind, r.kind)) {
        return misuse("add", "“" + w.kind + "” is no kind of reading; there are " +
                                 all_words(document::table::reading_kinds) + ".");
    }
    if (w.stage && !find_word(document::table::stage_words, *w.stage, r.stage)) {
        return misuse("--stage", "“" + *w.stage + "” is no stage; there are " +
                                     all_words(document::table::stage_words) + ".");
    }
    if (!w.stage && r.kind != ReadingKind::board)
        return misuse("--stage", "Say at which stage: --stage sealed, for one.");
    document::ReadingNumber field = document::number_of(r.kind);
    if (r.kind == ReadingKind::caliper) {
        if (!w.at_m) return misuse("--at", "Say where the caliper lay: --at 60mm from the nose.");
        if (w.across == "height")
            field.value = &Reading::height_m;
        else if (w.across != "width")
            return misuse("--across", "Say across what: --across width or --across height.");
    } else if (w.across) {
        return misuse("--across", "That is for a caliper alone.");
    }
    if (r.kind == ReadingKind::beats &&
        (w.over_m ? w.during_s || w.speed_m_s : !w.during_s || !w.speed_m_s)) {
        return misuse("--over", "Say over what they were counted: --over 3m, or --during 6s --speed 0.5m/s.");
    }
    if (r.kind != ReadingKind::beats && (w.over_m || w.during_s || w.speed_m_s))
        return misuse("--over", "--over, --during and --speed are for beats alone.");
    r.travel_m = w.over_m;
    r.speed_m_s = w.speed_m_s;
    if (w.during_s) r.time_s = w.during_s;
    r.x_m = w.at_m;
    if (Problems p = take(w.value, "value", field.unit, r.*field.value); !p.empty()) return p;
    if (Problems p = take(w.sigma, "--sigma", field.unit, r.*field.sigma); !p.empty()) return p;
    if (Problems p = take(w.temperature, "--water", Unit::celsius, r.temperature_c); !p.empty()) return p;
    r.holder_kg = w.holder_kg;
    r.depth_m = w.depth_m;
    if (r.kind == ReadingKind::tub_fall && !r.depth_m)
        return misuse("--depth", "A fall needs its depth: --depth 500mm.");
    if (r.kind == ReadingKind::board && !w.size)
        return misuse("--size", "A board needs its size: --size LENGTHxWIDTHxHEIGHT.");
    if (w.size) {
        const auto [length_m, width_m, height_m] = *w.size;
        r.length_m = length_m;
        r.width_m = width_m;
        r.height_m = height_m;
    }
    r.clip_material = w.material;
    for (const auto& [text, path, into] :
         {std::tuple{&w.lure, "--lure", &r.lure}, std::tuple{&w.segment, "--segment", &r.segment}}) {
        if (!*text) continue;
        const Outcome<int> number = counted(**text, path);
        if (!number) return number.problems();
        *into = *number - 1;
    }
    if (r.lure == 0) r.lure.reset();
    r.date = w.date;
    if (!is_in_calendar(r.date))
        return misuse("--date", "There is no “" + r.date + "” in the calendar; write it like 2026-03-14.");
    r.note = w.note;
    return r;
}

/// “all”, “tail”, a part's name, or a mass and a material: “2g tungsten”.
Outcome<document::HungOn> hung_on(const std::string& text, const document::Document& document) {
    document::HungOn on;
    if (find_word(document::table::hung_kinds, text, on.what) && on.what != document::HungKind::part &&
        on.what != document::HungKind::weight)
        return on;
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        if (document.parts[i].name != text) continue;
        on.what = document::HungKind::part;
        on.part = static_cast<int>(i);
        return on;
    }
    const std::size_t space = text.rfind(' ');
    const Outcome<double> mass = units::read_number(text.substr(0, space), Unit::gram, "--with");
    if (space == std::string::npos || !mass) {
        return misuse("--with",
                      "“" + text +
                          "” is neither all, tail, a part's name, nor a mass and its material, as in "
                          "“2g tungsten”.");
    }
    on.what = document::HungKind::weight;
    on.mass_kg = *mass;
    on.material = text.substr(space + 1);
    return on;
}

/// Things hung on, with commas between.
Outcome<document::HungList> all_hung(const std::string& text, const document::Document& document) {
    document::HungList with;
    for (std::size_t from = 0; from <= text.size();) {
        const std::size_t comma = std::min(text.find(',', from), text.size());
        std::size_t first = from;
        while (first < comma && text[first] == ' ')
            ++first;
        Outcome<document::HungOn> on = hung_on(text.substr(first, comma - first), document);
        if (!on) return on.problems();
        with.push_back(std::move(on).value());
        from = comma + 1;
    }
    return with;
}

std::string value_text(const document::Document& document, const Reading& r, const Numbers& in) {
    const document::ReadingNumber field = document::number_of(r);
    const auto reading = [&](double value, units::Quantity quantity) {
        return reading_text(value, quantity).text(in.units);
    };
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    std::string text = reading((r.*field.value).value_or(0.0), units::quantity_of(field.unit));
    if (r.depth_m) text += " over " + in.length(*r.depth_m, 0) + mm;
    if (r.kind == ReadingKind::beats) {
        text += r.travel_m ? " over " + reading(*r.travel_m, units::Quantity::depth)
                           : " in " + reading(r.time_s.value_or(0.0), units::Quantity::time) + " at " +
                                 reading(r.speed_m_s.value_or(0.0), units::Quantity::speed);
    }
    if (r.x_m) text += (r.height_m ? " high at " : " wide at ") + in.length(*r.x_m, 0) + mm;
    if (r.length_m && r.width_m && r.height_m)
        text += ", " + in.length(*r.length_m) + " × " + in.length(*r.width_m) + " × " +
                in.length(*r.height_m) + mm;
    if (r.holder_kg) text += " less " + reading(*r.holder_kg, units::Quantity::mass);
    if (!r.clip_material.empty()) text += " of " + materials::name_of(r.clip_material);
    if (!r.with.empty()) text += ", " + output::hung_words(document, r.with).text(in.units);
    return text;
}

Ended list(const LogOptions&, document::Document& document, const Printing& in) {
    if (document.log.empty()) {
        print("The log of “" + document.name + "” is empty.\n", in);
        return done;
    }
    const Outcome<Uncertainty> s = evenfall::uncertainty(document);
    if (!s.ok()) return s.problems();
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
                   output::reading_name(r.kind), value_text(document, r, in),
                   v.used ? number_text(v.z_score, Unit::one, 1) : "–",
                   r.excluded ? "(excluded) " + r.note : r.note});
    }
    std::string text = table.text(in);
    for (const ReadingFit& v : s->readings) {
        if (v.warning.empty()) continue;
        text += "! " + v.warning.text(in.units) + '\n';
        for (const Sentence& why : v.explanations)
            text += "    " + why.text(in.units) + '\n';
    }
    print(text, in);
    return done;
}

Outcome<document::Document> load_for(const LogOptions& o) {
    if (o.preset.empty()) return misuse("", "“log” needs a preset file, or - for standard input.");
    return load(o.preset);
}

Ended how(const LogOptions& o, const Printing& in) {
    ReadingKind kind{};
    if (!find_word(document::table::reading_kinds, o.kind, kind))
        return misuse("how", "Say which reading: " + all_words(document::table::reading_kinds) + ".");
    std::string text = output::reading_name(kind) + "\n";
    int number = 0;
    for (const Sentence& step : output::reading_steps(kind))
        text += "  " + std::to_string(++number) + ". " + step.text(in.units) + '\n';
    print(text, in);
    return done;
}

Ended next(const LogOptions& o, document::Document& document, const Printing&) {
    const Outcome<document::Document> next = for_next_lure(document);
    if (!next.ok()) return next.problems();
    const Problems problems = keep(o.write_to.value_or("-"), *next);
    return problems.empty() ? Ended(done) : problems;
}

/// Beats that are worked out of the design as it is now; absent of a lure that there is no answer for.
std::optional<double> foretold_per_m(const document::Document& document) {
    const Outcome<swim::SwimAnswer> answer = swum(document);
    if (!answer.ok() || !answer->beats_per_m) return std::nullopt;
    return answer->beats_per_m->mid;
}

Ended add(const LogOptions& o, document::Document& document, const Printing&) {
    Outcome<Reading> r = reading_of(o);
    if (!r.ok()) return r.problems();
    if (o.with) {
        Outcome<document::HungList> with = all_hung(*o.with, document);
        if (!with.ok()) return with.problems();
        r->with = std::move(with).value();
    }
    if (r->kind == ReadingKind::beats) r->foretold_per_m = foretold_per_m(document);
    document::put_down(document, *r);
    return done;
}

/// Turns one mark of a reading on or off.
Ended mark(const LogOptions& o, document::Document& document, const char* verb, bool Reading::*flag) {
    const Outcome<int> number = counted(o.number, verb);
    if (!number.ok()) return number.problems();
    const auto index = static_cast<std::size_t>(*number - 1);
    if (index >= document.log.size()) {
        return misuse(verb, "There is no reading " + o.number + "; the log has " +
                                std::to_string(document.log.size()) + ".");
    }
    document.log[index].*flag = !(document.log[index].*flag);
    return done;
}
Ended exclude(const LogOptions& o, document::Document& document, const Printing&) {
    return mark(o, document, "exclude", &Reading::excluded);
}
Ended stands(const LogOptions& o, document::Document& document, const Printing&) {
    return mark(o, document, "stands", &Reading::stands);
}

/// The advice of “chance”, followed.
Ended follow(const LogOptions& o, document::Document& document, const Printing&) {
    std::optional<int> hole;
    if (o.hole) {
        const Outcome<int> number = counted(*o.hole, "--hole");
        if (!number.ok()) return number.problems();
        hole = *number - 1;
    }
    const Outcome<DoNow> now = do_now(document);
    if (!now.ok()) return now.problems();
    const auto is_advised = [&](const HoleStep& step) { return !hole || step.hole == *hole; };
    if (now->nothing_to_do || std::none_of(now->holes.begin(), now->holes.end(), is_advised))
        return misuse("done", "There is no such advice: “chance” says what to do.");
    document = with_advice(std::move(document), *now, hole);
    return done;
}

using LogVerb = Ended(const LogOptions&, document::Document&, const Printing&);

/// What a verb does with the document in the file.
Run on_document(std::shared_ptr<LogOptions> o, LogVerb* verb) {
    return [o, verb](const Printing& in) -> Ended {
        Outcome<document::Document> document = load_for(*o);
        if (!document.ok()) return document.problems();
        return verb(*o, *document, in);
    };
}

/// The same of one that changes it: then the whole document is checked as any reading of it would, and
/// written.
Run changing(std::shared_ptr<LogOptions> o, LogVerb* verb) {
    return [o, verb](const Printing& in) -> Ended {
        if (o->preset.empty()) return load_for(*o).problems();
        Outcome<HeldFile> file = HeldFile::hold(o->write_to.value_or(o->preset));
        Outcome<document::Document> document = load_for(*o);
        if (!document.ok()) return document.problems();
        if (!file.ok()) return file.problems();
        if (Ended ended = verb(*o, *document, in); ended.status != done) return ended;
        if (const Problems problems = document::check(*document); !problems.empty()) return problems;
        if (const Outcome<Evaluation> e = evaluate(*document); !e.ok()) return e.problems();
        const Problems problems = keep(*file, *document);
        return problems.empty() ? Ended(done) : problems;
    };
}

void declare_add(Options options, const std::shared_ptr<LogOptions>& o) {
    options.purpose("add a reading; the preset file is written anew, whole or not at all");
    options.word("KIND", o->kind, "a kind of reading and its value: dry_weight 31.2g");
    options.word("VALUE", o->value, "a kind of reading and its value: dry_weight 31.2g");
    options.text("--stage", o->stage, "STAGE", all_words(document::table::stage_words).c_str());
    options.text("--with", o->with, "THINGS",
                 "hung on for it: all, tail, a part's name, a weight as in “2g tungsten”; commas between");
    options.number("--depth", o->depth_m, Unit::mm, "DEPTH", "of a fall: 500mm");
    options.number("--holder", o->holder_kg, Unit::gram, "MASS", "of wire or thread under water, taken off");
    options.number("--at", o->at_m, Unit::mm, "PLACE", "of a caliper, from the nose: 60mm");
    options.text("--across", o->across, "SIDE", "of a caliper: width or height");
    options.number("--over", o->over_m, Unit::m, "WAY", "of beats: along which they were counted: 3m");
    options.number("--during", o->during_s, Unit::second, "TIME", "of beats: or for how long: 6s");
    options.number("--speed", o->speed_m_s, Unit::m_per_s, "SPEED", "of beats: at this speed then: 0.5m/s");
    options.read("--size", read_sides, o->size, "LxWxH", "of a board, mm");
    options.text("--material", o->material, "ID", "of what was clipped on: lead, steel …");
    options.text("--segment", o->segment, "N", "one segment alone");
    options.text("--lure", o->lure, "N", "which of the lures from this recipe");
    options.text("--sigma", o->sigma, "S", "± of the reading");
    options.text("--water", o->temperature, "T", "the water's temperature if not the tub's");
    options.text("--date", o->date, "YYYY-MM-DD", "the day");
    options.text("--note", o->note, "TEXT", "what else is to be remembered");
    options.text("--write", o->write_to, "FILE", "write there instead");
    options.remark("KIND and VALUE: dry_weight 31.2g, held_under 56.1g, hung_in_water 2.4g, board 132g,\n"
                   "tub_fall 4.3s, suspends 0.5g, freeboard 6mm, hang_angle -3deg, caliper 21.4mm,\n"
                   "beats 14");
    options.run(changing(o, add));
}

} // namespace

void log(Options& options) {
    const auto o = std::make_shared<LogOptions>();
    options.purpose("the bench log, and how each reading sits with the others");
    options.optional_word("PRESET", o->preset, "a preset file, or - for standard input");
    options.run(on_document(o, list));
    declare_add(options.verb("add"), o);
    Options verb = options.verb("exclude");
    verb.purpose("exclude a reading, or include it again");
    verb.word("N", o->number, "the number of one reading");
    verb.text("--write", o->write_to, "FILE", "write there instead");
    verb.run(changing(o, exclude));
    verb = options.verb("stands");
    verb.purpose("believe a reading that was left out as a slip, or no longer");
    verb.word("N", o->number, "the number of one reading");
    verb.text("--write", o->write_to, "FILE", "write there instead");
    verb.run(changing(o, stands));
    verb = options.verb("csv");
    verb.purpose("the log for a spreadsheet");
    verb.run(on_document(o, [](const LogOptions&, document::Document& d, const Printing&) -> Ended {
        print(output::log_csv(d));
        return done;
    }));
    verb = options.verb("next");
    verb.purpose("the recipe for the next lure, with what all readings taught");
    verb.text("--write", o->write_to, "FILE", "keep it there; printed where not given");
    verb.run(on_document(o, next));
    verb = options.verb("done");
    verb.purpose("what “chance” says to do now is done: the holes are written so, the log stays");
    verb.text("--hole", o->hole, "N", "in that hole alone");
    verb.text("--write", o->write_to, "FILE", "write there instead");
    verb.run(changing(o, follow));
    verb = options.verb("how");
    verb.purpose("how a reading is taken, step by step: log how KIND");
    verb.word("KIND", o->kind, "a kind of reading");
    verb.run([o](const Printing& in) { return how(*o, in); });
}

} // namespace evenfall::cli
