#include "document/read.hpp"
#include "document/check.hpp"
#include "document/json_guard.hpp"
#include "document/spelling.hpp"
#include "document/version_1.hpp"
#include "document/walk.hpp"

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

/// Fills one struct from one JSON object. Judges keys and types only: limits are judged afterwards by
/// document::check, over the same table.
class Reader {
public:
    Reader(Problems& problems, Place place, const Json& node)
        : problems_(problems), place_(std::move(place)), node_(node) {}

    template <class T>
    void read(T& object) {
        walk(*this, object);
        refuse_unknown_keys();
    }

    /// The version itself is judged before anything is read. Beside it an editor may keep the address of the
    /// schema; it is not ours to judge.
    void version(std::string_view key, int) {
        find(key);
        if (const Json* schema = find("$schema"); schema != nullptr && !schema->is_string())
            wrong_field("$schema", "a text");
    }
    void number(const NumberField& field, double& held) {
        held = to_si(field, to_trade(field, held));
        if (const Json* node = find(field.key, field.required)) read_number(field, *node, held);
    }
    void optional_number(const NumberField& field, std::optional<double>& held) {
        const Json* node = find(field.key, field.required);
        double value = 0.0;
        if (node != nullptr && read_number(field, *node, value)) held = value;
    }
    void ordinal(const NumberField& field, std::optional<int>& held) {
        const Json* node = find(field.key);
        double value = 0.0;
        if (node == nullptr || !read_number(field, *node, value)) return;
        if (value != std::floor(value) || std::abs(value) > 1e6)
            wrong_field(field.key, "a whole number");
        else
            held = static_cast<int>(value) - 1;
    }

    void text(const TextField& field, std::string& held) { own_text(field.key, held); }
    void wood(std::string_view key, std::string& held) { own_text(key, held); }
    void material(std::string_view key, materials::Use, std::string& held) { own_text(key, held); }

    template <class Words, class E>
    void choice(std::string_view key, const Words& words, E& held) {
        std::string text;
        if (!own_text(key, text)) return;
        for (const auto& known : words) {
            if (known.word == text) {
                held = known.value;
                return;
            }
        }
        unknown_word(place_.path_of(key), key, words, text);
    }

    void yes_no(std::string_view key, bool& held) {
        const Json* node = find(key);
        if (node == nullptr) return;
        if (node->is_boolean())
            held = node->get<bool>();
        else
            wrong_field(key, "true or false");
    }

    template <class Flags, class T>
    void flags(std::string_view key, const Flags& all, T& object) {
        const Json* node = find_list(key, "a list of words");
        if (node == nullptr) return;
        for (const auto& flag : all)
            object.*flag.member = false;
        for (std::size_t i = 0; i < node->size(); ++i) {
            const auto place = [&] {
                return Place{place_.path_of(key) + '/' + std::to_string(i), field_subject(key)};
            };
            std::string text;
            if (!read_text((*node)[i], place, text)) continue;
            const auto flag =
                std::find_if(all.begin(), all.end(), [&](const auto& f) { return f.word == text; });
            if (flag == all.end())
                unknown_word(place().path, key, all, text);
            else
                object.*flag->member = true;
        }
    }

    void exactly_one(const NumberField&, const std::optional<double>&, const NumberField&,
                     const std::optional<double>&) {}

    template <class E>
    void either(const NumberField& a, double& held_a, E word_a, const NumberField& b, double& held_b,
                E word_b, E& which) {
        const bool has_a = node_.contains(a.key);
        const bool has_b = node_.contains(b.key);
        number(a, held_a);
        number(b, held_b);
        if (has_a && has_b) {
            const std::string names = std::string(a.key) + " and " + std::string(b.key);
            add_problem(problems_,
                        {ProblemCode::unknown_key, place_.path_of(b.key), "exactly one of " + names,
                         place_.subject + " give both " + names + "; give one of them."});
        }
        if (has_a || has_b) which = has_a ? word_a : word_b;
    }

    void number_or_points(const PointsField& field, CurvePoints& held) {
        const auto node = node_.find(field.key);
        if (node == node_.end() || !node->is_number())
            return points(field, held, &CurvePoint::x_m, &CurvePoint::value);
        known_.push_back(field.key);
        held.assign(1, {0.0, to_si(field.second, node->get<double>())});
    }

    template <class P>
    void points(const PointsField& field, std::vector<P>& held, double P::*first, double P::*second) {
        const Json* node = find_list(field.key, "a list of points", field.required);
        if (node == nullptr) return;
        if (node->size() > max_curve_points) {
            add_problem(problems_, too_many_points(place_, field, node->size()));
            return;
        }
        held.assign(node->size(), {});
        for (std::size_t i = 0; i < node->size(); ++i) {
            const Json& pair = (*node)[i];
            if (!pair.is_array() || pair.size() != 2 || !pair[0].is_number() || !pair[1].is_number()) {
                const Place there = place_.point(field.key, field.called, i);
                wrong_type(problems_, there.path, there.subject, "a pair of numbers");
                continue;
            }
            held[i].*first = to_si(field.first, pair[0].get<double>());
            held[i].*second = to_si(field.second, pair[1].get<double>());
        }
    }

    template <class T>
    void object(std::string_view key, std::string_view subject, bool required, T& held) {
        static const Json nothing = Json::object();
        const Json* node = find(key, required);
        if (node == nullptr && required) return;
        within(place_.key(key, std::string(subject)), node != nullptr ? *node : nothing, held);
    }

