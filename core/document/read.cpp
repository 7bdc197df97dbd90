#include "document/read.hpp"
#include "document/check.hpp"
#include "document/json_guard.hpp"
#include "document/spelling.hpp"
#include "document/table.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

namespace evenfall::document {
namespace {

using Json = Tree;

void wrong_type(Problems& problems, std::string path, const std::string& subject, const std::string& wanted) {
    add_problem(problems,
                {ProblemCode::wrong_type, std::move(path), wanted, subject + " must be " + wanted + '.'});
}

/// Fills one struct from one JSON object by its table. Judges keys and types only: limits are judged
/// afterwards by document::check, over the same table.
class Reader {
public:
    Reader(Problems& problems, Place place, const Json& node, const Table& table, void* object)
        : problems_(problems), place_(std::move(place)), node_(node), table_(table), object_(object) {}

    void read() {
        for (const Field& field : table_.fields)
            read_field(field);
        refuse_unknown_keys();
    }

private:
    void read_field(const Field& field) {
        if (field.sort == Sort::number)
            number(field.number, field.offset);
        else if (field.sort == Sort::optional_number)
            optional_number(field.number, field.offset);
        else if (field.sort == Sort::exactly_one) {
            optional_number(field.number, field.offset);
            optional_number(field.second, field.second_offset);
        } else if (field.sort == Sort::either)
            either(field);
        else if (field.sort == Sort::object)
            object(field);
        else if (const Json* node = find(field.key, field.required))
            read_given(field, *node);
    }

    /// A field whose key is there.
    void read_given(const Field& field, const Json& node) {
        switch (field.sort) {
        case Sort::ordinal:
            ordinal(field, node);
            break;
        case Sort::text:
        case Sort::wood:
        case Sort::material:
            read_own_text(node, field.key, value_at<std::string>(object_, field.offset));
            break;
        case Sort::choice:
            choice(field, node);
            break;
        case Sort::yes_no:
            if (node.is_boolean())
                value_at<bool>(object_, field.offset) = node.get<bool>();
            else
                wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "true or false");
            break;
        case Sort::flags:
            flags(field, node);
            break;
        case Sort::number_or_points:
            if (node.is_number())
                one_point(field, node);
            else
                points(field, node);
            break;
        case Sort::points:
            points(field, node);
            break;
        case Sort::optional_object:
            optional_object(field, node);
            break;
        case Sort::list:
            list(field, node);
            break;
        case Sort::names:
            names(field, node);
            break;
        case Sort::version:
        case Sort::number:
        case Sort::optional_number:
        case Sort::exactly_one:
        case Sort::either:
        case Sort::object:
            break; // read where the key may be missing
        }
    }

    void number(const NumberField& field, std::size_t offset) {
        double& value = value_at<double>(object_, offset);
        value = to_si(field, to_trade(field, value));
        if (const Json* node = find(field.key, field.required)) read_number(field, *node, value);
    }

    void optional_number(const NumberField& field, std::size_t offset) {
        const Json* node = find(field.key, field.required);
        double value = 0.0;
        if (node != nullptr && read_number(field, *node, value))
            value_at<std::optional<double>>(object_, offset) = value;
    }

    void ordinal(const Field& field, const Json& node) {
        double value = 0.0;
        if (!read_number(field.number, node, value)) return;
        if (value != std::floor(value) || std::abs(value) > 1e6) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a whole number");
            return;
        }
        value_at<std::optional<int>>(object_, field.offset) = static_cast<int>(value) - 1;
    }

    void choice(const Field& field, const Json& node) {
        std::string text;
        if (!read_own_text(node, field.key, text)) return;
        for (const FieldWord& known : field.words) {
            if (known.word == text) {
                set_choice(object_, field.offset, static_cast<int>(known.value));
                return;
            }
        }
        unknown_word(place_.path_of(field.key), field, text);
    }

