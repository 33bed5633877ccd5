// Acts of the panels: commands of the core; or a copy of the layout, changed as a
// file would hold it, which the core reads under the rules of a file and makes one
// edit of.

import type {
  Card, Crop, Exposure, Finding, Hand, How, Id, Item, Layout, Linen, Pair, Part, Person, Remark, Role, Tone,
} from "./core";
import * as say from "#words";
import * as session from "./session";
import * as state from "./state";
import * as visits from "./visits";

/** Changes a copy of the open layout and makes it one edit called `name`. */
function change(name: string, to: (layout: Layout) => void): boolean {
  const copy = structuredClone(state.layout.value);
  if (copy === undefined) return false;
  to(copy);
  return session.become(name, copy);
}

/** Changes whatever has this id, item or linen. */
function one(name: string, id: Id, to: (thing: Item | Linen) => void): boolean {
  return change(name, (layout) => {
    const thing =
      layout.items.find((item) => item.id === id) ?? layout.linens.find((linen) => linen.id === id);
    if (thing !== undefined) to(thing);
  });
}
function item(name: string, id: Id, to: (item: Item) => void): boolean {
  return change(name, (layout) => {
    const found = layout.items.find((each) => each.id === id);
    if (found !== undefined) to(found);
  });
}
const named = (id: Id): string =>
  state.things.value.find((thing) => thing.id === id)?.name ?? say.thing;

