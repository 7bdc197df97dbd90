#include "words/po.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::words {

namespace {

class Reader {
public:
    Outcome<std::vector<PoEntry>> read(std::string_view text) {
        while (!text.empty() && problems_.empty()) {
            const std::size_t end = std::min(text.find('\n'), text.size());
            ++line_;
            take(text.substr(0, end));
            text.remove_prefix(std::min(end + 1, text.size()));
        }
        put_down();
        if (!problems_.empty()) return problems_;
        return std::move(entries_);
    }

private:
    void take(std::string_view line) {
        while (!line.empty() && (line.back() == '\r' || line.back() == ' '))
            line.remove_suffix(1);
        if (line.empty()) return put_down();
        if (line.starts_with("#,") && line.find("fuzzy") != std::string_view::npos) fuzzy_ = true;
        if (line.front() == '#') return;
        if (line.starts_with("msgid ")) {
            if (!now_.others.empty()) put_down();
            now_.line = line_;
            return begin(now_.english, line.substr(6));
        }
        if (line.starts_with("msgid_plural ")) return begin(now_.plural, line.substr(13));
        if (line.starts_with("msgstr")) {
            now_.others.emplace_back();
            return begin(now_.others.back(), line.substr(std::min(line.find(' '), line.size())));
        }
        if (line.front() == '"' && into_ != nullptr) return add(line);
        refuse();
    }

    void begin(std::string& into, std::string_view quoted) {
        into_ = &into;
        while (quoted.starts_with(' '))
            quoted.remove_prefix(1);
        add(quoted);
    }

    void add(std::string_view quoted) {
        if (quoted.size() < 2 || quoted.front() != '"' || quoted.back() != '"') return refuse();
        const std::string_view text = quoted.substr(1, quoted.size() - 2);
        for (std::size_t i = 0; i < text.size(); ++i) {
            if (text[i] == '"') return refuse();
            if (text[i] != '\\') {
                *into_ += text[i];
                continue;
            }
            if (++i == text.size()) return refuse();
            switch (text[i]) {
            case 'n':
                *into_ += '\n';
                break;
            case 't':
                *into_ += '\t';
                break;
            case '"':
            case '\\':
                *into_ += text[i];
                break;
            default:
                return refuse();
            }
        }
    }

    void put_down() {
        const bool whole =
            !now_.others.empty() && std::none_of(now_.others.begin(), now_.others.end(),
                                                 [](const std::string& s) { return s.empty(); });
        if (whole && !fuzzy_) entries_.push_back(std::move(now_));
        now_ = {};
        into_ = nullptr;
        fuzzy_ = false;
    }

    void refuse() {
        problems_ = {{ProblemCode::wrong_type,
                      "",
                      {},
                      "Line " + std::to_string(line_) + " of the catalogue of words cannot be read."}};
    }

    std::vector<PoEntry> entries_;
    PoEntry now_;
    std::string* into_ = nullptr;
    bool fuzzy_ = false;
    int line_ = 0;
    Problems problems_;
};

} // namespace

Outcome<std::vector<PoEntry>> read_po(std::string_view text) {
    return Reader().read(text);
}

} // namespace evenfall::words
