#include "evenfall.hpp"
#include "preset/check.hpp"
#include "preset/field_table.hpp"
#include "preset/json_guard.hpp"
#include "preset/spelling.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <functional>

namespace evenfall::preset {
namespace {

using Json = nlohmann::json;

template <class U>
void read_object(Problems& problems, Place place, const Json& node, U& object);

void wrong_type(Problems& problems, std::string path, const std::string& subject, const std::string& wanted) {
    add_problem(problems, {ProblemCode::wrong_type, std::move(path), wanted, subject + " must be " + wanted + '.'});
}

/// Fills one struct from one JSON object; see preset/field_table.hpp for the calls. Judges keys and types only:
/// limits are judged afterwards by preset::check, over the same table.
template <class T>
class Reader {
public:
    Reader(Problems& problems, Place place, const Json& node, T& object)
        : problems_(problems), place_(std::move(place)), node_(node), object_(object) {}

    void version(std::string_view key, int) { known_.push_back(key); }

    template <class A>
    void number(const NumberField& field, A at) {
        double& value = std::invoke(at, object_);
        value = to_si(field, to_trade(field, value));
        if (const Json* node = find(field.key, field.required)) read_number(field, *node, field.key, place_, value);
    }

    template <class A>
    void optional_number(const NumberField& field, A at) {
        const Json* node = find(field.key, field.required);
        double value = 0.0;
        if (node != nullptr && read_number(field, *node, field.key, place_, value)) std::invoke(at, object_) = value;
    }

    template <class A>
    void ordinal(const NumberField& field, A at) {
        const Json* node = find(field.key, field.required);
        double value = 0.0;
        if (node == nullptr || !read_number(field, *node, field.key, place_, value)) return;
        if (value != std::floor(value) || std::abs(value) > 1e6) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a whole number");
            return;
        }
        std::invoke(at, object_) = static_cast<int>(value) - 1;
    }

    template <class A>
    void text(const TextField& field, A at) {
        if (const Json* node = find(field.key)) read_text(*node, field_place(field.key), std::invoke(at, object_));
    }

    template <class A>
    void wood(std::string_view key, A at) {
        text({key, key}, at);
    }

    template <class A>
    void material(std::string_view key, materials::Use, A at) {
        text({key, key}, at);
    }

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        const Json* node = find(key);
        std::string word;
        if (node == nullptr || !read_text(*node, field_place(key), word)) return;
        for (const auto& known : words) {
            if (known.word == word) {
                std::invoke(at, object_) = known.value;
                return;
            }
        }
        unknown_word(place_.path_of(key), key, word, words);
    }

    template <class A>
    void yes_no(std::string_view key, A at) {
        const Json* node = find(key);
        if (node == nullptr) return;
        if (const auto* held = node->template get_ptr<const Json::boolean_t*>()) std::invoke(at, object_) = *held;
        else wrong_type(problems_, place_.path_of(key), field_subject(key), "true or false");
    }

    template <class Flags>
    void flags(std::string_view key, const Flags& all) {
        const Json* node = find(key);
        if (node == nullptr) return;
        if (!node->is_array()) {
            wrong_type(problems_, place_.path_of(key), field_subject(key), "a list of words");
            return;
        }
        for (const auto& flag : all) object_.*flag.member = false;
        for (std::size_t i = 0; i < node->size(); ++i) {
            const auto place = [&] { return Place{place_.path_of(key) + '/' + std::to_string(i), field_subject(key)}; };
            std::string word;
            if (!read_text((*node)[i], place, word)) continue;
            bool found = false;
            for (const auto& flag : all) {
                if (flag.word != word) continue;
                object_.*flag.member = true;
                found = true;
            }
            if (!found) unknown_word(place().path, key, word, all);
        }
    }

    template <class A, class B>
    void exactly_one(const NumberField& field_a, A a, const NumberField& field_b, B b) {
        optional_number(field_a, a);
        optional_number(field_b, b);
    }

    template <class A, class B, class W, class E>
    void either(const NumberField& field_a, A a, E word_a, const NumberField& field_b, B b, E word_b, W which) {
        const bool has_a = node_.find(field_a.key) != node_.end();
        const bool has_b = node_.find(field_b.key) != node_.end();
        number(field_a, a);
        number(field_b, b);
        if (has_a && has_b) {
            const std::string names = std::string(field_a.key) + " and " + std::string(field_b.key);
            add_problem(problems_, {ProblemCode::unknown_key, place_.path_of(field_b.key), "exactly one of " + names,
                                    place_.subject + " give both " + names + "; give one of them."});
        }
        if (has_a) std::invoke(which, object_) = word_a;
        else if (has_b) std::invoke(which, object_) = word_b;
    }

