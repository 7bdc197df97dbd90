#include "cli/commands.hpp"
#include "cli/files.hpp"

#include <cstdio>

namespace evenfall::cli {

void print(const std::string& text) {
    std::fwrite(text.data(), 1, text.size(), stdout);
}

Outcome<document::Document> load(const std::string& path) {
    const Outcome<std::string> text = read_text_file(path, document::max_document_bytes);
    if (!text.ok()) return text.problems();
    return read_document(*text);
}

Problems keep(const std::string& path, const document::Document& document) {
    const std::string text = write_document(document);
    if (const auto again = read_document(text); !again.ok()) return again.problems();
    return write_text_file(path, text);
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
