#pragma once

#include "base/outcome.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::cli {

// Exit status of the program.
inline constexpr int done = 0;
inline constexpr int cannot_be_met = 1;
inline constexpr int bad_input = 2;

enum class Command {
    weigh,
    lead,
    fall,
    joints,
    log,
    chance,
    link,
    open,
    sheet,
    trace,
    resin,
    tail,
    stock,
    glue,
    block,
    woods,
    metals,
    help,
    version
};
enum class LogVerb { list, add, strike, csv, next, how };

/// What was typed behind “log PRESET”, as text.
struct LogWords {
    LogVerb verb = LogVerb::list;
    std::vector<std::string> words; ///< behind the verb: kind and value, or a number
    std::optional<std::string> stage, sigma, lure, segment, date, note, holder, size, material, temperature;
};

/// What was typed behind “trace PICTURE”. Places are pixels from the upper left corner.
struct TraceWords {
    std::optional<double> scale_m;
    std::vector<double> between; ///< x, y, x, y: of the two marks that lie so far apart
    std::vector<double> level;   ///< x, y, x, y: nose and tail
    std::vector<double> part;    ///< x, y, x, y: corners of the part looked at
    std::optional<double> within_m;
    std::optional<std::string> into; ///< a preset that gets the profile
    bool nose_right = false;
};

/// What was typed. Numbers are in the core's units.
struct Arguments {
    Command command = Command::help;
    std::string operand; ///< file, "-" for standard input, or the share text
    bool json = false;
    std::optional<double> fall_m_s;
    std::optional<double> in_water_kg;
    std::optional<double> pitch_rad;
    std::optional<double> depth_m;
    std::optional<std::string> write_to; ///< file for the document, planned or with its log, or for the
                                         ///< sheet; "-" for standard output
    std::optional<std::size_t> draws;    ///< of chance
    LogWords log;
    TraceWords trace;
    bool letter = false; ///< paper of the sheet; else A4
    int lures = 1;
    std::vector<std::pair<std::string, int>> also; ///< further presets of a batch and their lures
    std::optional<double> station_m;               ///< between section cards
    std::vector<double> cure_hours;                ///< per coat
    std::optional<std::string> code_to;            ///< drawing of the link's code; "-" for standard output
    std::string page; ///< address of the page that a code opens; empty: the share text alone
    std::vector<std::pair<std::string, std::string>>
        settings; ///< of resin, tail, stock, glue and block: option and text, read by the command itself
};

/// Words after the program's name → what they ask for. Problems name the option in their path.
[[nodiscard]] Outcome<Arguments> read_arguments(const std::vector<std::string>& words);

[[nodiscard]] std::string usage_text();

} // namespace evenfall::cli
