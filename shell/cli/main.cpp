#include "cli/commands.hpp"
#include "cli/table.hpp"

#include <cstdio>

namespace evenfall::cli {

void print(const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
}

void print(const std::string& text, const output::Numbers& in) {
    if (in.speech.language == nullptr) return print(text);
    std::string out;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find('\n', from), text.size());
        const std::string line = text.substr(from, end - from);
        out += is_table_row(line) ? line : in.speech.said(line);
        if (end < text.size()) out += '\n';
        from = end + 1;
    }
    print(out);
}

Outcome<document::Document> load(const std::string& path) {
    const Outcome<std::string> text = read_text_file(path, document::max_document_bytes);
    if (!text.ok()) return text.problems();
    return read_document(*text);
}

Problems keep(HeldFile& file, const document::Document& document) {
    const std::string text = write_document(document);
    if (const auto again = read_document(text); !again.ok()) return again.problems();
    return file.write(text);
}

Problems keep(const std::string& path, const document::Document& document) {
    Outcome<HeldFile> file = HeldFile::hold(path);
    return file.ok() ? keep(*file, document) : file.problems();
}

namespace {

/// In the order in which help lists them: a lure's way over the bench.
constexpr Verb verbs[] = {{"new", new_lure},  {"weigh", weigh},    {"lead", lead},   {"reach", reach},
                          {"fall", fall},     {"swim", swim_verb}, {"log", log},     {"chance", chance},
                          {"joints", joints}, {"resin", resin},    {"tail", tail},   {"stock", stock},
                          {"glue", glue},     {"board", board},    {"link", link},   {"open", open},
                          {"sheet", sheet},   {"trace", trace},    {"woods", woods}, {"metals", metals}};

} // namespace
} // namespace evenfall::cli

int main(int count, char** words) {
    using namespace evenfall::cli;
    const int status = run_program(verbs, {words + (count > 0 ? 1 : 0), words + count});
    const bool told = std::fflush(stdout) == 0 && std::ferror(stdout) == 0;
    if (told) return status;
    std::fputs("evenfall: Not everything could be printed: is there room where it goes?\n", stderr);
    return bad_input;
}