    template <class A>
    void number_or_points(const PointsField& field, A at) {
        const Json* node = find(field.key, field.required);
        if (node == nullptr) return;
        if (node->is_number()) {
            double value = 0.0;
            read_number(field.second, *node, field.key, place_, value);
            std::invoke(at, object_) = {CurvePoint{0.0, value}};
        } else {
            read_points(field, *node, std::invoke(at, object_), &CurvePoint::x_m, &CurvePoint::value);
        }
    }

    template <class A, class F, class S>
    void points(const PointsField& field, A at, F first, S second) {
        if (const Json* node = find(field.key, field.required)) read_points(field, *node, std::invoke(at, object_), first, second);
    }

    template <class A>
    void object(std::string_view key, std::string_view subject, A at, bool required = false) {
        static const Json nothing = Json::object();
        const Json* node = find(key, required);
        if (node == nullptr && required) return;
        read_object(problems_, place_.key(key, std::string(subject)), node != nullptr ? *node : nothing, std::invoke(at, object_));
    }

    template <class A>
    void optional_object(std::string_view key, std::string_view called, A at) {
        const Json* node = find(key);
        auto& held = std::invoke(at, object_);
        if (node == nullptr) return;
        if (node->is_null()) {
            held.reset();
            return;
        }
        held.emplace();
        read_object(problems_, place_.key(key, place_.owned(called)), *node, *held);
    }

    template <class A>
    void list(const ListField& field, A at) {
        const Json* node = find_list(field);
        if (node == nullptr) return;
        auto& held = std::invoke(at, object_);
        held.resize(node->size());
        for (std::size_t i = 0; i < node->size(); ++i) read_object(problems_, place_.entry(field, i), (*node)[i], held[i]);
    }

    template <class A>
    void names(const ListField& field, A at) {
        const Json* node = find_list(field, true);
        if (node == nullptr) return;
        auto& held = std::invoke(at, object_);
        held.resize(node->size());
        for (std::size_t i = 0; i < node->size(); ++i) {
            const auto place = [&] { return Place{place_.entry(field, i).path, place_.entry(field, i).owned("name")}; };
            read_text((*node)[i], place, held[i]);
        }
    }

    /// Called after the walk: every key that no field asked for.
    void refuse_unknown_keys() {
        for (const auto& [key, value] : node_.items()) {
            if (std::find(known_.begin(), known_.end(), key) != known_.end()) continue;
            const std::string_view near = nearest_spelling(key, known_);
            add_problem(problems_, {ProblemCode::unknown_key, place_.path_of(quotable(key)), "",
                                    place_.subject + " has a key “" + quotable(key) + "” that this version does not know" +
                                        (near.empty() ? "." : "; did you mean “" + std::string(near) + "”?")});
        }
    }

private:
    [[nodiscard]] std::string field_subject(std::string_view key) const {
        return place_.owned("“" + std::string(key) + "”");
    }

    const Json* find(std::string_view key, bool required = false) {
        known_.push_back(key);
        const auto at = node_.find(key);
        if (at != node_.end()) return &*at;
        if (required) {
            add_problem(problems_, {ProblemCode::missing_key, place_.path_of(key), "",
                                    place_.subject + " lacks its “" + std::string(key) + "”, which must be given."});
        }
        return nullptr;
    }

