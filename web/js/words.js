// Every word that the page's own HTML shows and that is not written in index.html.

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
    crash: "The bench has stopped because of a fault of its own. Your work was kept as it was at the last change.",
    reload: "Load again",
  },
  notices: {
    notKept: "Not saved on this device. Download a copy before you close the page.",
    download: "Download a copy",
    damagedSave: "What this device had kept was damaged and could not be opened. It was set aside, not deleted.",
    downloadDamaged: "Download it",
    linkRefused: "The link could not be opened.",
    linkRefusedRest: "You see what was here before.",
    fromLink: "Opened from a link and not kept yet. Your own lure stays kept until you change this one; Undo brings it back.",
    keepIt: "Keep it",
    otherTab: "This bench was changed in another tab or window.",
    loadOther: "Load that one",
    keepMine: "Keep mine",
    newVersion: "A new version is ready.",
    newVersionTaken: "A new version is in use in another tab.",
    reload: "Load it",
    screenLost: "The drawing surface was lost and did not come back.",
    close: "Close",
  },
  share: {
    count: (n) => `${n.toLocaleString("en")} characters`,
    long: "Over 1,800 characters: some messengers cut links as long as this. A saved file travels whole.",
    veryLong: "Over 8,000 characters: too long for most messengers. Please send a saved file instead.",
    copied: "Copied.",
    notCopied: "The browser did not allow copying. The link is marked: copy it by hand.",
  },
  save: {
    about: (name) => `“${name}” holds the whole lure as it is now.`,
  },
  open: {
    keptTitle: "Kept from before",
    keptAbout: "Lures that another one took the place of, newest first.",
    take: "Open",
    unnamed: "Lure without a name",
    tooLarge: "This file is too large to be a lure: the limit is 256 kB.",
    unreadable: "This file could not be read.",
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
