#include "document/json_guard.hpp"

#include "document/fields.hpp"

#include <string>
#include <vector>

namespace evenfall::document {
namespace {

std::string line_and_column(std::string_view text, std::size_t position) {
    std::size_t line = 1;
    std::size_t column = 1;
    for (std::size_t i = 0; i + 1 < position && i < text.size(); ++i) {
        if (text[i] == '\n') {
            ++line;
            column = 1;
        } else if ((static_cast<unsigned char>(text[i]) & 0xC0u) != 0x80u) {
            ++column; // letters, not bytes
        }
    }
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

/// Hears the parser's events, builds the tree and stops at the first fault.
class Guard {
public:
    using Json = Tree;
    using number_integer_t = Json::number_integer_t;
    using number_unsigned_t = Json::number_unsigned_t;
    using number_float_t = Json::number_float_t;
    using string_t = Json::string_t;
    using binary_t = Json::binary_t;

    explicit Guard(std::string_view text) : text_(text) { open_.reserve(max_json_depth); }

    bool null() { return put(nullptr) != nullptr; }
    bool boolean(bool value) { return put(value) != nullptr; }
    bool number_integer(number_integer_t value) { return put(value) != nullptr; }
    bool number_unsigned(number_unsigned_t value) { return put(value) != nullptr; }
    bool number_float(number_float_t value, const string_t&) { return put(value) != nullptr; }
    bool string(string_t& value) { return put(std::move(value)) != nullptr; }
    bool binary(binary_t&) { return false; } // never in JSON text

    bool start_object(std::size_t) { return enter(Json::object()); }
    bool end_object() { return leave(); }
    bool start_array(std::size_t) { return enter(Json::array()); }
    bool end_array() { return leave(); }

    bool key(string_t& key) {
        auto& object = open_.back()->get_ref<Json::object_t&>();
        if (object.size() == max_json_keys) {
            const std::string limit = std::to_string(max_json_keys) + " keys";
            const std::string path = open_path();
            fault_ = {ProblemCode::too_large, path, limit,
                      "The object at “" + (path.empty() ? "/" : path) + "” has more than " + limit +
                          "; no lure needs that."};
            return false;
        }
        const auto [at, fresh] = object.emplace(key, nullptr);
        slot_ = &at->second;
        if (fresh) return true;
        const std::string path = open_path() + '/' + quotable(key);
        fault_ = {ProblemCode::unknown_key, path, "", "The key “" + path + "” stands twice in one object."};
        return false;
    }

    bool parse_error(std::size_t position, const std::string& last_token, const Json::exception& fault) {
        constexpr int number_overflow = 406; // the parser library's number for "beyond a double"
        const std::string where = line_and_column(text_, position);
        if (fault.id == number_overflow) {
            fault_ = {ProblemCode::not_a_number, "", "±1.8e308",
                      "The number “" + quotable(last_token) + "” at " + where + " is too large to be one."};
        } else {
            fault_ = {ProblemCode::not_json, "", "", "This is not JSON: it goes wrong at " + where + '.'};
        }
        return false;
    }

    Json tree_;
    Problem fault_{ProblemCode::not_json, "", "", "This is not JSON."};

private:
    /// Places a value: at the root, behind the key heard last, or at the end of the open list.
    template <class T>
    Json* put(T&& value) {
        if (open_.empty()) {
            tree_ = std::forward<T>(value);
            return &tree_;
        }
        if (open_.back()->is_object()) {
            *slot_ = std::forward<T>(value);
            return slot_;
        }
        return &open_.back()->get_ref<Json::array_t&>().emplace_back(std::forward<T>(value));
    }

    // A list or an object that grows moves its entries, but only closed ones: what is open lies in the last
    // entry of each.
    bool enter(Json&& empty) {
        if (open_.size() == max_json_depth) {
            const std::string path = open_path();
            fault_ = {ProblemCode::too_large, path, std::to_string(max_json_depth) + " levels",
                      "The document is nested deeper than " + std::to_string(max_json_depth) +
                          " levels, at “" + path + "”; no lure needs that."};
            return false;
        }
        open_.push_back(put(std::move(empty)));
        return true;
    }
    bool leave() {
        open_.pop_back();
        return true;
    }

    /// Where the innermost open list or object stands: "/holes/3".
    std::string open_path() const {
        std::string path;
        for (std::size_t i = 0; i + 1 < open_.size(); ++i) {
            if (open_[i]->is_array()) {
                path += '/' + std::to_string(open_[i]->size() - 1);
                continue;
            }
            for (const auto& [key, value] : open_[i]->get_ref<const Json::object_t&>()) {
                if (&value == open_[i + 1]) path += '/' + quotable(key);
            }
        }
        return path;
    }

    std::string_view text_;
    std::vector<Json*> open_;
    Json* slot_ = nullptr;
};

} // namespace

Outcome<Tree> parse_guarded(std::string_view text, std::size_t max_bytes) {
    if (text.size() > max_bytes) {
        const std::string limit = std::to_string(max_bytes / 1024) + " kB";
        return Problem{ProblemCode::too_large, "", limit,
                       "The document is " + std::to_string((text.size() + 1023) / 1024) +
                           " kB long; the limit is " + limit + ", which it passes at " +
                           line_and_column(text, max_bytes + 1) + '.'};
    }
    Guard guard(text);
    if (!Tree::sax_parse(text.begin(), text.end(), &guard)) return guard.fault_;
    return std::move(guard.tree_);
}

} // namespace evenfall::document
