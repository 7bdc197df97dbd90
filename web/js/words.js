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
    setAside: "It was set aside, not deleted.",
    noRoomAside: "There is no room to set it aside: save it as a file now.",
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
    screenLost: "The drawing surface was lost and did not come back.",
    close: "Close",
  },
  sheet: {
    noPrint: "This browser does not print by itself. Save the sheet as a PDF and print that, at 100 %.",
  },
  share: {
    count: (n) => `${n.toLocaleString("en")} characters`,
    long: "Over 1,800 characters: some messengers cut links as long as this. A saved file travels whole.",
    veryLong: "Over 8,000 characters: too long for most messengers. Please send a saved file instead.",
    copied: "Copied.",
    notCopied: "The browser did not allow copying. The link is marked: copy it by hand.",
  },
  first: {
    count: (at, of) => `First steps, ${at} of ${of}`,
    next: "Next",
    begin: "To the bench",
    cards: [
      ["Draw it", "Shape and Joints hold the lure as you would saw and cut it. Tap any number to type your own; what you see is to " +
        "scale. The lure on the bench is an example: change it, or open another one from the shelf, the three lines at the top right."],
      ["Plan the lead", "Say in Lead how the finished lure shall fall and hang, and let the bench plan how much lead goes into which " +
        "hole, and how deep. Wash your hands after lead, keep it from children, and melt it only outdoors or under strong extraction."],
      ["Test in the tub", "Hooks, paint and clear coat come after the tub and change the answer. Water and Finish say what the scale " +
        "and the tub should read now if the finished lure is to be right. Tap an answer at the top to see what it means."],
    ],
  },
  answers: {
    "answer.finished": ["Finished", "What the finished lure weighs in air, hooks, rings, tail and all coats included. The figure after ± is " +
      "one standard deviation: two lures in three come out within it.",
      "The sum of every line of the ledger: wood by its density and the drawn volume, less what is drilled, plus lead, hardware and " +
      "coats. The ± is that of each line, put together; most of it is the wood's."],
    "answer.in_water": ["In water", "The weight that is left under water: the lure's mass less the mass of the water it pushes aside. " +
      "Negative: floats. Zero: suspends. Positive: sinks.",
      "The ledger's masses and volumes, and the density of your water from its temperature and salt."],
    "answer.fall": ["Fall", "How fast the finished lure goes down once it has settled, in your fishing water. Where no fall is asked " +
      "for, the two figures below are the model's own range.",
      "Weight in water against drag, worked out for the slender body at the attitude it falls in, hooks and tail included. The model is " +
      "no towing tank: the tub has the last word."],
    "answer.hang": ["Hang", "How the lure lies when it is held still under water: nose-up is positive, nose-down negative, 0 is level.",
      "It turns until the centre of buoyancy B stands straight above the centre of gravity G; both come from the ledger."],
    "answer.righting": ["Righting", "How far B stands above G. The more, the more surely it comes back upright; with G above B it rolls over.",
      "The heights of the two centres, from the ledger. Lead low in the belly widens it, heavy backs and eyes narrow it."],
    "answer.chance": ["Chance", "How likely the first finished lure falls within the asked band and hangs within the asked band, if " +
      "it is built as it is planned now.",
      "The ± of wood, size, lead, hardware, coats and drag, narrowed by what the Bench log holds. A dry weight and one held under " +
      "water raise it most."],
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
    keptTitle: "Saved before",
    keptAbout: "Lures that another one took the place of, newest first.",
    take: "Open",
    unnamed: "Lure without a name",
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