    template <class T>
    void optional_object(std::string_view key, std::string_view called, std::optional<T>& held) {
        const Json* node = find(key);
        if (node == nullptr) return;
        held.reset();
        if (!node->is_null()) within(place_.key(key, place_.owned(called)), *node, held.emplace());
    }

    template <class T>
    void list(const ListField& field, std::vector<T>& held) {
        const Json* node = find_fitting(field, false);
        if (node == nullptr) return;
        held.resize(node->size());
        for (std::size_t i = 0; i < node->size(); ++i)
            within(place_.entry(field.key, field.one, i), (*node)[i], held[i]);
    }

    void names(const ListField& field, std::vector<std::string>& held) {
        const Json* node = find_fitting(field, true);
        if (node == nullptr) return;
        held.resize(node->size());
        for (std::size_t i = 0; i < node->size(); ++i) {
            const auto place = [&] {
                const Place entry = place_.entry(field.key, field.one, i);
                return Place{entry.path, entry.owned("name")};
            };
            read_text((*node)[i], place, held[i]);
        }
    }

private:
    template <class T>
    void within(Place place, const Json& node, T& held) const {
        if (!node.is_object())
            wrong_type(problems_, place.path, place.subject, "an object in braces");
        else
            Reader(problems_, std::move(place), node).read(held);
    }

    /// Every key that no field asked for.
    void refuse_unknown_keys() {
        for (const auto& [key, value] : node_.items()) {
            if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
            const std::string_view near = nearest_spelling(key, known_);
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
    void wrong_field(std::string_view key, const char* wanted) {
        wrong_type(problems_, place_.path_of(key), field_subject(key), wanted);
    }

    const Json* find(std::string_view key, bool required = false) {
        known_.push_back(key);
        const auto at = node_.find(key);
        if (at != node_.end()) return &*at;
        if (required) {
            add_problem(problems_,
                        {ProblemCode::missing_key, place_.path_of(key), "",
                         place_.subject + " lacks its “" + std::string(key) + "”, which must be given."});
        }
        return nullptr;
    }

    const Json* find_list(std::string_view key, const char* wanted, bool required = false) {
        const Json* node = find(key, required);
        if (node == nullptr || node->is_array()) return node;
        wrong_field(key, wanted);
        return nullptr;
    }

    /// A list that is no longer than may be: judged here already, so that a long list costs nothing.
    const Json* find_fitting(const ListField& field, bool required) {
        const Json* node = find_list(field.key, "a list", required);
        if (node == nullptr || node->size() <= field.max_count) return node;
        add_problem(problems_, too_many_entries(place_, field, node->size()));
        return nullptr;
    }

    bool read_number(const NumberField& field, const Json& node, double& value) {
        if (!node.is_number()) {
            wrong_field(field.key, "a number");
            return false;
        }
        value = to_si(field, node.get<double>());
        return true;
    }

    bool own_text(std::string_view key, std::string& text) {
        const Json* node = find(key);
        return node != nullptr && read_text(
                                      *node, [&] { return place_.key(key, field_subject(key)); }, text);
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

    template <class Words>
    void unknown_word(std::string path, std::string_view key, const Words& words, std::string_view text) {
        std::string all;
        for (const auto& known : words)
            all.append(all.empty() ? "" : ", ").append(known.word);
        add_problem(problems_,
                    {ProblemCode::unknown_name, std::move(path), all,
                     field_subject(key) + " is “" + quotable(text) + "”; it may be one of " + all + '.'});
    }

    Problems& problems_;
    Place place_;
    const Json& node_;
    std::vector<std::string_view> known_;
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

/// The document in the words of this version.
Outcome<Json> in_this_version(Json root) {
    const auto at = root.find("evenfall");
    const std::string limit = std::to_string(document_version);
    if (at == root.end()) {
        return Problem{
            ProblemCode::missing_key, "/evenfall", limit,
            "This is not an Evenfall document: its first key must be “evenfall” with the version, " + limit +
                '.'};
    }
    const double version = at->is_number() ? at->get<double>() : 0.0;
    if (version == document_version) return root;
    if (version == 1.0) return from_version_1(std::move(root));
    const std::string found = at->is_number() ? plain_number(version) : "not even a number";
    return Problem{ProblemCode::unknown_version, "/evenfall", "1 to " + limit,
                   "The document's version is " + found + "; this build reads versions 1 to " + limit + '.'};
}

} // namespace
} // namespace evenfall::document

namespace evenfall {

Outcome<document::Document> read_document(const std::string& json_text) {
    using namespace document;
    Outcome<Json> parsed = parse_guarded(json_text);
    if (!parsed.ok()) return parsed.problems();
    if (!parsed->is_object()) {
        return Problem{ProblemCode::wrong_type, "", "an object in braces",
                       "The document must be an object in braces."};
    }
    const Outcome<Json> root = in_this_version(std::move(*parsed));
    if (!root.ok()) return root.problems();

    Document document;
    Problems problems;
    Reader(problems, {"", "The document"}, *root).read(document);
    const Problems told = problems;
    for (Problem& problem : check(document)) {
        if (!already_told(told, problem.path)) add_problem(problems, std::move(problem));
    }
    if (!problems.empty()) return problems;
    return document;
}

} // namespace evenfall
