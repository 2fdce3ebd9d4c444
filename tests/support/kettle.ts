/**
 * Somebody with a kettle who does what the lines of a brew day say, in their order, and knows physics and nothing of the
 * code: a coil with water in it must not stand in boiling wort, wort that no longer boils is touched by sanitised things
 * alone, extract sinks and burns over a flame, hops go where their word says. What goes wrong is told.
 */
export interface Line {
  /** Minutes from the start of the day; undefined where the line has no time. */
  readonly minute: number | undefined;
  readonly boilMinute: number | undefined;
  readonly what: string;
  readonly caution: string;
}

export interface Day {
  readonly boilMinutes: number;
  readonly boilsAtC: number;
  readonly standMinutes: number;
  readonly hops: readonly { readonly hop: string; readonly added: number | "first wort" | "stand" | "dry" }[];
}

/** Minutes that sanitiser needs at the very least, and boiling wort for a coil (both common practice). */
const [contactMinutes, coilMinutes] = [1, 15];

export function troubles(lines: readonly Line[], day: Day): string[] {
  const found: string[] = [];
  const ill = (holds: boolean, line: Line, words: string): void =>
    void (holds || found.push(`${line.minute} min, “${line.what}” (${line.caution}): ${words}`));
  const added: string[] = [];
  let flame = false;
  let boilBegan: number | undefined;
  let flameOut: number | undefined;
  let coilIn: number | undefined;
  let coilDry = false;
  let coilRan = false;
  let rinsingHeats = false;
  let water = false;
  let waterMinute: number | undefined;
  let hopMinute: number | undefined;
  let soaked: number | undefined;
  let standing: number | undefined;
  let chilledAt: number | undefined;
  let inFermenter = false;
  let yeastOpen = false;
  let pitched = false;
  let ended = false;
  let last = 0;
  for (const line of lines) {
    const { minute, what, caution } = line;
    const boiling = boilBegan !== undefined && flameOut === undefined;
    if (minute === undefined) {
      const dry = day.hops.find(({ hop, added: place }) => place === "dry" && what.endsWith(hop));
      ill(ended && dry !== undefined && /another day/i.test(what), line, "only dry hops, after the day, have no time");
      if (dry) added.push(`${dry.hop} dry`);
      continue;
    }
    ill(minute >= last - 1e-6, line, "time runs backwards");
    last = minute;
    const now = minute;
    // A hose with running water, and a hop that is stirred in, want both hands.
    ill(
      waterMinute === undefined || Math.abs(now - waterMinute) > 0.5 || !/^Add /.test(what),
      line,
      "hops go in while the water is being turned on",
    );
    const coldSide = flameOut !== undefined && /fermenter|sample|pitch|stir|spoon|Push/i.test(`${what} ${caution}`);
    if (coldSide)
      ill(
        soaked !== undefined && now - soaked >= contactMinutes - 1e-6,
        line,
        "touches wort that no longer boils, and nothing was soaked in sanitiser",
      );

    if (/flame on/i.test(what)) {
      ill(!ended && !boiling && !inFermenter, line, "the flame goes on at the wrong time");
      flame = true;
    }
    if (/^(warm it|heat|collect.*heat)/i.test(what)) flame = true;
    if (/; heat [\d.,]+ \S+ to \d+ °/i.test(what)) {
      rinsingHeats = true;
      ill(/second pot/i.test(caution), line, "the kettle is to hold the wort, and nobody says where else water is heated");
    }
    if (/rinse with/i.test(what)) ill(rinsingHeats, line, "rinses with hot water that nobody heated");
    if (/flame off/i.test(what) && !/^no boil/i.test(what)) flame = false;
    if (/stir .*(extract|sugar)/i.test(what)) {
      ill(!flame, line, "extract goes in over a flame: it scorches");
      ill(/(stick|burn)s?\b/i.test(caution), line, "nothing is said of syrup that sticks to skin");
      ill(!/little water/i.test(`${what} ${caution}`), line, "too little water to dissolve it in");
    }
    if (/^boil begins/i.test(what)) {
      ill(flame, line, "boils without a flame");
      ill(line.boilMinute === 0, line, "the boil begins at another minute than 0");
      ill(/stay/i.test(caution) && /lid off/i.test(caution), line, "nobody is told to stay, lid off");
      boilBegan = now;
    }
    if (/^soak/i.test(what)) {
      soaked = now;
      ill(/label/i.test(`${what} ${caution}`), line, "the label is not asked");
    }
    if (/^chiller in/i.test(what)) {
      coilIn = now;
      coilDry = /drained/i.test(what) && /water off/i.test(what) && /both ends open/i.test(caution);
      ill(coilDry, line, "water in a coil in hot wort flashes to steam");
      ill(/outlet.*drain.*away from people/i.test(caution), line, "the outlet points at people");
      ill(!water, line, "running water stops the boil");
      ill(flameOut === undefined, line, "goes in after the boil and is not sanitised");
    }
    if (/^flame out|^no boil: flame off/i.test(what)) {
      ill(/(gas|power) (or (gas|power) )?off/i.test(caution) || /flame off/i.test(what), line, "nobody turns the flame off");
      ill(/sanitise/i.test(caution), line, "from here on things must be sanitised, and nobody says so");
      if (day.boilMinutes > 0)
        ill(
          boilBegan !== undefined && Math.abs(now - boilBegan - day.boilMinutes) < 1e-3,
          line,
          `the boil lasts ${now - (boilBegan ?? NaN)} min, not ${day.boilMinutes}`,
        );
      else ill(boilBegan === undefined && /chiller/i.test(caution), line, "a day without a boil boils, or nobody sanitises the chiller");
      flame = false;
      flameOut = now;
    }
    // The first water through a coil in hot wort boils in it; what stood in a coil since then comes out as hot as the wort.
    if (/water on/i.test(`${what} ${caution}`)) {
      ill(
        (/steam/i.test(caution) && /clear/i.test(caution)) || (coilRan && /hot|scald/i.test(caution) && /clear/i.test(caution)),
        line,
        "water runs through a hot coil, and nobody says that steam or scalding water comes out",
      );
      coilRan = true;
    }
    if (/^stand:/i.test(what)) {
      ill(flameOut !== undefined && chilledAt === undefined, line, "stands at the wrong time");
      ill(
        /water on slowly/i.test(caution) && /\boff (again )?there\b/i.test(caution),
        line,
        "the water runs all through the stand, or comes on with a burst",
      );
      standing = now;
    }
    const chills = /water on/i.test(what);
    if (chills) {
      ill(hopMinute === undefined || now - hopMinute > 0.5, line, "the water is turned on while hops go in");
      ill(/slowly/i.test(what), line, "water comes on with a burst");
      ill(!flame && !boiling && flameOut !== undefined, line, "water in the coil while it boils");
      ill(coilIn !== undefined && coilDry, line, "the coil is not in, or was not drained");
      if (coilIn !== undefined && flameOut !== undefined && day.boilMinutes > 0)
        ill(
          flameOut - Math.max(coilIn, boilBegan ?? coilIn) >= Math.min(coilMinutes, day.boilMinutes) - 1e-3,
          line,
          "the coil boiled too short to be sanitised",
        );
      if (standing !== undefined) ill(now - standing >= day.standMinutes - 1e-3, line, "the stand is cut short");
      water = true;
      waterMinute = now;
      chilledAt = now;
    }
    const hop = day.hops.find(
      ({ hop: name, added: place }) =>
        what.endsWith(place === "stand" ? `${name} for the stand` : place === "first wort" ? `${name} into the kettle` : name) &&
        /^(Add|First wort)/.test(what) &&
        !added.includes(`${name} ${place}`),
    );
    if (/^(Add|First wort)/.test(what)) {
      if (!hop) ill(false, line, "a hop that nobody planned");
      else {
        hopMinute = now;
        added.push(`${hop.hop} ${hop.added}`);
        if (typeof hop.added === "number" && hop.added > 0)
          ill(
            boiling && boilBegan !== undefined && Math.abs(boilBegan + day.boilMinutes - hop.added - now) < 1e-3,
            line,
            "goes in at another minute of the boil",
          );
        if (hop.added === 0)
          ill(flameOut !== undefined && Math.abs(now - flameOut) < 1e-3 && !water, line, "flame-out hops go in at another time");
        if (hop.added === "first wort")
          ill(boilBegan === undefined && flameOut === undefined, line, "first wort hops go in after the boil has begun");
        if (hop.added === "stand") ill(standing !== undefined && !water, line, "goes in outside of the stand");
        if (hop.added === "dry") ill(false, line, "a dry hop in hot wort");
        ill(/heat down/i.test(caution) === boiling, line, "the heat is turned down where there is none, or not where it boils over");
      }
    }
    if (/into the fermenter/i.test(what)) {
      ill(chilledAt !== undefined && now - chilledAt >= 0 && water, line, "hot wort goes into the fermenter");
      ill(/glass/i.test(caution), line, "glass cracks with hot wort, and nobody says so");
      water = false;
      inFermenter = true;
    }
    if (/open the yeast/i.test(what)) yeastOpen = true;
    if (/pitch/i.test(what)) {
      ill(
        inFermenter && yeastOpen && !water,
        line,
        "the yeast goes in before the wort is cold and in the fermenter, or out of a shut packet",
      );
      ill(/never seal/i.test(caution), line, "the fermenter may be sealed");
      pitched = true;
    }
    if (/brew day done/i.test(what)) {
      ill(pitched, line, "the day ends without yeast");
      ended = true;
    }
  }
  const end: Line = { minute: last, boilMinute: undefined, what: "the day", caution: "" };
  ill(ended, end, "never ends");
  ill(flameOut !== undefined, end, "the flame is never put out");
  for (const { hop, added: place } of day.hops) ill(added.includes(`${hop} ${place}`), end, `${hop} (${place}) vanishes`);
  // One temperature from which all is sanitised: that of the boil, above any that the wort has in the cold.
  for (const { what, caution } of lines)
    ill(
      !/below \d+ ?°.*sanitis|sanitis.*below \d+ ?°/i.test(`${what} ${caution}`),
      end,
      "another temperature from which things are to be sanitised",
    );
  return found;
}
