#include "cli/options.hpp"

#include "cli/commands.hpp"
#include "cli/locale.hpp"
#include "cli/manual.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"

#include <CLI/CLI.hpp>

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <map>
#include <memory>

namespace evenfall::cli {

struct Program {
    explicit Program(const std::string& locale) : language(locale) { printing.speech = language.speech(); }

    [[nodiscard]] std::string said(const std::string& text) const { return printing.speech.said(text); }

    ReaderLanguage language;
    Printing printing;
    CLI::App app{"", "evenfall"};
    std::map<const CLI::App*, Run> runs;
    Problems problems; ///< of the options that were read
};

namespace {

/// CLI11 takes a word that begins with a dash for an option and one in square brackets for a list. A blank in
/// front tells it otherwise; unguarded() takes the blank away again.
std::vector<std::string> guarded(std::vector<std::string> words) {
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string& word = words[i];
        const bool is_value = i > 0 && words[i - 1].size() > 1 && words[i - 1][0] == '-';
        const bool is_number = word.size() > 1 && word[0] == '-' &&
                               std::string("0123456789.,").find(word[1]) != std::string::npos;
        if ((is_number && !is_value) || (!word.empty() && word[0] == '[')) words[i].insert(0, 1, ' ');
    }
    return words;
}

std::string unguarded(const std::string& word) {
    return !word.empty() && word[0] == ' ' ? word.substr(1) : word;
}

const CLI::App& deepest(const CLI::App& app) {
    const auto chosen = app.get_subcommands();
    return chosen.empty() ? app : deepest(*chosen.front());
}

std::vector<std::string_view> names_of_verbs(const CLI::App& app) {
    std::vector<std::string_view> names;
    for (const CLI::App* verb : app.get_subcommands({}))
        names.push_back(verb->get_name());
    return names;
}

std::string in_quotes(std::string_view word) {
    return "“" + std::string(word) + "”";
}

/// “ Did you mean …?” where a known word is near.
std::string suggestion(std::string_view word, const std::vector<std::string_view>& known) {
    const std::string_view near = document::nearest_spelling(word, known);
    return near.empty() ? std::string() : " Did you mean " + in_quotes(near) + "?";
}

/// A word that belongs to nothing.
Problem stray(const CLI::App& app, const std::string& word) {
    const std::string verb = app.get_name();
    const bool is_option = word.size() > 1 && word[0] == '-';
    if (is_option) {
        const std::string option = word.substr(0, word.find('='));
        std::vector<std::string> known;
        for (const CLI::Option* o : app.get_options({})) {
            for (const std::string& name : o->get_lnames())
                known.push_back("--" + name);
        }
        return misuse(option, in_quotes(verb) + " has no option " + option + "." +
                                  suggestion(option, {known.begin(), known.end()}));
    }
    const auto verbs = names_of_verbs(app);
    if (app.get_parent() == nullptr)
        return misuse("", "There is no command " + in_quotes(word) + "." + suggestion(word, verbs));
    if (verbs.empty())
        return misuse("", in_quotes(verb) + " takes nothing more, not " + in_quotes(word) + " as well.");
    std::string list;
    for (const std::string_view name : verbs)
        list += (list.empty() ? "" : ", ") + std::string(name);
    return misuse(verb, in_quotes(verb) + " knows " + list + ", not " + in_quotes(word) + "." +
                            suggestion(word, verbs));
}

Problems strays(const CLI::App& app) {
    Problems problems;
    for (const std::string& word : app.remaining())
        problems.push_back(stray(app, unguarded(word)));
    if (!problems.empty()) problems.resize(1); // what follows is often only a consequence
    for (const CLI::App* verb : app.get_subcommands()) {
        for (Problem& p : strays(*verb))
            problems.push_back(std::move(p));
    }
    return problems;
}

/// CLI11's own refusals in the program's words.
Problem refusal(const CLI::App& app, const CLI::ParseError& error) {
    if (dynamic_cast<const CLI::RequiredError*>(&error) != nullptr) {
        for (const CLI::Option* word : app.get_options({})) {
            if (word->get_required() && word->count() == 0)
                return misuse("", in_quotes(app.get_name()) + " needs " + word->get_description() + ".");
        }
    }
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&error) != nullptr) {
        const std::string what = error.what();
        const std::string option = what.substr(0, what.find_first_of(": "));
        return misuse(option, "The option " + option + " lacks its value.");
    }
    return misuse("", error.what());
}

