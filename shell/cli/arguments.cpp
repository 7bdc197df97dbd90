#include "cli/arguments.hpp"

#include "base/number_text.hpp"

#include <algorithm>
#include <array>

namespace evenfall::cli {
namespace {

struct CommandWord {
    const char* word;
    Command command;
};
constexpr std::array command_words{
    CommandWord{"weigh", Command::weigh},      CommandWord{"lead", Command::lead},
    CommandWord{"fall", Command::fall},        CommandWord{"log", Command::log},
    CommandWord{"chance", Command::chance},    CommandWord{"joints", Command::joints},
    CommandWord{"link", Command::link},        CommandWord{"open", Command::open},
    CommandWord{"sheet", Command::sheet},      CommandWord{"trace", Command::trace},
    CommandWord{"--help", Command::help},      CommandWord{"-h", Command::help},
    CommandWord{"resin", Command::resin},      CommandWord{"tail", Command::tail},
    CommandWord{"stock", Command::stock},      CommandWord{"woods", Command::woods},
    CommandWord{"metals", Command::metals},    CommandWord{"glue", Command::glue},
    CommandWord{"block", Command::block},      CommandWord{"help", Command::help},
    CommandWord{"--version", Command::version}};

Problem misuse(std::string path, std::string sentence) {
    return {ProblemCode::unknown_name, std::move(path), "", std::move(sentence) + " See “evenfall --help”."};
}

/// Takes the number behind an option; a value may start with a minus sign.
Problems take_number(const std::string& option, const std::string& text, units::Unit usual,
                     std::optional<double>& into) {
    Outcome<double> value = units::read_number(text, usual, option);
    if (!value.ok()) return value.problems();
    into = *value;
    return {};
}

struct LogVerbWord {
    const char* word;
    LogVerb verb;
};
constexpr std::array log_verbs{LogVerbWord{"add", LogVerb::add}, LogVerbWord{"strike", LogVerb::strike},
                               LogVerbWord{"csv", LogVerb::csv}, LogVerbWord{"next", LogVerb::next},
                               LogVerbWord{"how", LogVerb::how}};

struct LogOption {
    const char* option;
    std::optional<std::string> LogWords::*member;
};
constexpr std::array log_options{
    LogOption{"--stage", &LogWords::stage},       LogOption{"--sigma", &LogWords::sigma},
    LogOption{"--lure", &LogWords::lure},         LogOption{"--segment", &LogWords::segment},
    LogOption{"--date", &LogWords::date},         LogOption{"--note", &LogWords::note},
    LogOption{"--holder", &LogWords::holder},     LogOption{"--size", &LogWords::size},
    LogOption{"--material", &LogWords::material}, LogOption{"--water", &LogWords::temperature}};

/// A word behind “log PRESET”: the verb first, then what the verb takes.
Problems take_log_word(Arguments& arguments, bool& has_verb, const std::string& word) {
    if (has_verb) {
        arguments.log.words.push_back(word);
        return {};
    }
    for (const LogVerbWord& entry : log_verbs) {
        if (word != entry.word) continue;
        arguments.log.verb = entry.verb;
        has_verb = true;
        return {};
    }
    return {misuse("log", "“log” knows add, strike, csv, next and how, not “" + word + "”.")};
}

/// Is this a number below zero rather than an option? "-3", "-0.5g".
bool is_negative_number(const std::string& word) {
    return word.size() > 1 && word[0] == '-' &&
           ((word[1] >= '0' && word[1] <= '9') || word[1] == '.' || word[1] == ',');
}

Problems take_paper(const std::string& text, bool& letter) {
    if (text != "a4" && text != "letter")
        return {misuse("--paper", "The paper is a4 or letter, not “" + text + "”.")};
    letter = text == "letter";
    return {};
}

Problems take_lures(const std::string& text, int& lures) {
    const bool digits =
        !text.empty() && text.size() < 5 && text.find_first_not_of("0123456789") == std::string::npos;
    if (!digits) return {misuse("--lures", "“" + text + "” is no number of lures.")};
    lures = std::stoi(text);
    return {};
}

/// "1,2,24": plain numbers between commas, so that a decimal point is the only mark within one of them.
Problems take_list(const std::string& option, const std::string& text, std::vector<double>& numbers) {
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(',', at), text.size());
        std::optional<double> one;
        if (Problems problems = take_number(option, text.substr(at, end - at), units::Unit::one, one);
            !problems.empty())
            return problems;
        numbers.push_back(*one);
        at = end + 1;
    }
    return {};
}

/// Two places in a picture: "X,Y,X,Y".
Problems take_places(const std::string& option, const std::string& text, std::vector<double>& numbers) {
    if (Problems problems = take_list(option, text, numbers); !problems.empty()) return problems;
    if (numbers.size() == 4) return {};
    return {misuse(option, "The option " + option + " takes two places in the picture: X,Y,X,Y.")};
}

} // namespace

