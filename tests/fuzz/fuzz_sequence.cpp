// Any bytes as a builder's way with one lure: readings, advice taken whole or hole by hole, ticks, edits,
// undo and redo, saved and opened again. Whatever comes after what, advice is safe, and nothing is lost.

#include "fuzz/advice_laws.hpp"
#include "fuzz/bench_steps.hpp"
#include "state/bench.hpp"

#include <utility>

namespace {

using namespace evenfall;
using shell::state::Edit;

/// The lure's session on the page, and every document it should be able to go back to, written.
class Bench {
public:
    explicit Bench(document::Document first) : session_(std::move(first)) { texts_.push_back(text()); }

    [[nodiscard]] const document::Document& document() const { return session_.kept(); }

    /// False where it is refused; then nothing has changed.
    bool change(const Edit& edit) {
        const bool taken = session_.apply({"", edit});
        if (!taken) fuzz::must_explain(session_.problems());
        note(taken);
        return taken;
    }

    void plan() {
        if (!session_.plan_lead()) return fuzz::must_explain(session_.problems());
        const document::Document lying = document::as_it_lies(document());
        fuzz::must_keep_work(lying, session_.offer()->document.holes, false);
        session_.keep_offer();
        note(true);
    }

    void undo() {
        const bool can = now_ > 0;
        fuzz::must(session_.history().can_undo() == can, "what was done can be undone");
        session_.undo();
        if (can) --now_;
        fuzz::must(text() == texts_[now_], "undo gives back the same document");
    }

    void redo() {
        const bool can = now_ + 1 < texts_.size();
        fuzz::must(session_.history().can_redo() == can, "what was undone can be done again");
        session_.redo();
        if (can) ++now_;
        fuzz::must(text() == texts_[now_], "redo gives back the same document");
    }

    /// As another would open it; then nothing has changed.
    void share_and_open() {
        const std::string link = write_link(document());
        if (link.size() > document::max_link_bytes) return;
        fuzz::must(session_.open_link(link), "a lure that was shared can be opened");
        fuzz::must(text() == texts_[now_], "shared and opened it is the same");
    }

    /// As it is read from a file; there is nothing to undo then.
    void save_and_open() {
        const Outcome<document::Document> read = read_document(text());
        fuzz::must(read.ok() && evaluate(*read).ok(), "a lure that was saved can be opened");
        session_ = shell::state::Session(*read);
        fuzz::must(text() == texts_[now_], "opened again it is the same");
        texts_ = {text()};
        now_ = 0;
    }

private:
    [[nodiscard]] std::string text() const { return write_document(session_.kept()); }

    void note(bool taken) {
        std::string now = text();
        fuzz::must(taken || now == texts_[now_], "what is refused changes nothing");
        if (now == texts_[now_]) return;
        texts_.resize(now_ + 1);
        texts_.push_back(std::move(now));
        ++now_;
    }