    void flags(const Field& field, const Json& node) {
        if (!node.is_array()) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a list of words");
            return;
        }
        for (const FieldWord& flag : field.words)
            value_at<bool>(object_, flag.value) = false;
        for (std::size_t i = 0; i < node.size(); ++i) {
            const auto place = [&] {
                return Place{place_.path_of(field.key) + '/' + std::to_string(i), field_subject(field.key)};
            };
            std::string text;
            if (!read_text(node[i], place, text)) continue;
            bool found = false;
            for (const FieldWord& flag : field.words) {
                if (flag.word != text) continue;
                value_at<bool>(object_, flag.value) = true;
                found = true;
            }
            if (!found) unknown_word(place().path, field, text);
        }
    }

    void either(const Field& field) {
        const bool has_first = node_.contains(field.number.key);
        const bool has_second = node_.contains(field.second.key);
        number(field.number, field.offset);
        number(field.second, field.second_offset);
        if (has_first && has_second) {
            const std::string names = std::string(field.number.key) + " and " + std::string(field.second.key);
            add_problem(problems_, {ProblemCode::unknown_key, place_.path_of(field.second.key),
                                    "exactly one of " + names,
                                    place_.subject + " give both " + names + "; give one of them."});
        }
        if (has_first)
            set_choice(object_, field.which_offset, field.which_first);
        else if (has_second)
            set_choice(object_, field.which_offset, field.which_second);
    }

    void one_point(const Field& field, const Json& node) {
        double value = 0.0;
        read_number(field.second, node, value, field.key);
        field.entries.resize(place_at(object_, field.offset), 0);
        field.entries.resize(place_at(object_, field.offset), 1);
        value_at<double>(field.entries.entry(place_at(object_, field.offset), 0), field.second_offset) =
            value;
    }

    void points(const Field& field, const Json& node) {
        if (!node.is_array()) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a list of points");
            return;
        }
        if (node.size() > field.max_count) {
            const std::string limit =
                std::to_string(field.min_count) + " to " + std::to_string(field.max_count) + " points";
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "The " + std::string(field.called) + " has " +
                                        counted(node.size(), "point") + "; the limit is " + limit + '.'});
            return;
        }
        void* held = place_at(object_, field.offset);
        field.entries.resize(held, 0);
        field.entries.resize(held, node.size());
        for (std::size_t i = 0; i < node.size(); ++i) {
            const Json& pair = node[i];
            if (!pair.is_array() || pair.size() != 2 || !pair[0].is_number() || !pair[1].is_number()) {
                const Place there = place_.point(field.key, field.called, i);
                wrong_type(problems_, there.path, there.subject, "a pair of numbers");
                continue;
            }
            void* point = field.entries.entry(held, i);
            value_at<double>(point, field.first_offset) = to_si(field.number, pair[0].get<double>());
            value_at<double>(point, field.second_offset) = to_si(field.second, pair[1].get<double>());
        }
    }

    void object(const Field& field) {
        static const Json nothing = Json::object();
        const Json* node = find(field.key, field.required);
        if (node == nullptr && field.required) return;
        within(place_.key(field.key, std::string(field.called)), node != nullptr ? *node : nothing, field,
               place_at(object_, field.offset));
    }

    void optional_object(const Field& field, const Json& node) {
        void* held = place_at(object_, field.offset);
        field.entries.resize(held, 0);
        if (node.is_null()) return;
        field.entries.resize(held, 1);
        within(place_.key(field.key, place_.owned(field.called)), node, field, field.entries.entry(held, 0));
    }

    void list(const Field& field, const Json& node) {
        if (!fits(field, node)) return;
        void* held = place_at(object_, field.offset);
        field.entries.resize(held, node.size());
        for (std::size_t i = 0; i < node.size(); ++i) {
            within(place_.entry(field.key, field.called, i), node[i], field, field.entries.entry(held, i));
        }
    }

    void names(const Field& field, const Json& node) {
        if (!fits(field, node)) return;
        auto& held = value_at<std::vector<std::string>>(object_, field.offset);
        held.resize(node.size());
        for (std::size_t i = 0; i < node.size(); ++i) {
            const auto place = [&] {
                const Place entry = place_.entry(field.key, field.called, i);
                return Place{entry.path, entry.owned("name")};
            };
            read_text(node[i], place, held[i]);
        }
    }

    void within(Place place, const Json& node, const Field& field, void* object) const {
        if (!node.is_object()) {
            wrong_type(problems_, place.path, place.subject, "an object in braces");
            return;
        }
        Reader(problems_, std::move(place), node, field.inner(), object).read();
    }

    /// Every key that no field asked for.
    void refuse_unknown_keys() {
        std::vector<std::string_view> known;
        for (const Field& field : table_.fields) {
            known.push_back(field.key);
            // Of points the second number is a coordinate and has no key of its own.
            if (field.sort == Sort::exactly_one || field.sort == Sort::either)
                known.push_back(field.second.key);
        }
        for (const auto& [key, value] : node_.items()) {
            if (std::find(known.begin(), known.end(), key) != known.end()) continue;
            const std::string_view near = nearest_spelling(key, known);
            add_problem(problems_,
                        {ProblemCode::unknown_key, place_.path_of(quotable(key)), "",
                         place_.subject + " has a key “" + quotable(key) +
                             "” that this version does not know" +
                             (near.empty() ? "." : "; did you mean “" + std::string(near) + "”?")});
        }
    }

    [[nodiscard]] std::string field_subject(std::string_view key) const {
        return place_.owned("“" + std::string(key) + "”");
    }

    const Json* find(std::string_view key, bool required) {
        const auto at = node_.find(key);
        if (at != node_.end()) return &*at;
        if (required) {
            add_problem(problems_,
                        {ProblemCode::missing_key, place_.path_of(key), "",
                         place_.subject + " lacks its “" + std::string(key) + "”, which must be given."});
        }
        return nullptr;
    }

    /// Is this a list, and no longer than may be? Judged here already, so that a long list costs nothing.
    bool fits(const Field& field, const Json& node) {
        if (!node.is_array()) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a list");
            return false;
        }
        if (node.size() > field.max_count) {
            const std::string limit = "at most " + std::to_string(field.max_count);
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "There are " + std::to_string(node.size()) + ' ' +
                                        std::string(field.many) + "; the limit is " + limit + '.'});
            return false;
        }
        return true;
    }

    bool read_number(const NumberField& field, const Json& node, double& value) {
        return read_number(field, node, value, field.key);
    }
    bool read_number(const NumberField& field, const Json& node, double& value, std::string_view key) {
        if (!node.is_number()) {
            wrong_type(problems_, place_.path_of(key), field_subject(key), "a number");
            return false;
        }
        value = to_si(field, node.get<double>());
        return true;
    }

    bool read_own_text(const Json& node, std::string_view key, std::string& text) {
        return read_text(
            node, [&] { return place_.key(key, field_subject(key)); }, text);
    }

    /// `place` makes the place, when it is needed: most texts are sound.
    template <class Maker>
    bool read_text(const Json& node, const Maker& place, std::string& text) {
        if (!node.is_string()) {
            const Place there = place();
            wrong_type(problems_, there.path, there.subject, "a text");
            return false;
        }
        text = node.get_ref<const std::string&>();
        return true;
    }

    void unknown_word(std::string path, const Field& field, std::string_view text) {
        std::string all;
        for (const FieldWord& known : field.words)
            all.append(all.empty() ? "" : ", ").append(known.word);
        add_problem(problems_, {ProblemCode::unknown_name, std::move(path), all,
                                field_subject(field.key) + " is “" + quotable(text) + "”; it may be one of " +
                                    all + '.'});
    }

    Problems& problems_;
    Place place_;
    const Json& node_;
    const Table& table_;
    void* object_;
};