Outcome<Arguments> read_arguments(const std::vector<std::string>& words) {
    if (words.empty()) return misuse("", "No command was given.");
    Arguments arguments;
    bool known = false;
    for (const CommandWord& entry : command_words) {
        if (words[0] != entry.word) continue;
        arguments.command = entry.command;
        known = true;
    }
    if (!known) return misuse("", "There is no command “" + words[0] + "”.");
    if (arguments.command == Command::help || arguments.command == Command::version) return arguments;

    const bool plans = arguments.command == Command::lead;
    const bool falls = arguments.command == Command::fall;
    const bool logs = arguments.command == Command::log;
    const bool sure = arguments.command == Command::chance;
    const bool prints = arguments.command == Command::sheet;
    const bool traces = arguments.command == Command::trace;
    const bool links = arguments.command == Command::link;
    const bool mixes = arguments.command == Command::resin || arguments.command == Command::tail ||
                       arguments.command == Command::stock || arguments.command == Command::glue ||
                       arguments.command == Command::block;
    bool has_operand = false;
    bool has_verb = false;
    for (std::size_t i = 1; i < words.size(); ++i) {
        std::string option = words[i] == "-o" ? "--output" : words[i];
        std::optional<std::string> value;
        if (option.rfind("--", 0) == 0) {
            if (const auto equals = option.find('='); equals != std::string::npos) {
                value = option.substr(equals + 1);
                option.erase(equals);
            }
        }
        if (option == "--help") {
            arguments.command = Command::help;
            return arguments;
        }
        if (option == "--json" &&
            (plans || falls || sure || arguments.command == Command::weigh ||
             arguments.command == Command::joints || arguments.command == Command::woods ||
             arguments.command == Command::metals || mixes) &&
            !value) {
            arguments.json = true;
            continue;
        }
        if (traces && option == "--nose-right" && !value) {
            arguments.trace.nose_right = true;
            continue;
        }
        const LogOption* log_option = nullptr;
        for (const LogOption& entry : log_options) {
            if (logs && option == entry.option) log_option = &entry;
        }
        const bool takes_value =
            log_option != nullptr || (mixes && option.rfind("--", 0) == 0) ||
            ((falls || logs) && option == "--depth") || (logs && option == "--write") ||
            (sure && option == "--draws") || (links && option == "--code") ||
            ((links || prints) && option == "--page") ||
            (prints && (option == "--output" || option == "--paper" || option == "--lures" ||
                        option == "--also" || option == "--station" || option == "--cure")) ||
            (traces &&
             (option == "--scale" || option == "--between" || option == "--level" || option == "--part" ||
              option == "--within" || option == "--into" || option == "--write")) ||
            (plans &&
             (option == "--fall" || option == "--in-water" || option == "--pitch" || option == "--write"));
        if (takes_value) {
            if (!value) {
                if (i + 1 == words.size())
                    return misuse(option, "The option " + option + " lacks its value.");
                value = words[++i];
            }
            Problems problems;
            std::optional<double> draws;
            if (mixes)
                arguments.settings.emplace_back(option, *value);
            else if (log_option != nullptr)
                arguments.log.*log_option->member = *value;
            else if (option == "--draws") {
                problems = take_number(option, *value, units::Unit::one, draws);
                if (problems.empty() && !(*draws >= 1.0 && *draws <= 1e6))
                    return misuse(option, "Draw from 1 to 1000000 lures.");
                if (problems.empty()) arguments.draws = static_cast<std::size_t>(*draws);
            } else if (logs && option == "--depth")
                problems = take_number(option, *value, units::Unit::mm, arguments.depth_m);
            else if (option == "--fall")
                problems = take_number(option, *value, units::Unit::mm_per_s, arguments.fall_m_s);
            else if (option == "--in-water")
                problems = take_number(option, *value, units::Unit::gram, arguments.in_water_kg);
            else if (option == "--depth")
                problems = take_number(option, *value, units::Unit::m, arguments.depth_m);
            else if (option == "--pitch")
                problems = take_number(option, *value, units::Unit::degree, arguments.pitch_rad);
            else if (option == "--scale")
                problems = take_number(option, *value, units::Unit::mm, arguments.trace.scale_m);
            else if (option == "--within")
                problems = take_number(option, *value, units::Unit::mm, arguments.trace.within_m);
            else if (option == "--between")
                problems = take_places(option, *value, arguments.trace.between);
            else if (option == "--level")
                problems = take_places(option, *value, arguments.trace.level);
            else if (option == "--part")
                problems = take_places(option, *value, arguments.trace.part);
            else if (option == "--into")
                arguments.trace.into = *value;
            else if (option == "--paper")
                problems = take_paper(*value, arguments.letter);
            else if (option == "--lures")
                problems = take_lures(*value, arguments.also.empty() ? arguments.lures
                                                                     : arguments.also.back().second);
            else if (option == "--also")
                arguments.also.emplace_back(*value, 1);
            else if (option == "--code")
                arguments.code_to = *value;
            else if (option == "--page")
                arguments.page = *value;
            else if (option == "--station")
                problems = take_number(option, *value, units::Unit::mm, arguments.station_m);
            else if (option == "--cure")
                problems = take_list(option, *value, arguments.cure_hours);
            else
                arguments.write_to = *value;
            if (!problems.empty()) return problems;
            continue;
        }
        if (logs && has_operand && (option[0] != '-' || is_negative_number(option))) {
            if (Problems problems = take_log_word(arguments, has_verb, option); !problems.empty())
                return problems;
            continue;
        }
        if (option.size() > 1 && option[0] == '-')
            return misuse(option, "“" + words[0] + "” has no option " + option + ".");
        if (logs && option == "how") {
            arguments.log.verb = LogVerb::how;
            has_verb = has_operand = true;
            continue;
        }
        if (has_operand)
            return misuse("", "“" + words[0] + "” takes one file or link, not “" + option + "” as well.");
        arguments.operand = option;
        has_operand = true;
    }
    if (!has_operand) {
        return misuse("", "“" + words[0] + "” needs " +
                              (arguments.command == Command::open ? "a link."
                               : traces                           ? "a picture."
                                        : "a preset file, or - for standard input."));
    }
    if (arguments.fall_m_s && arguments.in_water_kg) {
        return misuse("--in-water", "Ask for a fall or for a mass in water, not for both.");
    }
    return arguments;
}