/// The words as CLI11 wants them: the last first.
std::vector<std::string> backwards(std::vector<std::string> words) {
    return {words.rbegin(), words.rend()};
}

void prepare(CLI::App& app, const Program& program) {
    app.allow_extras(); // told by stray(), with a suggestion
    app.require_subcommand(0, 1);
    app.set_help_flag("-h,--help", program.said("this text"));
    app.group(program.said("Commands"));
}

/// Each problem on standard error: the sentence, then where. Returns the exit status.
int tell(const Ended& ended, const Printing& in) {
    for (const Problem& problem : ended.problems) {
        const std::string where = problem.path.empty() ? std::string() : "  [" + problem.path + ']';
        const std::string sentence = in.speech.said(problem.sentence.text(in.units));
        std::fprintf(stderr, "evenfall: %s\n", for_terminal(sentence + where).c_str());
    }
    return ended.status;
}

void declare_help(Options verb, Program& program) {
    verb.purpose("this text, or that of one command");
    const auto name = std::make_shared<std::string>();
    verb.optional_word("COMMAND", *name, "one of the commands");
    verb.run_plainly([&program, name]() -> Ended {
        const CLI::App* asked = name->empty() ? &program.app : nullptr;
        for (const CLI::App* known : program.app.get_subcommands({})) {
            if (known->get_name() == *name) asked = known;
        }
        if (asked == nullptr) return stray(program.app, *name);
        print(asked->help(asked == &program.app ? "" : "evenfall"));
        return done;
    });
}

} // namespace

Problem misuse(std::string path, std::string sentence) {
    return {ProblemCode::unknown_name, std::move(path), "", std::move(sentence) + " See “evenfall --help”."};
}

Outcome<int> read_whole(const std::string& text, const std::string& option) {
    const Outcome<double> number = units::read_number(text, units::Unit::one, option);
    if (!number.ok()) return number.problems();
    if (*number != std::floor(*number) || std::abs(*number) > 1e6)
        return Problem{ProblemCode::out_of_range, option, "", in_quotes(text) + " is no whole number."};
    return static_cast<int>(*number);
}

Outcome<std::vector<double>> read_numbers(const std::string& text, const std::string& option) {
    std::vector<double> numbers;
    for (std::size_t at = 0; at <= text.size();) {
        const std::size_t end = std::min(text.find(',', at), text.size());
        const Outcome<double> one = units::read_number(text.substr(at, end - at), units::Unit::one, option);
        if (!one.ok()) return one.problems();
        numbers.push_back(*one);
        at = end + 1;
    }
    return numbers;
}

Outcome<Sides> read_sides(const std::string& text, const std::string& option) {
    Sides sides{};
    std::size_t from = 0;
    for (std::size_t k = 0; k < sides.size(); ++k) {
        const std::size_t end = k + 1 < sides.size() ? text.find_first_of("xX", from) : text.size();
        if (end == std::string::npos || from > text.size())
            return misuse(option, "A board has three sides: " + option + " LENGTHxWIDTHxHEIGHT.");
        const Outcome<double> side =
            units::read_number(text.substr(from, end - from), units::Unit::mm, option);
        if (!side.ok()) return side.problems();
        sides[k] = *side;
        from = end + 1;
    }
    return sides;
}

void Options::purpose(const std::string& line) {
    app_->description(program_->said(line));
}

void Options::remark(const std::string& lines) {
    app_->footer(program_->said(lines));
}

void Options::optional_word(const char* name, std::string& into, const char* what) {
    app_->add_option_function<std::string>(
            name, [&into](const std::string& text) { into = unguarded(text); }, program_->said(what))
        ->option_text(" ");
}

void Options::word(const char* name, std::string& into, const char* what) {
    optional_word(name, into, what);
    app_->get_option(name)->required();
}

void Options::preset(std::string& into) {
    word("PRESET", into, "a preset file, or - for standard input");
}

void Options::flag(const char* name, bool& into, const char* help) {
    app_->add_flag(name, into, program_->said(help))->multi_option_policy(CLI::MultiOptionPolicy::TakeLast);
}