/// A fault of the reading stands at `path`, above it or below it: then a second complaint there would only
/// confuse.
bool already_told(const Problems& told, const std::string& path) {
    const auto within = [](const std::string& inner, const std::string& outer) {
        return inner.size() > outer.size() && inner.compare(0, outer.size(), outer) == 0 &&
               inner[outer.size()] == '/';
    };
    for (const Problem& problem : told) {
        if (problem.path == path || within(problem.path, path) || within(path, problem.path)) return true;
    }
    return false;
}

Problems check_version(const Json& root) {
    const auto at = root.find("evenfall");
    const std::string limit = std::to_string(document_version);
    if (at == root.end()) {
        return {{ProblemCode::missing_key, "/evenfall", limit,
                 "This is not an Evenfall document: its first key must be “evenfall” with the version, " +
                     limit + '.'}};
    }
    if (!at->is_number() || at->get<double>() != static_cast<double>(document_version)) {
        const std::string found = at->is_number() ? plain_number(at->get<double>()) : "not even a number";
        return {{ProblemCode::unknown_version, "/evenfall", limit,
                 "The document's version is " + found + "; this build reads version " + limit + '.'}};
    }
    return {};
}

} // namespace
} // namespace evenfall::document

namespace evenfall {

Outcome<document::Document> read_document(const std::string& json_text) {
    using namespace document;
    const Outcome<Json> parsed = parse_guarded(json_text);
    if (!parsed.ok()) return parsed.problems();
    const Json& root = *parsed;
    if (!root.is_object()) {
        return Problem{ProblemCode::wrong_type, "", "an object in braces",
                       "The document must be an object in braces."};
    }
    if (Problems problems = check_version(root); !problems.empty()) return problems;

    Document document;
    Problems problems;
    Reader(problems, {"", "The document"}, root, document_table(), &document).read();
    const Problems told = problems;
    for (Problem& problem : check(document)) {
        if (!already_told(told, problem.path)) add_problem(problems, std::move(problem));
    }
    if (!problems.empty()) return problems;
    return document;
}

} // namespace evenfall
