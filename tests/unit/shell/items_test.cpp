#include "platform/pending.hpp"
#include "widgets/items.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall::shell;

TEST_CASE("the list of widgets is that of the last whole frame", "[shell][items]") {
    widgets::Items items;
    items.begin_frame();
    items.record({"lead.plan", 10.0f, 20.0f, 100.0f, 48.0f, true});
    CHECK(items.shown().empty());
    items.finish_frame();
    REQUIRE(items.find("lead.plan") != nullptr);
    CHECK(items.find("lead.plan")->w == 100.0f);
    items.begin_frame();
    CHECK(items.find("lead.plan") != nullptr);
    items.finish_frame();
    CHECK(items.find("lead.plan") == nullptr);
}

TEST_CASE("frames are drawn after an event and then no more", "[shell][pending]") {
    platform::PendingFrames pending;
    while (pending.take()) {
    }
    CHECK(pending.idle());
    pending.wake();
    pending.wake(1); // asks for less: what is due stays due
    int drawn = 0;
    while (pending.take())
        ++drawn;
    CHECK(drawn == platform::PendingFrames::after_event);
    CHECK(pending.idle());
}