export const act = {
  /** Changes what became of a remark. */
  remark: (place: number, to: Partial<Remark>) =>
    change(say.doneRemark({ number: String(place + 1) }), (layout) => {
      const found = layout.remarks?.[place];
      if (found !== undefined) Object.assign(found, to);
    }),
  remarkGone: (place: number) =>
    change(say.doneRemarkGone({ number: String(place + 1) }), (layout) => void layout.remarks?.splice(place, 1)),
  moveBy: (id: Id, dx: number, dy: number) => session.moveBy(id, dx, dy),
  turnBy: (id: Id, degrees: number) => session.turnBy(id, degrees * 2),
  remove: (ids: Id[]) => session.remove(ids),
  /** Lays the same thing again beside itself. */
  repeat: (id: Id) => session.repeat(id),

  rename: (id: Id, name: string) => one(say.doneRenamed, id, (thing) => (thing.name = name)),
  lock: (id: Id, locked: boolean) =>
    one((locked ? say.doneLocked : say.doneUnlocked)({ thing: named(id) }), id, (thing) => (thing.locked = locked)),
  role: (id: Id, role: Role) => session.act(() => session.core().set_role(id, role, visits.now())),
  resize: (id: Id, width: number, depth: number) =>
    session.act(() => session.core().resize(id, width, depth, visits.now())),
  height: (id: Id, height: number) =>
    item(say.doneHeight({ thing: named(id) }), id, (thing) => (thing.height = height)),
  recolour: (which: Item, part: "rim" | "well" | "food", srgb: string) =>
    item(say.doneRecoloured({ thing: which.name }), which.id, (thing) => {
      const own: Part = { colours: [{ srgb, share: 100, origin: "guess" }] };
      thing.parts = { ...thing.parts, [part]: own };
    }),
  /** How long it and all of its row look right on the set; as usual for none. */
  hold: (which: Item, minutes: number | undefined, all: Id[] = [which.id]) =>
    session.act(() =>
      session.core().set_food(Uint16Array.from(all), minutes ?? 0, undefined, visits.now()),
    ),
  standIn: (which: Item, name: string, all: Id[] = [which.id]) =>
    session.act(() => session.core().set_food(Uint16Array.from(all), 0, name, visits.now())),
  dates: (dates: NonNullable<Layout["dates"]>, name = say.doneDates) =>
    change(name, (layout) => (layout.dates = dates)),
  /** Gives a part the tones read off a photo. */
  photo: (which: Item, part: "rim" | "well" | "food", colours: Tone[]) =>
    item(say.donePhoto({ thing: which.name }), which.id, (thing) => {
      thing.parts = { ...thing.parts, [part]: { colours } };
    }),
  putOn: (id: Id, on: Id) => session.act(() => session.core().put_on(id, on)),
  group: (one: Id, other: Id) => session.act(() => session.core().do_picked(Uint16Array.of(one, other), "group")),
  ungroup: (id: Id) => session.act(() => session.core().do_picked(Uint16Array.of(id), "apart")),
  linen: (linen: Linen, to: Partial<Linen>) =>
    one(say.doneLinen({ thing: linen.name }), linen.id, (thing) => Object.assign(thing, to)),

  table: (table: Layout["table"], to: Partial<Layout["table"]>) =>
    change(say.doneBoard, (layout) => (layout.table = { ...table, ...to })),
  floor: (colour: string) => change(say.doneFloor, (layout) => (layout.floor.colour = colour)),
  frame: (frame: Layout["frame"], to: Partial<Layout["frame"]>) =>
    change(say.doneFrame, (layout) => (layout.frame = { ...frame, ...to })),
  head: (to: Partial<Pick<Layout, "title" | "look" | "units" | "revision" | "client" | "note">>) =>
    change("revision" in to ? say.doneVersion : say.doneHeading, (layout) =>
      Object.assign(layout, to),
    ),
  dial: (dial: "focal" | "aperture" | "height" | "focus", up: boolean) =>
    session.act(() => session.core().step_camera(dial, up, visits.now())),
  focusEvenly: () => session.act(() => session.core().focus_evenly()),
  format: (format: string) => session.act(() => session.core().set_format(format)),
  pixels: ([long, short]: Pair) => session.act(() => session.core().set_pixels(long, short)),
  keepLens: (focal: number) => session.act(() => session.core().keep_lens(focal)),
  ceiling: (ceiling: number) => change(say.doneCeiling, (layout) => (layout.rig.ceiling = ceiling)),
  rig: (rig: Layout["rig"]) => change(say.doneRig, (layout) => (layout.rig = rig)),
  placeStand: () => session.act(() => session.core().place_stand()),
  placePhotographer: () => session.act(() => session.core().place_photographer()),
  light: (light: Layout["light"]) => change(say.doneLight, (layout) => (layout.light = light)),

  addCard: (white: boolean) => session.act(() => session.core().add_card(white)),
  card: (card: Card, to: Partial<Card>) =>
    change(say.doneCard, (layout) => {
      const found = layout.cards?.find((each) => each.id === card.id);
      if (found !== undefined) Object.assign(found, to);
    }),
  removeCard: (card: Card) =>
    change(say.doneCardAway, (layout) => {
      layout.cards = layout.cards?.filter((each) => each.id !== card.id) ?? [];
    }),

  person: (person: Person, to: Partial<Person>) =>
    change(say.donePerson, (layout) => {
      const found = layout.people?.find((each) => each.id === person.id);
      if (found !== undefined) Object.assign(found, to);
    }),
  hand: (hand: Hand, to: Partial<Hand>) =>
    change(say.doneHand, (layout) => {
      const found = layout.hands?.find((each) => each.id === hand.id);
      if (found !== undefined) Object.assign(found, to);
    }),
  /** The other hand does it; a pair changes sides as a whole. */
  flip: (hand: Hand) => session.act(() => session.core().flip(hand.id)),
  /** A hand and its pair do something else. */
  doElse: (hand: Hand, action: string) => session.act(() => session.core().do_else(hand.id, action)),
  grip: (hand: Hand, item: Id) => session.act(() => session.core().hold(hand.id, item)),
  /** Gives a hand and its pair to another person, or to a new one for 0. */
  give: (hand: Hand, person: Id) => session.act(() => session.core().give_hand(hand.id, person)),
  /** Lets a hand and its pair come from a direction of the picture. */
  comeFrom: (hand: Hand, degrees: number) =>
    session.act(() => session.core().come_from(hand.id, degrees)),
  /** Lets a hand and its pair come from a place on the picture. */
  comeTo: (hand: Hand, x: number, y: number, reach: number) =>
    session.act(() => session.core().come_to(hand.id, x, y, reach)),
  standOrSit: (hand: Hand) => session.act(() => session.core().stand_or_sit(hand.id)),
  /** Adds an exposure of a kind and shows it. */
  addExposure: (kind: Exposure["kind"]) => {
    const id = state.layout.value?.next_id ?? 0;
    if (session.act(() => session.core().add_exposure(kind))) state.exposure.value = id;
  },
  removeExposure: (id: Id) => session.act(() => session.core().remove_exposure(id)),
  shiftExposure: (id: Id, later: boolean) =>
    session.act(() => session.core().shift_exposure(id, later)),
  exposureTakes: (id: Id, minutes: number) =>
    session.act(() => session.core().exposure_takes(id, minutes, visits.now())),
  /** Has a thing be so in an exposure. */
  putIn: (exposure: Id, thing: Id, how: How) =>
    session.act(() => session.core().put_in(exposure, thing, how)),
  allAsSet: (exposure: Id) => session.act(() => session.core().all_as_set(exposure)),
  exposure: (hand: Hand, id: Id) => session.act(() => session.core().shoot_in(hand.id, id)),

  addCrop: (name: string, [wide, high]: Pair) =>
    session.act(() => session.core().add_crop(name, wide, high)),
  addPrint: (name: string, [wide, high]: Pair) =>
    session.act(() => session.core().add_print(name, wide, high)),
  addPage: (name: string, page: string) => session.act(() => session.core().add_page(name, page)),
  keepCopySpace: (crop: Id) => session.act(() => session.core().keep_copy_space(crop)),
  mustShow: (crop: Id, thing: Id) => session.act(() => session.core().must_show(crop, thing)),
  crop: (crop: Crop, to: Partial<Crop>) =>
    change(say.doneCrop({ crop: crop.name }), (layout) => {
      const found = layout.crops.find((each) => each.id === crop.id);
      if (found !== undefined) Object.assign(found, to);
    }),

  accept: (finding: Finding) =>
    change(say.doneMeant, (layout) => {
      const rest = (layout.intended ?? []).filter((each) => each.finding !== finding.key);
      layout.intended = [...rest, { finding: finding.key, figure: Math.round(finding.figure) }];
    }),
};
