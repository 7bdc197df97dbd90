#pragma once

#include "evenfall.hpp"
#include "output.hpp"

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace evenfall::cli {

// Exit status of the program.
inline constexpr int done = 0;
inline constexpr int cannot_be_met = 1;
inline constexpr int bad_input = 2;

/// How a verb ended: its exit status, and what there is to tell on standard error.
struct Ended {
    Ended(int how) : status(how) {}
    Ended(Problems told) : status(bad_input), problems(std::move(told)) {}
    Ended(Problem told) : Ended(Problems{std::move(told)}) {}
    Ended(int how, Problems told) : status(how), problems(std::move(told)) {}

    int status;
    Problems problems;
};

/// The units that are printed in.
struct Printing : output::Numbers {
    units::UnitSet json =
        units::metric; ///< of the sentences in JSON: metric unless other units were asked for
};

using Run = std::function<Ended(const Printing&)>;        ///< does the work
using Take = std::function<Problems(const std::string&)>; ///< reads the text behind an option
using Sides = std::array<double, 3>;                      ///< of a board: length, width, height [m]

struct Program; ///< what all verbs share; see options.cpp

/// Where a verb declares what may be typed behind it. The variables have to live until the verb has run; they
/// keep their values where an option is not typed, and an option that is typed twice counts the last time.
class Options {
public:
    Options(CLI::App& app, Program& program) : app_(&app), program_(&program) {}

    /// What the verb does, in one line for the list of verbs.
    void purpose(const std::string& line);
    /// Lines below the options in the verb's help.
    void remark(const std::string& lines);

    /// A word that has to be there, without a dash. `what` goes on the sentence “weigh” needs …
    void word(const char* name, std::string& into, const char* what);
    /// The same where it may be missing.
    void optional_word(const char* name, std::string& into, const char* what);
    /// A file, or "-" for standard input.
    void preset(std::string& into);

    void flag(const char* name, bool& into, const char* help);
    template <class Into>
    void text(const char* name, Into& into, const char* value, const char* help) {
        add(name, value, help, [&into](const std::string& typed) {
            into = typed;
            return Problems{};
        });
    }
    /// A number in trade units, `usual` where none is typed. Into a bool: yes unless it is 0.
    template <class Into>
    void number(const char* name, Into& into, units::Unit usual, const char* value, const char* help) {
        add(name, value, help, [&into, name, usual](const std::string& typed) {
            return store(units::read_number(typed, usual, name), into);
        });
    }
    /// What one of the readers below takes: read_whole, read_numbers, read_sides.
    template <class Answer, class Into>
    void read(const char* name, Outcome<Answer> (*reader)(const std::string&, const std::string&), Into& into,
              const char* value, const char* help) {
        add(name, value, help,
            [&into, name, reader](const std::string& typed) { return store(reader(typed, name), into); });
    }
    /// Anything else. `take` is called each time the option is typed, in the order of typing.
    void add(const char* name, const char* value, const char* help, Take take);

    /// A verb behind this one: “log PRESET add”.
    Options verb(const char* name);
    /// What the verb does. Its reader's units are an option of it.
    void run(Run run);
    /// The same for a verb that tells no quantity.
    void run_plainly(std::function<Ended()> run);

private:
    template <class Answer, class Into>
    static Problems store(const Outcome<Answer>& answer, Into& into) {
        if (answer.ok()) into = *answer;
        return answer.ok() ? Problems{} : answer.problems();
    }

    CLI::App* app_;
    Program* program_;
};

struct Verb {
    const char* name;
    void (*declare)(Options& options); ///< its purpose, what it takes, and what runs it
};

/// Something typed that cannot be, with where to read on.
[[nodiscard]] Problem misuse(std::string path, std::string sentence);

/// A whole number up to a million, either side of zero. The option's name is for the problem.
[[nodiscard]] Outcome<int> read_whole(const std::string& text, const std::string& option);

/// Plain numbers between commas, so that a decimal point is the only mark within one of them.
[[nodiscard]] Outcome<std::vector<double>> read_numbers(const std::string& text, const std::string& option);

/// "LENGTHxWIDTHxHEIGHT", mm where no unit is typed.
[[nodiscard]] Outcome<Sides> read_sides(const std::string& text, const std::string& option);

/// What most verbs work on.
struct PresetOptions {
    std::string preset;
    bool json = false;
};

/// Declares a verb that works on a preset. Returns where its further options go.
template <class O>
std::shared_ptr<O> declare(Options& options, const char* purpose, Ended (*run)(const O&, const Printing&)) {
    auto o = std::make_shared<O>();
    options.purpose(purpose);
    options.preset(o->preset);
    if constexpr (requires { o->json; }) options.flag("--json", o->json, "for another program to read");
    options.run([o, run](const Printing& in) { return run(*o, in); });
    return o;
}

/// Reads what was typed behind the program's name and runs it. Also answers help, --version, completion and
/// manual. Returns the exit status.
[[nodiscard]] int run_program(std::span<const Verb> verbs, const std::vector<std::string>& words);

} // namespace evenfall::cli
