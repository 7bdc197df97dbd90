// What the loader of the compiled code offers it instead of Emscripten's own.
//
// The page asks for each frame itself and never fills the screen or catches the pointer. Emscripten's loop, its reader of
// pictures and sounds and its full screen would be a fifth of the loader; SDL only needs to find something under their names.

mergeInto(LibraryManager.library, {
  /** Calls `frame` once, before the browser paints the next time. */
  ef_next_frame__deps: ["$getWasmTableEntry"],
  ef_next_frame: function (frame) {
    requestAnimationFrame(() => getWasmTableEntry(frame)());
  },

  /** Calls `due` with `argument` in so many milliseconds. */
  ef_later__deps: ["$getWasmTableEntry"],
  ef_later: function (due, argument, milliseconds) {
    setTimeout(() => getWasmTableEntry(due)(argument), milliseconds);
  },

  // Before Dear ImGui draws it asks what was set, so as to set it back. Nobody else draws on this surface; and each such question
  // waits until the graphics card has drawn all that it was given: nine tenths of a frame where a processor draws. So what is
  // set back is what every frame may begin with.
  glGetIntegerv__deps: [],
  glGetIntegerv: function (asked, into) {
    const slot = into >> 2;
    switch (asked) {
      case 0x0ba2: // VIEWPORT
      case 0x0c10: // SCISSOR_BOX
        HEAP32.fill(0, slot, slot + 4);
        break;
      case 0x84e0: // ACTIVE_TEXTURE: TEXTURE0
        HEAP32[slot] = 0x84c0;
        break;
      case 0x8009: // BLEND_EQUATION_RGB: FUNC_ADD
      case 0x883d: // BLEND_EQUATION_ALPHA
        HEAP32[slot] = 0x8006;
        break;
      case 0x821b: // MAJOR_VERSION of OpenGL ES
        HEAP32[slot] = 3;
        break;
      default: // bindings: nothing; factors of blending: none; MINOR_VERSION and NUM_EXTENSIONS: 0
        HEAP32[slot] = 0;
    }
  },
  glIsEnabled__deps: [],
  glIsEnabled: function () {
    return 0;
  },

  $Browser__deps: [],
  $Browser__postset: "",
  $Browser: { moduleContextCreatedCallbacks: [] },

  // SDL sets how many frames to wait between two; the browser paces ours.
  emscripten_set_main_loop_timing__deps: [],
  emscripten_set_main_loop_timing: function () {
    return 0;
  },

  // −1 is EMSCRIPTEN_RESULT_NOT_SUPPORTED.
  emscripten_request_fullscreen_strategy__deps: [],
  emscripten_request_fullscreen_strategy: function () {
    return -1;
  },
  emscripten_exit_fullscreen__deps: [],
  emscripten_exit_fullscreen: function () {
    return -1;
  },
  emscripten_request_pointerlock__deps: [],
  emscripten_request_pointerlock: function () {
    return -1;
  },
  emscripten_exit_pointerlock__deps: [],
  emscripten_exit_pointerlock: function () {
    return -1;
  },
  emscripten_set_fullscreenchange_callback_on_thread__deps: [],
  emscripten_set_fullscreenchange_callback_on_thread: function () {
    return -1;
  },
  emscripten_set_pointerlockchange_callback_on_thread__deps: [],
  emscripten_set_pointerlockchange_callback_on_thread: function () {
    return -1;
  },
});