    const Json* find_list(const ListField& field, bool required = false) {
        const Json* node = find(field.key, required);
        if (node == nullptr) return nullptr;
        if (!node->is_array()) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a list");
            return nullptr;
        }
        // Judged here already, so that a long list costs nothing.
        if (node->size() > field.max_count) {
            const std::string limit = "at most " + std::to_string(field.max_count);
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "There are " + std::to_string(node->size()) + ' ' + std::string(field.many) +
                                        "; the limit is " + limit + '.'});
            return nullptr;
        }
        return node;
    }

    bool read_number(const NumberField& field, const Json& node, std::string_view key, const Place& place, double& value) {
        if (!node.is_number()) {
            wrong_type(problems_, place.path_of(key), place.owned("“" + std::string(key) + "”"), "a number");
            return false;
        }
        value = to_si(field, node.get<double>());
        return true;
    }

    /// Makes the place of one key, when it is needed: most keys are sound.
    [[nodiscard]] auto field_place(std::string_view key) const {
        return [this, key] { return place_.key(key, field_subject(key)); };
    }

    template <class Maker>
    bool read_text(const Json& node, const Maker& place, std::string& text) {
        const auto* held = node.get_ptr<const Json::string_t*>();
        if (held == nullptr) {
            const Place there = place();
            wrong_type(problems_, there.path, there.subject, "a text");
            return false;
        }
        text = *held;
        return true;
    }

    template <class Words>
    void unknown_word(std::string path, std::string_view key, std::string_view word, const Words& words) {
        std::string all;
        for (const auto& known : words) all.append(all.empty() ? "" : ", ").append(known.word);
        add_problem(problems_, {ProblemCode::unknown_name, std::move(path), all,
                                field_subject(key) + " is “" + quotable(word) + "”; it may be one of " + all + '.'});
    }

    template <class Points, class F, class S>
    void read_points(const PointsField& field, const Json& node, Points& held, F first, S second) {
        if (!node.is_array()) {
            wrong_type(problems_, place_.path_of(field.key), field_subject(field.key), "a list of points");
            return;
        }
        if (node.size() > max_curve_points) {
            const std::string limit = std::to_string(field.min_count) + " to " + std::to_string(max_curve_points) + " points";
            add_problem(problems_, {ProblemCode::too_large, place_.path_of(field.key), limit,
                                    "The " + std::string(field.called) + " has " + counted(node.size(), "point") +
                                        "; the limit is " + limit + '.'});
            return;
        }
        held.clear();
        for (std::size_t i = 0; i < node.size(); ++i) {
            const Json& pair = node[i];
            typename Points::value_type point{};
            if (!pair.is_array() || pair.size() != 2 || !pair[0].is_number() || !pair[1].is_number()) {
                const Place there = place_.point(field, i);
                wrong_type(problems_, there.path, there.subject, "a pair of numbers");
            } else {
                std::invoke(first, point) = to_si(field.first, pair[0].template get<double>());
                std::invoke(second, point) = to_si(field.second, pair[1].template get<double>());
            }
            held.push_back(point);
        }
    }

    Problems& problems_;
    Place place_;
    const Json& node_;
    T& object_;
    std::vector<std::string_view> known_;
};

template <class U>
void read_object(Problems& problems, Place place, const Json& node, U& object) {
    if (!node.is_object()) {
        wrong_type(problems, place.path, place.subject, "an object in braces");
        return;
    }
    Reader<U> reader(problems, std::move(place), node, object);
    describe(reader, Of<U>{});
    reader.refuse_unknown_keys();
}

/// A fault of the reading stands at `path`, above it or below it: then a second complaint there would only confuse.
bool already_told(const Problems& told, const std::string& path) {
    const auto within = [](const std::string& inner, const std::string& outer) {
        return inner.size() > outer.size() && inner.compare(0, outer.size(), outer) == 0 && inner[outer.size()] == '/';
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
                 "This is not an Evenfall document: its first key must be “evenfall” with the version, " + limit + '.'}};
    }
    if (!at->is_number() || at->get<double>() != static_cast<double>(document_version)) {
        const std::string found = at->is_number() ? plain_number(at->get<double>()) : "not even a number";
        return {{ProblemCode::unknown_version, "/evenfall", limit,
                 "The document's version is " + found + "; this build reads version " + limit + '.'}};
    }
    return {};
}

}  // namespace
}  // namespace evenfall::preset

namespace evenfall {

Outcome<preset::Document> read_document(const std::string& json_text) {
    using namespace preset;
    const Outcome<Json> parsed = parse_guarded(json_text);
    if (!parsed.ok()) return parsed.problems();
    const Json& root = *parsed;
    if (!root.is_object()) {
        return Problem{ProblemCode::wrong_type, "", "an object in braces", "The document must be an object in braces."};
    }
    if (Problems problems = check_version(root); !problems.empty()) return problems;

    Document document;
    Problems problems;
    read_object(problems, {"", "The document"}, root, document);
    const Problems told = problems;
    for (Problem& problem : check(document)) {
        if (!already_told(told, problem.path)) add_problem(problems, std::move(problem));
    }
    if (!problems.empty()) return problems;
    return document;
}

}  // namespace evenfall
