#include "platform/window.hpp"

#include "platform/flavour.hpp"

#include "imgui.h"
#include "imgui_impl_opengl3.h"
#include "imgui_impl_sdl2.h"
#include "imgui_internal.h"

#include <SDL.h>

#include <algorithm>
#include <cfloat>
#include <cmath>

namespace evenfall::shell::platform {

std::unique_ptr<Window> Window::open(const WindowOptions& options, std::string& why) {
    set_sdl_hints();
    if (SDL_Init(SDL_INIT_VIDEO | SDL_INIT_TIMER) != 0) {
        why = SDL_GetError();
        return nullptr;
    }
    set_gl_attributes();
    std::unique_ptr<Window> opened(new Window());
    opened->scale_ = options.scale;
    const double scale = options.scale > 0.0 ? options.scale : 1.0;
    constexpr Uint32 flags = SDL_WINDOW_OPENGL | SDL_WINDOW_RESIZABLE | SDL_WINDOW_ALLOW_HIGHDPI;
    opened->window_ = SDL_CreateWindow(options.title.c_str(), SDL_WINDOWPOS_CENTERED, SDL_WINDOWPOS_CENTERED,
                                       static_cast<int>(std::lround(options.width * scale)),
                                       static_cast<int>(std::lround(options.height * scale)), flags);
    opened->context_ = opened->window_ != nullptr ? SDL_GL_CreateContext(opened->window_) : nullptr;
    if (opened->context_ == nullptr) {
        why = SDL_GetError();
        return nullptr;
    }
    IMGUI_CHECKVERSION();
    ImGui::CreateContext();
    ImGui_ImplSDL2_InitForOpenGL(opened->window_, opened->context_);
    ImGui_ImplOpenGL3_Init(shading_language());
    if (options.scale > 0.0) opened->dpr_ = options.scale;
    return opened;
}

Window::~Window() {
    if (context_ != nullptr && ImGui::GetCurrentContext() != nullptr) {
        ImGui_ImplOpenGL3_Shutdown();
        ImGui_ImplSDL2_Shutdown();
        ImGui::DestroyContext();
    }
    if (context_ != nullptr) SDL_GL_DeleteContext(context_);
    if (window_ != nullptr) SDL_DestroyWindow(window_);
    SDL_Quit();
}

void Window::handle(const SDL_Event& event) {
    pending_.wake();
    const bool finger =
        event.type == SDL_FINGERDOWN || event.type == SDL_FINGERMOTION || event.type == SDL_FINGERUP;
    if (finger) {
        int width = 0;
        int height = 0;
        SDL_GetWindowSize(window_, &width, &height);
        const auto per_px = static_cast<float>((scale_ > 0.0 ? 1.0 / scale_ : 1.0) / text_scale_);
        const float x = event.tfinger.x * static_cast<float>(width) * per_px;
        const float y = event.tfinger.y * static_cast<float>(height) * per_px;
        if (event.type == SDL_FINGERDOWN) gesture_.finger_down(event.tfinger.fingerId, x, y);
        if (event.type == SDL_FINGERMOTION) gesture_.finger_move(event.tfinger.fingerId, x, y);
        if (event.type == SDL_FINGERUP) gesture_.finger_up(event.tfinger.fingerId, x, y);
        return;
    }
    if (event.type == SDL_QUIT) closing_ = true;
    if (event.type == SDL_WINDOWEVENT && event.window.event == SDL_WINDOWEVENT_FOCUS_LOST) gesture_.cancel();
    SDL_Event seen = event;
    const auto in_letters = [this](Sint32 px) { return static_cast<Sint32>(std::lround(px / text_scale_)); };
    if (event.type == SDL_MOUSEMOTION) {
        seen.motion.x = in_letters(event.motion.x);
        seen.motion.y = in_letters(event.motion.y);
    }
    ImGui_ImplSDL2_ProcessEvent(&seen);
}

bool Window::take_events() {
    SDL_Event event;
    while (SDL_PollEvent(&event) != 0)
        handle(event);
    return !closing_;
}

void Window::wait(double most_s) {
    SDL_Event event;
    if (SDL_WaitEventTimeout(&event, static_cast<int>(std::clamp(most_s, 0.001, 3600.0) * 1000.0)) != 0) {
        handle(event);
    } else {
        pending_.wake(1); // the wait is over
    }
}

void Window::feed_fingers(App& app) {
    ImGuiIO& io = ImGui::GetIO();
    for (const PointerEvent& event : gesture_.take_events()) {
        io.AddMouseSourceEvent(ImGuiMouseSource_TouchScreen);
        switch (event.kind) {
        case PointerEvent::Kind::move:
            io.AddMousePosEvent(event.x, event.y);
            break;
        case PointerEvent::Kind::down:
            io.AddMouseButtonEvent(0, true);
            break;
        case PointerEvent::Kind::up:
            io.AddMouseButtonEvent(0, false);
            break;
        case PointerEvent::Kind::leave:
            io.AddMousePosEvent(-FLT_MAX, -FLT_MAX);
            break;
        }
    }
    if (const auto pinch = gesture_.take_pinch()) app.pinch(*pinch);
}

bool Window::draw(App& app) {
    if (lost_ || !pending_.take()) return false;
    feed_fingers(app);
    if (scale_ <= 0.0) {
        int width = 0;
        int height = 0;
        int pixels_w = 0;
        int pixels_h = 0;
        SDL_GetWindowSize(window_, &width, &height);
        SDL_GL_GetDrawableSize(window_, &pixels_w, &pixels_h);
        if (width <= 0 || height <= 0) return false;
        dpr_ = static_cast<double>(pixels_w) / width;
    }
    const double letters_dpr = dpr_ * text_scale_;
    if (std::abs(fonts_dpr_ - letters_dpr) > 0.01) {
        // The first texture is made together with the renderer's other objects; later ones replace it.
        const bool later = fonts_dpr_ > 0.0;
        if (later) ImGui_ImplOpenGL3_DestroyFontsTexture();
        app.rebuild_fonts(letters_dpr);
        if (later) ImGui_ImplOpenGL3_CreateFontsTexture();
        fonts_dpr_ = letters_dpr;
    }
    if (const App::TexturePixels wanted = app.wanted_texture(); wanted.rgba != nullptr) {
        texture_ = make_texture(wanted.rgba, wanted.width, wanted.height, texture_);
        app.give_texture(texture_);
    }
    ImGui_ImplOpenGL3_NewFrame();
    ImGui_ImplSDL2_NewFrame();
    ImGuiIO& io = ImGui::GetIO();
    if (scale_ > 0.0) {
        io.DisplaySize.x /= static_cast<float>(scale_);
        io.DisplaySize.y /= static_cast<float>(scale_);
        io.DisplayFramebufferScale = ImVec2(static_cast<float>(scale_), static_cast<float>(scale_));
    }
    const auto letters = static_cast<float>(text_scale_);
    io.DisplaySize.x /= letters;
    io.DisplaySize.y /= letters;
    io.DisplayFramebufferScale.x *= letters;
    io.DisplayFramebufferScale.y *= letters;
    io.DeltaTime = std::min(io.DeltaTime, 0.05f); // after a pause, time continues without a jump
    ImGui::NewFrame();
    app.frame(now_s());
    ImGui::Render();
    const auto pixels_w = static_cast<int>(io.DisplaySize.x * io.DisplayFramebufferScale.x);
    const auto pixels_h = static_cast<int>(io.DisplaySize.y * io.DisplayFramebufferScale.y);
    ground_ = app.ground();
    clear(pixels_w, pixels_h, ground_);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    SDL_GL_SwapWindow(window_);
    ++frames_;
    // Events that ImGui has queued, and anything that the application has not finished.
    if (app.wants_frames() || ImGui::GetCurrentContext()->InputEventsQueue.Size > 0) pending_.wake(2);
    return true;
}

void Window::set_text_scale(double scale) {
    const double wanted = scale > 0.8 ? std::min(scale, 2.0) : 0.8;
    if (wanted == text_scale_) return;
    text_scale_ = wanted;
    pending_.wake();
}

void Window::set_dpr(double dpr) {
    if (scale_ > 0.0) scale_ = dpr;
    pending_.wake();
}

void Window::context_restored() {
    lost_ = false;
    ImGui_ImplOpenGL3_DestroyDeviceObjects();
    texture_ = 0;
    pending_.wake();
}

double Window::now_s() const {
    return static_cast<double>(SDL_GetTicks64()) / 1000.0;
}

std::string Window::picture() const {
    int width = 0;
    int height = 0;
    SDL_GL_GetDrawableSize(window_, &width, &height);
    // Drawn again: the buffer may have lost the last frame.
    clear(width, height, ground_);
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    const std::vector<unsigned char> pixels = read_pixels(width, height);
    std::string text = "P6\n" + std::to_string(width) + " " + std::to_string(height) + "\n255\n";
    for (int row = height - 1; row >= 0; --row) {
        for (int column = 0; column < width; ++column) {
            const std::size_t at = (static_cast<std::size_t>(row) * static_cast<std::size_t>(width) +
                                    static_cast<std::size_t>(column)) *
                                   4u;
            text.append({static_cast<char>(pixels[at]), static_cast<char>(pixels[at + 1]),
                         static_cast<char>(pixels[at + 2])});
        }
    }
    return text;
}

} // namespace evenfall::shell::platform