    shell::state::Session session_;
    std::vector<std::string> texts_;
    std::size_t now_ = 0;
};

void tick(Bench& bench, fuzz::Bytes& bytes) {
    if (bench.document().holes.empty()) return;
    const std::size_t index = bytes.below(bench.document().holes.size());
    const document::Hole& hole = bench.document().holes[index];
    if (hole.depth_m <= 0.0) return;
    const bool back = bytes.once_in(16); // ticked by mistake
    const auto use = back                                     ? document::HoleUse::ballast
                     : hole.use == document::HoleUse::ballast ? document::HoleUse::drilled
                                                              : document::HoleUse::leaded;
    bench.change(shell::state::mark_hole(static_cast<int>(index), use));
}

DoNow advice_for(const document::Document& document) {
    const Outcome<DoNow> now = do_now(document);
    fuzz::must(now.ok(), "a lure that can be built gets advice");
    fuzz::must_be_sound(*now);
    fuzz::must_be_safe(document, *now);
    return *now;
}

/// Followed to the letter it is all there is to do, until something new is read.
void must_be_done(const DoNow& taken, const DoNow& next) {
    fuzz::must(!taken.met || next.nothing_to_do,
               "once advice that meets all is taken, nothing is to be done");
    constexpr double some_kg = 5e-6;
    for (const HoleChange& was : taken.changes) {
        for (const HoleChange& is : next.changes) {
            const bool back = is.hole == was.hole && is.change_kg * was.change_kg < 0.0;
            fuzz::must(!back || std::abs(is.change_kg) < 0.5 * std::abs(was.change_kg) + some_kg,
                       "advice that was taken is not taken back");
        }
    }
}

void take_advice(Bench& bench, fuzz::Bytes& bytes) {
    const document::Document before = bench.document();
    const DoNow now = advice_for(before);
    std::optional<int> hole;
    if (bytes.yes() && !now.holes.empty()) hole = now.holes[bytes.below(now.holes.size())].hole;
    const document::Document after = with_advice(before, now, hole);
    fuzz::must_keep_the_rest(before, after);
    fuzz::must_keep_work(document::as_it_lies(before), after.holes, now.lead_is_in);
    const Outcome<Evaluation> was = evaluate(before);
    const bool taken = bench.change(shell::state::done_now(now, hole));
    if (hole) return; // the others' turn comes next; till then two may be in each other's way
    fuzz::must(taken, "advice can be taken");
    const Outcome<Evaluation> is = evaluate(after);
    fuzz::must(is.ok() && fuzz::hole_warnings(*is) <= fuzz::hole_warnings(*was),
               "advice drills into nothing that is built in");
    must_be_done(now, advice_for(bench.document()));
}

void next_lure(Bench& bench, bool of_recipe) {
    const auto made = of_recipe ? for_next_lure(bench.document()) : corrected(bench.document());
    fuzz::must(made.ok(), "what was read can be carried over");
    fuzz::must(bench.change([&](const document::Document&) { return *made; }),
               "what was carried over can be built");
}

void step(Bench& bench, fuzz::BenchReadings& readings, fuzz::Bytes& bytes) {
    switch (bytes.below(16)) {
    case 0:
    case 1:
    case 2:
    case 3:
        if (const auto reading = readings.take(bench.document()))
            bench.change(shell::state::add_reading(*reading));
        break;
    case 4:
    case 5:
    case 6:
    case 7:
        take_advice(bench, bytes);
        break;
    case 8:
    case 9:
        tick(bench, bytes);
        break;
    case 10: {
        if (bench.document().log.empty()) break;
        const int reading = static_cast<int>(bytes.below(bench.document().log.size()));
        bench.change(bytes.yes() ? shell::state::toggle_excluded(reading)
                                 : shell::state::toggle_stands(reading));
        break;
    }
    case 11:
    case 12:
        bench.change(fuzz::BenchEdits(bytes).draw(bench.document()));
        break;
    case 13:
        bytes.yes() ? bench.undo() : bench.redo();
        break;
    case 14:
        bench.plan();
        break;
    default:
        switch (bytes.below(4)) {
        case 0:
            bench.share_and_open();
            break;
        case 1:
            bench.save_and_open();
            break;
        case 2:
            next_lure(bench, bytes.yes());
            break;
        default:
            break; // looked at once more
        }
        break;
    }
}

/// Of the document as it is, whatever led there.
void must_hold(const document::Document& document, bool ask_all) {
    fuzz::must_keep(document);
    if (!ask_all) return;
    const Outcome<Uncertainty> known = uncertainty(document);
    fuzz::must(known.ok(), "what can be built can be told how sure it is");
    fuzz::must_be_finite(*known);
    advice_for(document);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    constexpr std::size_t most_steps = 12;
    fuzz::Bytes bytes(data, size);
    const std::size_t steps = 1 + bytes.below(most_steps);
    const unsigned truth = bytes.byte();
    const auto lure = fuzz::drawn_lure(bytes);
    if (!lure) return 0;
    Bench bench(*lure);
    fuzz::BenchReadings readings(bytes, truth);
    for (std::size_t k = 0; k < steps; ++k) {
        step(bench, readings, bytes);
        must_hold(bench.document(), k + 1 == steps || bytes.once_in(4));
    }
    return 0;
}
