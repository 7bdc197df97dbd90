// Answers Dear ImGui's questions about OpenGL's state without asking the graphics card.
//
// Before it draws a frame, Dear ImGui asks what was set, so as to set it back afterwards; it has no switch for that. Each
// question waits until the card has drawn all that it was given: nine tenths of a frame where a processor draws. Nobody else
// draws on this surface, so what is set back may be what every frame may begin with.

mergeInto(LibraryManager.library, {
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
});