std::string usage_text() {
    return "Evenfall: lead and balance for carvers of jointed wooden lures\n"
           "\n"
           "  evenfall weigh PRESET [--json]      what the lure weighs, in air and in water, and how it "
           "falls and hangs\n"
           "  evenfall lead PRESET [--json]       how much lead in which hole, how deep\n"
           "      --fall RATE                     asked rate of fall: 0.9s/ft, 300mm/s\n"
           "      --in-water MASS                 or asked mass in water: 2.5g; 0 hangs still, below 0 "
           "floats\n"
           "      --pitch ANGLE                   asked pitch, nose-up positive: -3deg\n"
           "      --write FILE                    write the planned preset when the targets are met\n"
           "  evenfall fall PRESET [--json]       its ways of falling or floating, and the way down from "
           "rest\n"
           "      --depth DEPTH                   how far down: 2m, 6ft; 2 m where not given\n"
           "  evenfall log PRESET                 the bench log, and how each reading sits with the others\n"
           "  evenfall log PRESET add KIND VALUE  put down a reading; the preset file is written anew, whole "
           "or not at all\n"
           "      --stage STAGE                   carved, drilled, hardware, leaded, sealed, painted, "
           "clear_coated, dressed\n"
           "      KIND and VALUE                  dry_weight 31.2g, held_under 56.1g, hung_in_water 2.4g, "
           "block 132g,\n"
           "                                      tub_fall 4.3s, just_hangs 0.5g, floats_showing 6mm, "
           "hang_angle -3deg\n"
           "      --depth DEPTH                   of a fall: 500mm\n"
           "      --holder MASS                   of wire or thread under water, taken off\n"
           "      --size LxWxH                    of a block, mm\n"
           "      --material ID                   of what was clipped on: lead, steel …\n"
           "      --segment N  --lure N           one segment alone; which of the lures from this recipe\n"
           "      --sigma S  --water T            doubt of the reading; the water's temperature if not the "
           "tub's\n"
           "      --date YYYY-MM-DD  --note TEXT  --write FILE\n"
           "  evenfall log PRESET strike N        strike a reading out, or take it in again\n"
           "  evenfall log PRESET csv             the log for a spreadsheet\n"
           "  evenfall log PRESET next            the recipe for the next lure, with what all readings "
           "taught; --write FILE keeps it\n"
           "  evenfall log how KIND               how a reading is taken, step by step\n"
           "  evenfall chance PRESET [--json]     how sure the answers are, what to do now, what to read "
           "next\n"
           "      --draws N                       and by N lures drawn by chance\n"
           "  evenfall joints PRESET [--json]     how far each joint swings, its wire, bits, walls and "
           "strength\n"
           "  evenfall resin PRESET [--json]      grams of each coat by surface, and the two-part mix for "
           "one of them\n"
           "      --lures N --coat N --loss 35%   how many, which coat, what is lost; the first film of "
           "epoxy where not given\n"
           "      --resin 2 --hardener 1          parts by weight; --by-volume 1 for parts by volume, with\n"
           "      --resin-density D --hardener-density D\n"
           "      --label-temperature T --batch MASS --working MIN --pot-life MIN --cure HOURS   as the "
           "label has them\n"
           "      --recoat-from HOURS --recoat-to HOURS   the label's window for the next coat\n"
           "      --mix-temperature T --room T --per-lure MIN\n"
           "  evenfall tail PRESET [--json]       a soft tail by its shape: mass, pull on the trim, mould "
           "and plastic\n"
           "      --tails N --sprue 15% --loss 10%   how many are cast, and what does not become tail\n"
           "      --shrink 2% --wall 8mm --open 1    cast on its side in one open half; two halves where not "
           "given\n"
           "      --old 30 --fresh 60 --softener 10 --hardener 0 --colour 0   parts by weight; --by-volume 1 "
           "for parts by volume\n"
           "      --old-density D …               and for the others; --rubber-density D\n"
           "  evenfall stock PRESET [--json]      each hole's fill as one stock:\n"
           "      --rod SIZE | --awg N | --shot SIZE | --shot-number N | --sheet THICKNESS   rod and wire by "
           "diameter,\n"
           "      copper and the like by American Wire Gauge 0 to 40 (steel wire goes by other gauges: "
           "measure it)\n"
           "      --material ID                   of the stock; that of each hole's fill where not given\n"
           "  evenfall glue PRESET [--json]       glue round each twisted eye, and soda and CA for the caps\n"
           "      --lures N --loss 50% --fitting SECONDS   how many, what is lost, how long one joint's eyes "
           "take to fit\n"
           "      --thin SECONDS --thick SECONDS --epoxy MIN   working times, as the labels have them\n"
           "      --hangers N --wire SIZE --bit SIZE --pitch LENGTH --glued DEPTH   one hanger a hook where "
           "not given\n"
           "  evenfall block PRESET [--json]      a measured block's density, against its species and at "
           "another moisture\n"
           "      --size LxWxH --mass MASS --moisture PERCENT   as it was measured, mm\n"
           "      --to PERCENT --species ID       those of the preset where not given\n"
           "      --write FILE                    the preset with this density as its wood's\n"
           "  evenfall link PRESET                the share text of a preset; goes behind # in the page's "
           "address\n"
           "      --code FILE.svg                 and as a square code for a phone's camera\n"
           "      --page ADDRESS                  where the page lies, so that the code opens it there\n"
           "  evenfall open LINK                  the preset in a share text or address\n"
           "  evenfall sheet PRESET -o FILE       the build sheet, true to size, as FILE.pdf, .html or .svg\n"
           "      --paper a4|letter               A4 where not given\n"
           "      --lures NUMBER                  how many are made from the recipe\n"
           "      --also PRESET                   a further recipe: one merged list of the whole batch is "
           "written instead;\n"
           "                                      a --lures behind it counts for it\n"
           "      --station LENGTH                between section cards: 10mm where not given\n"
           "      --cure HOURS,HOURS,…            the wait after each coat, in order of work\n"
           "      --page ADDRESS                  where the page lies, so that link and code on the sheet "
           "open it there\n"
           "  evenfall trace PICTURE              back and belly from a photo or scan of a sketch or a "
           "piece; needs the next two\n"
           "      --scale LENGTH                  how far two marks in the picture are apart in truth: "
           "100mm, 4in\n"
           "      --between X,Y,X,Y               where these marks are: pixels from the upper left corner\n"
           "      --level X,Y,X,Y                 nose and tail, between which the datum line runs; else "
           "along the outline\n"
           "      --nose-right                    the nose is at the right in the picture\n"
           "      --part X,Y,X,Y                  look only between these corners\n"
           "      --within LENGTH                 how far the lines may leave the outline: 0.3mm where not "
           "given\n"
           "      --into PRESET                   a lure that gets these lines; a new one-piece lure where "
           "not given\n"
           "      --write FILE                    the lure\n"
           "      PICTURE is a JPEG or PNG file, taken as it is stored: a turn noted in it is not carried "
           "out\n"
           "  evenfall woods PRESET [--json]      the same lure in every wood of the table, its lead planned "
           "anew\n"
           "  evenfall metals PRESET [--json]     the same plan in lead, tungsten, bismuth, tin, steel, "
           "brass …\n"
           "  evenfall --help | --version\n"
           "\n"
           "PRESET is a file, or - for standard input. Without options the targets are those of the preset.\n"
           "Exit status: 0 done, 1 the targets cannot be met, 2 bad input.\n";
}

} // namespace evenfall::cli
