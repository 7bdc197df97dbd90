#include "app/app.hpp"

#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <utility>

using namespace evenfall::shell;
using widgets::Rect;

namespace {

bool inside(const Rect& inner, const Rect& outer) {
    return inner.x >= outer.x && inner.y >= outer.y && inner.right() <= outer.right() + 0.01f &&
           inner.bottom() <= outer.bottom() + 0.01f && inner.w > 0.0f && inner.h > 0.0f;
}

bool apart(const Rect& one, const Rect& other) {
    return one.right() <= other.x || other.right() <= one.x || one.bottom() <= other.y ||
           other.bottom() <= one.y;
}

} // namespace

TEST_CASE("on every size of screen the regions lie inside it and apart from each other", "[shell][regions]") {
    const float sizes[][2] = {{1024, 768},  {1366, 1024}, {1180, 820}, {820, 1180}, {390, 844}, {360, 640},
                              {1920, 1080}, {932, 430},   {592, 288},  {568, 320},  {320, 256}, {180, 320},
                              {240, 427},   {320, 568},   {667, 375},  {640, 360},  {819, 614}, {800, 600}};
    for (const auto& size : sizes) {
        for (const Insets& safe : {Insets{}, Insets{24.0f, 0.0f, 21.0f, 0.0f}}) {
            CAPTURE(size[0], size[1], safe.top);
            const Regions where = regions(size[0], size[1], safe);
            const Rect usable{safe.left, safe.top, size[0] - safe.left - safe.right,
                              size[1] - safe.top - safe.bottom};
            const Rect parts[] = {where.strip, where.sheet, where.panel, where.bar};
            for (int i = 0; i < 4; ++i) {
                CHECK(inside(parts[i], usable));
                for (int j = i + 1; j < 4; ++j)
                    CHECK(apart(parts[i], parts[j]));
            }
            CHECK(inside(where.keypad, where.screen));
            CHECK(where.bar.h >= 44.0f);
        }
    }
}

TEST_CASE("a tablet lying flat has the drawing beside the panel, a phone has it above", "[shell][regions]") {
    const Regions tablet = regions(1024.0f, 768.0f, {});
    CHECK(tablet.sheet.right() < tablet.panel.x);
    CHECK(tablet.sheet.w > tablet.panel.w);
    const Regions phone = regions(390.0f, 844.0f, {});
    CHECK(phone.sheet.bottom() < phone.panel.y);
    CHECK(phone.sheet.h >= 0.3f * 844.0f);
}

TEST_CASE("a tablet lying flat has the panel beside the drawing also with large text", "[shell][regions]") {
    const Regions where = regions(1024.0f / 1.25f, 768.0f / 1.25f, {});
    CHECK(where.sheet.right() < where.panel.x);
    CHECK(where.sheet.w > 400.0f);
    CHECK(where.panel.h > 350.0f);
    CHECK(regions(768.0f, 1024.0f, {}).stacked);
}

TEST_CASE("for the left hand panel and keypad lie at the left of the drawing, as large as at the right",
          "[shell][regions]") {
    for (const auto& size :
         {std::pair{1024.0f, 768.0f}, std::pair{1366.0f, 1024.0f}, std::pair{932.0f, 430.0f}}) {
        CAPTURE(size.first, size.second);
        const Regions right = regions(size.first, size.second, {});
        const Regions left = regions(size.first, size.second, {}, true);
        CHECK(left.panel.right() < left.sheet.x);
        CHECK(left.panel.w == right.panel.w);
        CHECK(left.sheet.w == right.sheet.w);
        CHECK(left.keypad.w == right.keypad.w);
        CHECK(left.keypad.x == left.panel.x);
        CHECK(inside(left.sheet, left.screen));
        CHECK(apart(left.sheet, left.panel));
    }
    const Regions upright = regions(768.0f, 1024.0f, {}, true);
    CHECK(upright.panel.y > upright.sheet.bottom());
    CHECK(upright.panel.x == regions(768.0f, 1024.0f, {}).panel.x);
}

TEST_CASE("a low or enlarged screen leaves room for the panel and for the drawing", "[shell][regions]") {
    const float sizes[][3] = {{360, 640, 200}, {375, 667, 200}, {320, 568, 160}, {592, 288, 160},
                              {568, 320, 190}, {667, 375, 240}, {740, 360, 220}, {240, 427, 125},
                              {320, 256, 120}, {180, 320, 90}};
    for (const auto& size : sizes) {
        CAPTURE(size[0], size[1]);
        const Regions where = regions(size[0], size[1], {});
        CHECK(where.panel.h >= size[2]);
        CHECK(where.panel.w >= std::min(240.0f, size[0] - 85.0f));
        CHECK(where.sheet.h >= 40.0f);
        CHECK(where.sheet.w >= 40.0f);
    }
}

TEST_CASE("screens of usual size are parted as ever", "[shell][regions]") {
    const Regions phone = regions(390.0f, 844.0f, {});
    CHECK(phone.strip.h == 188.0f);
    CHECK(phone.sheet.h == 304.0f);
    CHECK(phone.panel.h == 268.0f);
    const Regions tablet = regions(1024.0f, 768.0f, {});
    CHECK(tablet.strip.h == 88.0f);
    CHECK(tablet.panel.w == 360.0f);
    CHECK(tablet.keypad.w == 360.0f);
    CHECK(tablet.keypad.x == tablet.panel.x);
    CHECK(tablet.panel.h == 576.0f);
}
