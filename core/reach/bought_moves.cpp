// What is bought, mixed or cast: wood, ballast metal, hooks, coats, the soft tail.

#include "bench/other_material.hpp"
#include "document/scale.hpp"
#include "materials/solids.hpp"
#include "materials/tackle.hpp"
#include "materials/woods.hpp"
#include "reach/costs.hpp"
#include "reach/hooks.hpp"
#include "reach/moves.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

namespace {

constexpr int most_hook_steps = 3;
constexpr double tail_step_m = 1e-3;
constexpr double most_tail_share = 0.4; ///< of its length, either way

Move single(Kind kind, std::function<void(document::Document&)> change, Sentence says) {
    Move m;
    m.kind = kind;
    m.once = cost_of(kind).once;
    m.apply = [change = std::move(change)](document::Document& d, int) { change(d); };
    m.says = [says = std::move(says)](int) { return says; };
    return m;
}

void add_woods(const Piece& piece, std::vector<Move>& out) {
    const document::Wood& wood = piece.document.wood;
    const materials::Wood* own = materials::find_wood(wood.species);
    const std::string own_name(own == nullptr ? std::string_view(wood.species) : own->name);
    for (const materials::Wood& other : materials::woods()) {
        if (other.id == wood.species) continue;
        Move m = single(
            Kind::other_wood, [&other](document::Document& d) { d = bench::in_wood(std::move(d), other.id); },
            std::string(other.name) + " instead of " + own_name + ", another board");
        const double off_kg_m3 =
            materials::wood_density_kg_m3(other, wood.moisture_percent) - piece.inputs.wood_kg_m3;
        m.once += cost_of(m.kind).each * std::abs(off_kg_m3) / 100.0;
        out.push_back(std::move(m));
    }
}

void add_metals(const Piece& piece, std::vector<Move>& out) {
    if (piece.candidates.empty()) return;
    const std::string& own = piece.candidates.front().material;
    for (const materials::Solid& other : materials::solids()) {
        if (!other.serves(materials::Use::ballast) || other.id == own) continue;
        out.push_back(single(
            Kind::other_metal,
            [&other](document::Document& d) { d = bench::with_metal(std::move(d), other.id); },
            std::string(other.name) + " instead of " + materials::name_of(own) + " in the holes"));
    }
}

std::string hook_says(const document::Document& d, const std::vector<std::size_t>& hooks, int by) {
    const auto table = materials::hooks();
    std::string text;
    for (const std::size_t i : hooks) {
        const int was = nearest_hook(d.parts[i]);
        text += text.empty() ? "" : ", ";
        text += (d.parts[i].name.empty() ? "Part " + std::to_string(i + 1) : "“" + d.parts[i].name + "”") +
                ": hook of size " + std::string(table[static_cast<std::size_t>(was + by)].size) +
                " instead of " + std::string(table[static_cast<std::size_t>(was)].size);
    }
    return text;
}

void add_hook_set(const Piece& piece, const std::vector<std::size_t>& hooks, std::vector<Move>& out) {
    const document::Document& document = piece.document;
    const int last = static_cast<int>(materials::hooks().size()) - 1;
    for (const int sign : {1, -1}) {
        Move m;
        m.kind = Kind::hook_size;
        m.most = most_hook_steps;
        for (const std::size_t i : hooks) {
            const int was = nearest_hook(document.parts[i]);
            m.most = std::min(m.most, sign > 0 ? last - was : was);
        }
        if (m.most < 1) continue;
        const double count = static_cast<double>(hooks.size());
        m.once = cost_of(m.kind).once * count;
        m.each = cost_of(m.kind).each * count;
        m.apply = [hooks, sign](document::Document& d, int steps) {
            for (const std::size_t i : hooks)
                change_hook(d.parts[i], sign * steps);
        };
        m.says = [&document, hooks, sign](int steps) {
            return Sentence(hook_says(document, hooks, sign * steps));
        };
        out.push_back(std::move(m));
    }
}

void add_hooks(const Piece& piece, std::vector<Move>& out) {
    std::vector<std::size_t> hooks;
    for (std::size_t i = 0; i < piece.document.parts.size(); ++i) {
        const document::Part& part = piece.document.parts[i];
        if (is_hook(part)) hooks.push_back(i);
    }
    if (hooks.size() > 1) add_hook_set(piece, hooks, out);
    for (const std::size_t i : hooks)
        add_hook_set(piece, {i}, out);
}

bool is_clear_film(const document::Coat& coat) {
    return coat.stage == Stage::clear_coated && coat.kind == document::CoatKind::film;
}

void add_coats(const Piece& piece, std::vector<Move>& out) {
    const std::vector<document::Coat>& coats = piece.document.coats;
    if (!piece.is_wood && piece.done >= Stage::clear_coated) return;
    const auto last = std::find_if(coats.rbegin(), coats.rend(), is_clear_film);
    // Anywhere but at the end the coats behind it would change their numbers, and corrections go by them.
    if (last != coats.rbegin() || coats.empty()) return;
    const std::string name = last->name.empty() ? "the last one" : "“" + last->name + "”";
    if (coats.size() < document::max_coats)
        out.push_back(single(
            Kind::coat_more,
            [](document::Document& d) {
                document::Coat again = d.coats.back();
                again.note.clear();
                d.coats.push_back(std::move(again));
            },
            "One coat more, like " + name));
    if (std::count_if(coats.begin(), coats.end(), is_clear_film) < 2) return;
    const int index = static_cast<int>(coats.size()) - 1;
    out.push_back(single(
        Kind::coat_less,
        [index](document::Document& d) {
            d.coats.pop_back();
            std::erase_if(d.corrections, [index](const document::Correction& c) {
                return c.of == document::Cause::coat_amount && c.item == index;
            });
        },
        "One coat less: without " + name));
}

void add_tail(const Piece& piece, std::vector<Move>& out) {
    if (!piece.document.tail) return;
    const double length_m = piece.document.tail->back.back().x_m;
    for (const double sign : {1.0, -1.0}) {
        Move m;
        m.kind = Kind::tail_size;
        m.most = static_cast<int>(most_tail_share * length_m / tail_step_m);
        m.once = cost_of(m.kind).once;
        m.each = cost_of(m.kind).each * tail_step_m * 1e3;
        m.apply = [=](document::Document& d, int steps) {
            const double k = 1.0 + sign * steps * tail_step_m / length_m;
            document::stretch_tail(*d.tail, k, k, 1.0);
        };
        m.says = [=](int steps) {
            return Sentence("Soft tail ") + length_text(steps * tail_step_m, 0) +
                   (sign > 0.0 ? " longer" : " shorter") + ", its height in proportion";
        };
        out.push_back(std::move(m));
    }
}

} // namespace

void add_bought_moves(const Piece& piece, std::vector<Move>& out) {
    if (piece.is_wood) add_woods(piece, out);
    add_metals(piece, out);
    add_hooks(piece, out);
    add_coats(piece, out);
    add_tail(piece, out);
}

} // namespace evenfall::reach
