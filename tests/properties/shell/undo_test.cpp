// The history of a bench under edits at random; a failure names the seed.

#include "bench/uncertainty/random.hpp"
#include "document/write.hpp"
#include "state/edits.hpp"
#include "state/session.hpp"
#include "state/session_json.hpp"
#include "support/random_lures.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using namespace evenfall::shell::state;

namespace {

/// A change at random, some of which the core refuses.
Change change(bench::Random& random) {
    const auto pick = random.next() % 6;
    const double u = random.uniform();
    switch (pick) {
    case 0:
        return {"Hole", on_hole(0, [u](document::Hole& h) { h.x_m += 0.02 * (u - 0.5); })};
    case 1:
        return {"Wood",
                on_document([u](document::Document& d) { d.wood.density_kg_m3 = 100.0 + 900.0 * u; })};
    case 2:
        return {"Part", on_part(0, [u](document::Part& p) { p.mass_kg = 0.004 * u; })};
    case 3:
        return {"Length", scale_whole(0.05 + 0.25 * u)};
    case 4:
        return {"Joint", on_joint(0, [u](document::Joint& j) { j.gap_m = 0.0001 + 0.004 * u; })};
    default:
        return {"Water",
                on_document([u](document::Document& d) { d.water.temperature_c = -2.0 + 44.0 * u; })};
    }
}

} // namespace

TEST_CASE("undo and redo walk one and the same line of documents and answers, whatever was tried between",
          "[properties][random][shell]") {
    for (std::uint64_t seed = 0; seed < 200; ++seed) {
        INFO("seed " << seed);
        bench::Random random(501, seed);
        Session session(support::RandomLures(seed).next().document);
        // What was kept, and what it answered, as a list of one's own.
        std::vector<std::pair<std::string, double>> line;
        std::size_t at = 0;
        const auto now = [&] {
            return std::pair{write_document(session.kept()), session.evaluation()->answers.in_water.kg};
        };
        line.push_back(now());
        for (int n = 0; n < 20; ++n) {
            const double u = random.uniform();
            if (u < 0.2) {
                session.undo();
                at -= at > 0 ? 1 : 0;
            } else if (u < 0.35) {
                session.redo();
                at += at + 1 < line.size() ? 1 : 0;
            } else if (u < 0.5) {
                Change held = change(random);
                held.finished = false;
                session.apply(held);
                session.abandon();
            } else {
                const unsigned before = session.revision();
                const bool taken = session.apply(change(random));
                CHECK(taken == session.problems().empty());
                if (session.revision() != before) {
                    line.resize(at + 1);
                    line.push_back(now());
                    ++at;
                }
            }
            REQUIRE(now() == line[at]);
        }
        while (session.history().can_undo())
            session.undo();
        CHECK(now() == line.front());
        while (session.history().can_redo())
            session.redo();
        CHECK(now() == line.back());
    }
}

TEST_CASE("a history kept with its lure comes back whole, whatever was drawn and wherever undo had gone",
          "[properties][random][shell]") {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        INFO("seed " << seed);
        bench::Random random(502, seed);
        Session session(support::RandomLures(seed).next().document);
        for (int n = 0; n < 12; ++n) {
            if (random.uniform() < 0.25)
                session.undo();
            else
                session.apply(change(random));
        }
        Session again(new_lure());
        REQUIRE(restore_session(again, write_session(session)).empty());
        REQUIRE(again.history().size() == session.history().size());
        while (session.history().can_undo()) {
            session.undo();
            again.undo();
        }
        for (std::size_t n = 0; n < session.history().size(); ++n) {
            REQUIRE(write_document(again.kept()) == write_document(session.kept()));
            REQUIRE(again.history().redo_label() == session.history().redo_label());
            session.redo();
            again.redo();
        }
    }
}
