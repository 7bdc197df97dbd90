#include "cli/manual.hpp"

#include "evenfall.hpp"

#include <CLI/CLI.hpp>

namespace evenfall::cli {
namespace {

/// All options of a verb and of the verbs behind it, each with a blank in front.
std::string option_words(const CLI::App& verb) {
    std::string words;
    for (const CLI::Option* option : verb.get_options({})) {
        for (const std::string& name : option->get_lnames())
            words += " --" + name;
    }
    for (const CLI::App* further : verb.get_subcommands({}))
        words += option_words(*further);
    return words;
}

std::string verb_words(const CLI::App& app) {
    std::string words;
    for (const CLI::App* verb : app.get_subcommands({}))
        words += ' ' + verb->get_name();
    return words;
}

/// Text as roff takes it: nothing of it is a request or an escape.
std::string plain(const std::string& text) {
    std::string out;
    for (const char c : text) {
        if (c == '\\')
            out += "\\e";
        else if (c == '-')
            out += "\\-";
        else if (c == '\n')
            out += "\n.br\n";
        else
            out += c;
    }
    return !out.empty() && (out[0] == '.' || out[0] == '\'') ? "\\&" + out : out;
}

std::string section_of(const CLI::App& verb, const std::string& before) {
    std::string usage = before + ' ' + verb.get_name();
    std::string options;
    for (const CLI::Option* option : verb.get_options({})) {
        if (option->get_positional()) {
            usage += ' ' + option->get_name();
            continue;
        }
        if (option == verb.get_help_ptr()) continue;
        const std::string value = option->get_option_text();
        options += ".TP\n.B " + plain(option->get_name()) + (value.empty() ? "" : " " + plain(value)) + '\n' +
                   plain(option->get_description()) + '\n';
    }
    std::string text = ".SS " + plain(usage) + '\n' + plain(verb.get_description()) + '\n' + options;
    if (!verb.get_footer().empty()) text += ".P\n" + plain(verb.get_footer()) + '\n';
    for (const CLI::App* further : verb.get_subcommands({}))
        text += section_of(*further, usage);
    return text;
}

} // namespace

std::string completion_script(const CLI::App& program) {
    std::string cases;
    for (const CLI::App* verb : program.get_subcommands({}))
        cases += "            " + verb->get_name() + ") options=\"" + option_words(*verb).substr(1) +
                 "\" verbs=\"" + verb_words(*verb) + "\" ;;\n";
    return "_evenfall() {\n"
           "    local typed=${COMP_WORDS[COMP_CWORD]} options=\"--help --version\" verbs=\"" +
           verb_words(program) +
           "\"\n"
           "    local files=()\n"
           "    if ((COMP_CWORD > 1)); then\n"
           "        options= verbs= files=(-f)\n"
           "        case ${COMP_WORDS[1]} in\n" +
           cases +
           "        esac\n"
           "    fi\n"
           "    if [[ $typed == -* ]]; then verbs=$options files=(); fi\n"
           "    mapfile -t COMPREPLY < <(compgen \"${files[@]}\" -W \"$verbs\" -- \"$typed\")\n"
           "}\n"
           "complete -o filenames -F _evenfall evenfall\n";
}

std::string manual_page(const CLI::App& program) {
    std::string text = ".TH EVENFALL 1 \"\" \"Evenfall " + std::string(version()) +
                       "\"\n.SH NAME\nevenfall \\- lead and balance for carvers of jointed wooden lures\n"
                       ".SH SYNOPSIS\n.B evenfall\nCOMMAND [options] PRESET\n.SH COMMANDS\n";
    for (const CLI::App* verb : program.get_subcommands({}))
        text += section_of(*verb, "evenfall");
    return text + ".SH NOTES\n" + plain(program.get_footer()) + '\n';
}

} // namespace evenfall::cli
