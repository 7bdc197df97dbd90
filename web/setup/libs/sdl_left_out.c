/* What others ask SDL for and the page's SDL is built without, so that it is not carried along for nothing. */

/* Dear ImGui's backend knows game controllers; a page has none, so that none can be opened and the rest is never asked. */
void* SDL_GameControllerOpen(int index) {
    (void)index;
    return 0;
}
unsigned char SDL_GameControllerGetButton(void* controller, int button) {
    (void)controller;
    (void)button;
    return 0;
}
short SDL_GameControllerGetAxis(void* controller, int axis) {
    (void)controller;
    (void)axis;
    return 0;
}

/* Dear ImGui asks this of a renderer that was given to it; the page gives it none. */
int SDL_GetRendererOutputSize(void* renderer, int* width, int* height) {
    (void)renderer;
    (void)width;
    (void)height;
    return -1;
}

/* SDL looks OpenGL functions up by name for uses that the page has not. Emscripten's own table of them would bring every
   function of OpenGL ES 2 and 3 into the page; Dear ImGui calls the few it needs directly. */
void* eglGetProcAddress(const char* name) {
    (void)name;
    return 0;
}
