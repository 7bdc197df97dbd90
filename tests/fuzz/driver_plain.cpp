// Runs a fuzzer without a fuzzing engine, so that every ordinary test run exercises it:
//
//     fuzz_preset FOLDER-OR-FILE ... [--mutate COUNT SEED]
//
// Replays the named inputs, then COUNT seeded mutations of them (2000 with seed 1 unless told otherwise). A
// broken law aborts the program; the input that broke it is left in crash-NAME in the current folder.

#include <algorithm>
#include <chrono>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <string>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size);

namespace {

using Input = std::string;

Input text_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// What the handler below needs of the run in progress.
const Input* current_input = nullptr;
std::string crash_file;

/// Best effort on the way down: leaves the input that broke a law. Without it, the same seed breaks it again.
void leave_input(int signal) {
    std::signal(signal, SIG_DFL);
    if (std::FILE* file = current_input != nullptr ? std::fopen(crash_file.c_str(), "wb") : nullptr;
        file != nullptr) {
        std::fwrite(current_input->data(), 1, current_input->size(), file);
        std::fclose(file);
        std::fprintf(stderr, "the input is left in %s\n", crash_file.c_str());
    }
    std::raise(signal);
}

void run(const Input& input) {
    current_input = &input;
    LLVMFuzzerTestOneInput(reinterpret_cast<const std::uint8_t*>(input.data()), input.size());
    current_input = nullptr;
}

/// One to four small edits, of the sorts that parsers stumble over.
Input mutated(const std::vector<Input>& corpus, std::mt19937_64& draw) {
    static const std::vector<std::string> pieces{
        "0",    "-",    "1e308", "1e-308",  "-0",   "99999999999999999999",
        "null", "true", "\"\"",  "[",       "]",    "{",
        "}",    ",",    ":",     "\\u0000", "\xff", "\xc3",
        "e",    ".",    "#",     "1.",      "A",    "\n",
        "1/0",  " 3/8"};
    const auto below = [&](std::size_t count) {
        return count == 0 ? std::size_t{0} : static_cast<std::size_t>(draw() % count);
    };
    Input input = corpus[below(corpus.size())];
    // Every other time digits only: that keeps most inputs sound, so that what lies behind the parser is
    // tried too.
    const bool digits_only = below(2) == 0;
    for (std::size_t edits = 1 + below(4); edits > 0; --edits) {
        const std::size_t at = below(input.size() + 1);
        const std::size_t span = std::min(input.size() - at, 1 + below(12));
        switch (digits_only ? 6 : below(6)) {
        case 0:
            if (at < input.size())
                input[at] = static_cast<char>(static_cast<unsigned char>(input[at]) ^ (1u << below(8)));
            break;
        case 1:
            if (at < input.size()) input[at] = static_cast<char>(draw() & 0xFFu);
            break;
        case 2:
            input.erase(at, span);
            break;
        case 3:
            input.insert(at, input.substr(at, span));
            break;
        case 4:
            input.insert(at, pieces[below(pieces.size())]);
            break;
        case 5: { // the tail of another input
            const Input& other = corpus[below(corpus.size())];
            input = input.substr(0, at) + other.substr(std::min(at, other.size()));
            break;
        }
        default: {
            const std::size_t digit = input.find_first_of("0123456789", at);
            if (digit != Input::npos) input[digit] = static_cast<char>('0' + below(10));
        }
        }
    }
    return input;
}

} // namespace

int main(int count, char** words) {
    unsigned long mutations = 2000;
    unsigned long seed = 1;
    std::vector<std::filesystem::path> paths;
    for (int i = 1; i < count; ++i) {
        if (std::strcmp(words[i], "--mutate") == 0 && i + 2 < count) {
            mutations = std::strtoul(words[i + 1], nullptr, 10);
            seed = std::strtoul(words[i + 2], nullptr, 10);
            i += 2;
        } else if (std::filesystem::is_directory(words[i])) {
            for (const auto& entry : std::filesystem::directory_iterator(words[i])) {
                if (entry.is_regular_file()) paths.push_back(entry.path());
            }
        } else {
            paths.emplace_back(words[i]);
        }
    }
    std::sort(paths.begin(), paths.end()); // folders list in any order
    std::vector<Input> corpus;
    for (const auto& path : paths)
        corpus.push_back(text_of(path));
    if (corpus.empty()) {
        std::fputs("no inputs: name a folder of the corpus\n", stderr);
        return 2;
    }
    crash_file = "crash-" + std::filesystem::path(words[0]).filename().string();
    for (const int signal : {SIGABRT, SIGSEGV, SIGFPE})
        std::signal(signal, leave_input);
    const auto start = std::chrono::steady_clock::now();
    for (const Input& input : corpus)
        run(input);
    std::mt19937_64 draw(seed);
    for (unsigned long i = 0; i < mutations; ++i)
        run(mutated(corpus, draw));
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    std::printf("%zu inputs and %lu mutations of them (seed %lu) in %.1f s: no law broken\n", corpus.size(),
                mutations, seed, seconds);
    return 0;
}