void Options::add(const char* name, const char* value, const char* help, Take take) {
    Program& program = *program_;
    app_->add_option_function<std::string>(
            name,
            [&program, take = std::move(take)](const std::string& text) {
                for (Problem& p : take(unguarded(text)))
                    program.problems.push_back(std::move(p));
            },
            program.said(help))
        ->option_text(value)
        ->trigger_on_parse();
}

Options Options::verb(const char* name) {
    CLI::App* app = app_->add_subcommand(name);
    prepare(*app, *program_);
    app->footer(""); // not that of the whole program
    return {*app, *program_};
}

void Options::run(Run run) {
    Program& program = *program_;
    add("--units", "inch|metric", "of what is told; where not given as the locale has it (US: inch)",
        [&program](const std::string& text) -> Problems {
            if (text != "inch" && text != "metric")
                return {misuse("--units", "The units are inch or metric, not " + in_quotes(text) + ".")};
            program.printing.units = program.printing.json = text == "inch" ? units::inches : units::metric;
            return {};
        });
    program.runs[app_] = std::move(run);
}

void Options::run_plainly(std::function<Ended()> run) {
    program_->runs[app_] = [run = std::move(run)](const Printing&) { return run(); };
}

namespace {

int run(Program& program, std::span<const Verb> verbs, const std::vector<std::string>& words) {
    CLI::App& app = program.app;
    prepare(app, program);
    app.description(program.said("Evenfall: lead and balance for carvers of jointed wooden lures"));
    app.set_version_flag("--version",
                         "evenfall " + std::string(version()) + ", documents of version " +
                             std::to_string(document::document_version),
                         program.said("of the program and of the documents it writes"));
    app.get_formatter()->label("Usage", program.said("Usage"));
    app.get_formatter()->label("OPTIONS", program.said("options"));
    app.get_formatter()->label("SUBCOMMAND", program.said("COMMAND"));
    app.get_formatter()->label("Options", program.said("Options"));
    app.get_formatter()->label("Positionals", program.said("Arguments"));
    app.footer(program.said(
        "PRESET is a file, or - for standard input. “evenfall COMMAND --help” tells a command's options.\n"
        "Exit status: 0 done, 1 the targets cannot be met, 2 bad input."));
    Options options(app, program);
    for (const Verb& verb : verbs) {
        Options declared = options.verb(verb.name);
        verb.declare(declared);
    }
    declare_help(options.verb("help"), program);
    Options completion = options.verb("completion");
    completion.purpose(
        "a script that lets bash complete commands and options: source <(evenfall completion)");
    completion.run_plainly([&app] {
        print(completion_script(app));
        return done;
    });
    Options manual = options.verb("manual");
    manual.purpose("the manual page, for man: evenfall manual > evenfall.1");
    manual.run_plainly([&app] {
        print(manual_page(app));
        return done;
    });

    const auto refused = [&program](const Problems& problems) { return tell({problems}, program.printing); };
    if (words.empty()) return refused({misuse("", "No command was given.")});
    Problems problems;
    try {
        app.parse(backwards(guarded(words)));
    } catch (const CLI::CallForHelp&) {
        print(app.help());
        return done;
    } catch (const CLI::CallForVersion& text) {
        print(std::string(text.what()) + '\n');
        return done;
    } catch (const CLI::ParseError& error) {
        problems = strays(app);
        if (problems.empty()) problems = {refusal(deepest(app), error)};
        return refused(problems);
    }
    problems = strays(app);
    if (problems.empty()) problems = program.problems;
    if (!problems.empty()) return refused(problems);
    return tell(program.runs.at(&deepest(app))(program.printing), program.printing);
}

} // namespace

int run_program(std::span<const Verb> verbs, const std::vector<std::string>& words) {
    const char* all = std::getenv("LC_ALL");
    const char* usual = std::getenv("LANG");
    const std::string language = first_set({all, std::getenv("LC_MESSAGES"), usual});
    Program program(language);
    program.printing.units = units_of_locale(first_set({all, std::getenv("LC_MEASUREMENT"), usual}));
    const int status = run(program, verbs, words);
    program.language.tell_unknown(std::getenv("EVENFALL_UNTRANSLATED"));
    return status;
}

} // namespace evenfall::cli
