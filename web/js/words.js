// All text of the page's HTML that is not in index.html.

/** The decimal sign of the device's language, for display only. */
export const decimalSign = (() => {
  try {
    return new Intl.NumberFormat(navigator.language).formatToParts(1.5).some(({ value }) => value === ",") ? "," : ".";
  } catch {
    return "."; // a device without a language may report one that does not exist ("C")
  }
})();

const gone = "but your lure could not be saved on this device and would be gone. Save a copy first";

export const words = {
  loading: {
    module: "Laying out the bench",
    start: "Sharpening the pencil",
  },
  stop: {
    wasm: "This browser cannot run the bench: it has no WebAssembly. A browser from 2023 or later has it.",
    blocked: "Compiled code (WebAssembly) is blocked on this page, by the browser's settings, an add-on or the page's host. The bench is " +
      "made of it: it has to be allowed here.",
    framed: "The bench does not work inside another page. Open it in a tab of its own.",
    webgl: "This browser cannot draw the bench: WebGL 2 is missing or switched off. A browser from 2023 or later has it; " +
      "on an old device it may have to be allowed in the settings.",
    load: "A part of the page could not be loaded. Check the connection and load the page again.",
    crash: "The bench has stopped because of a fault of its own. Load it again: your work is there as it was last saved.",
    reload: "Load again",
  },
  notices: {
    notKept: "Not saved on this device. Save a copy as a file before you close the page.",
    download: "Save a copy",
    damagedSave: "What was saved on this device was damaged and could not be opened.",
    onShelf: "It waits on the shelf, where it can be saved as a file.",
    noRoomAside: "There is no room for it on the shelf: save it as a file now.",
    lureUnread: "This lure cannot be read. Save it as a file: another version of the bench may open it.",
    binFull: "This device has no more room: the lure that was longest in the bin is gone from it. Its file can still be saved now.",
    downloadDamaged: "Save it as a file",
    linkRefused: "The link could not be opened.",
    linkRefusedRest: "You see what was here before.",
    linkWaits: `A link wants to open here, ${gone}, or leave the link.`,
    anotherWaits: `Another lure wants to open here, ${gone}, or discard yours, and choose again.`,
    letGo: "Discard mine",
    openIt: "Open the link",
    leaveIt: "Leave it",
    fromLink: "Opened from a link and not saved yet. Your own lure stays saved until you change this one; Undo brings it back.",
    keepIt: "Save it",
    otherTab: "This bench was changed in another tab or window.",
    benchElsewhere: "This bench is open in another tab or window, and the work is saved there. What you change here waits on the shelf.",
    workHere: "Work here instead",
    copyToShelf: "Put a copy on the shelf",
    loadOther: "Load that one",
    keepMine: "Keep mine",
    newVersion: "A new version is ready.",
    newVersionWaits: `A new version is ready, ${gone}.`,
    newVersionTaken: "A new version is in use in another tab.",
    reload: "Load it",
    databaseHangs: "The browser's database does not answer. Photos cannot be saved, and if the browser is killed, the last changes " +
      "may be lost.",
    screenLost: "The drawing surface was lost and did not come back.",
    close: "Close",
  },
  sheet: {
    noPrint: "This browser does not print by itself. Save the sheet as a PDF and print that, at 100 %.",
  },
  share: {
    count: (n) => `${n} characters`,
    long: "Over 1800 characters: some messengers cut links as long as this. A saved file travels whole.",
    veryLong: "Over 8000 characters: too long for most messengers. Please send a saved file instead.",
    copied: "Copied.",
    notCopied: "The browser did not allow copying. The link is marked: copy it by hand.",
  },
  first: {
    count: (at, of) => `First steps, ${at} of ${of}`,
    next: "Next",
    begin: "To the bench",
    // Each with the step that is shown behind it.
    cards: [
      ["shape", "Shape: draw it", "Here is the lure to scale. Drag its points, or tap a number and type your own. Joints and " +
        "Hardware come next in the bar. This one is an example: your own begins on the shelf, the three lines at the top right."],
      ["lead", "Lead: how much, where, how deep", "Say how the finished lure shall fall and hang, and tap Plan the lead. Cautions " +
        "stand where the work begins: read them first."],
      ["water", "Water: what it will do", "See it fall, float and swim. The six figures at the top follow every change. Tap one, or " +
        "any name with dots below it, to see what it is, how it was got and how far to trust it."],
      ["log", "Log: weigh, test, correct", "Add what scale and tub read. Do now then tells what to drill or add while the lead can " +
        "still be reached."],
      ["sheet", "Sheet and sharing: take it to the bench", "Print templates true to size and all lists. The shelf sends the lure as " +
        "a link or a file, and has the help with a search. Nothing leaves this device by itself."],
    ],
  },
  about: {
    own: "Evenfall",
  },
  save: {
    done: (name) => `Saved: ${name}`,
    about: (name, what) => `“${name}” ${{
      everything: "holds all lures with their logs and photos, the bin, the drawer and the settings. The picture behind a drawing is not in it.",
      lure: "holds the whole lure as it is now.",
      other: "is ready to be saved.",
    }[what]}`,
  },
  open: {
    tooLarge: "This file is too large: the limit is 256 kB for a lure, 8 MB for everything in one file and 200 MB with photos.",
    unreadable: "This file could not be read.",
  },
  album: {
    photo: "Photo",
    remove: "Remove",
    removeAgain: "Tap again to remove",
    notKept: "This device could not save it.",
    full: (most) => `That is as many as a lure can have: ${most}.`,
  },
  picture: {
    unreadable: "This file holds no picture that this browser can read.",
    wrongSize: "This picture is too small or too narrow to draw over: scaled down to 1600 pixels it must still be at least 24 pixels " +
      "wide and high.",
  },
  report: {
    lure: "Lure", finished: "Finished lure", segments: "Segments", stages: "Stages of the build", holes: "Holes and lead",
    what: "What", value: "Value", name: "Name", hole: "Hole", material: "Filled with", diameter: "Diameter, mm",
    depth: "Depth, mm", mass: "Mass, g", volume: "Volume, cm³", inWater: "In water, g", stage: "Stage", none: "none",
    notes: "To know", toggle: "Answers as text", away: "Back to the bench",
    rows: {
      mass_g: ["Finished mass", "g"], displaced_cm3: ["Water displaced", "cm³"], in_water_g: ["Weight in water", "g"],
      fall_mm_s: ["Rate of fall", "mm/s"], pitch_deg: ["Hang, nose-up positive", "°"], bg_mm: ["B above G", "mm"],
      chance_percent: ["Chance of a right first fall and hang", "%"],
    },
    g: "Centre of gravity G (aft, starboard, up)", b: "Centre of buoyancy B (aft, starboard, up)",
  },
};
