import type { Item, Stage } from "./schema";

type Row = readonly [id: string, text: string, why: string];

/** Common practice, no source; the makers' instructions, safety data sheets and local codes come first. */
// biome-ignore format: an item reads best as text and reason
const rows: Readonly<Record<Stage, readonly Row[]>> = {
  before: [
    ["papers", "Read the makers' instructions and safety data sheets of resin, catalyst and dye", "They come first: they know the product, this list does not"],
    ["calls", "Agree who calls for help, and write name and number at the top of this list", "With resin in your eyes you cannot dial"],
    ["rated", "Chamber made and rated for vacuum: no crack, chip or clouding in wall, lid or seal", "A chamber that fails bursts inward, and its pieces fly"],
    ["gauge", "Check that the gauge moves and that you can let air in by hand", "You must be able to let air in at once"],
    ["dry", "Dry the pieces in the oven, let them cool, and bag them", "Water keeps resin out and turns to steam; a warm piece can set the resin"],
    ["extract", "Wear a dust mask and run the dust collector while cutting spalted wood", "Spores and fine dust harm the lungs"],
    ["fire", "Keep a fire extinguisher within reach and the way out clear", "Resin vapor near a hot oven can catch fire"],
    ["eyewash", "Have water to rinse eyes within a few steps of the bench", "The first minute counts"],
  ],
  mixing: [
    ["gloves", "Wear the gloves the safety data sheet names, eye protection and long sleeves", "Uncured resin can make the skin allergic for life"],
    ["air", "Open the windows or run an exhaust fan", "The vapor harms, and it can catch fire"],
    ["catalyst", "Measure the catalyst as the label says, never by eye", "Too much can run hot, too little never cures"],
    ["metals", "Let only stainless steel, glass, polyethylene or polypropylene touch the resin", "Copper, zinc and rust may upset the catalyst; the resin attacks acrylic, polystyrene and polycarbonate"],
    ["mark", "Mark the tub with its contents and the day you mixed it", "Mixed resin has a use-by date, topped up or not"],
    ["food", "No food or drink at the bench; put rags in a closed metal can", "Resin on hands ends up in mouths, and wet rags can heat up"],
    ["spill", "Spill: fresh air, gloves, no flame. Soak it up, bag it, dispose as the sheet says", "Vapor from a puddle can catch fire, and bare hands take up resin"],
    ["eye", "Resin in an eye: rinse with water for 15 minutes, call a doctor, show the data sheet", "15 minutes is what emergency eyewash standards ask for (from memory); the product's own sheet comes first"],
  ],
  vacuum: [
    ["shield", "Put a shield between the chamber and every face", "It catches what flies if the lid or wall gives way"],
    ["exhaust", "Vent the pump outdoors, with a trap before it", "Vapor harms people, and it ruins the pump's oil"],
    ["foam", "Leave room for foam above the resin", "It foams up as the air comes out of the wood"],
    ["ballast", "Hold every piece under with stainless steel or glass that cannot tip", "A piece that floats up takes air instead of resin"],
    ["slow", "Pull the vacuum slowly, one hand on the valve", "Foam climbs faster than you can read the gauge"],
    ["alone", "Never leave the chamber alone under vacuum", "Seals creep, pumps stop and oil runs back"],
    ["power", "Power failure: close the valve to the pump, let the air in slowly, switch the pump off", "A pump that stops lets its oil into the chamber, and starts again on its own"],
  ],
  soaking: [
    ["release", "Let all the air in before the soak begins", "It is air pressure that pushes the resin into the wood"],
    ["breathe", "Keep air above the resin, under a loose lid, never vacuum", "Some mixed resins set without air"],
    ["cool", "Keep the tub cool, out of the sun and out of children's reach", "Warmth shortens its life and can set it"],
    ["look", "Look at the resin: thick, stringy or warm resin is finished", "It can set hot: dispose of it as its safety data sheet says"],
  ],
  oven: [
    ["kitchen", "Never use the oven for food again", "What bakes out of the wood stays in the oven"],
    ["drained", "Bake only drained pieces, on foil", "Drips smoke, and they can catch fire"],
    ["outdoors", "Bake outdoors or under an exhaust fan, with no flame or spark near", "The vapor can catch fire"],
    ["thermometer", "Put a separate thermometer in the oven", "The dial of a small oven may be far off"],
    ["bundles", "Stand thick pieces apart, none thicker than the thickest on My Shop", "Thick or bundled pieces can run hot and smoke"],
    ["stay", "Stay with the oven until it is off and cool", "A run that goes wrong does so quickly"],
  ],
  after: [
    ["rest", "Let pieces cool in the open before you unwrap or weigh them", "A hot core burns hands and sets resin it touches"],
    ["sticky", "Put a sticky piece back into the oven, not onto the lathe", "Uncured resin harms skin and lungs"],
    ["store", "Strain resin left over; store it cool, with air above it, under its old date", "Its oldest part decides how long it keeps"],
    ["waste", "Dispose of waste resin, rags and gloves as the safety data sheet says", "Never down the drain, never uncured in the household trash"],
    ["sanding", "Wear a dust mask and run the dust collector for turning and sanding", "The dust of cured resin is fine and stays in the air"],
    ["wash", "Take gloves off inside out; wash hands with soap, never with solvent", "Solvent carries resin into the skin"],
  ],
  audience: [
    ["behind", "Keep everybody behind the shield, the front row with eye protection", "They came to watch, not to take your risk"],
    ["reach", "Keep resin, catalyst and hot pieces out of the audience's reach", "Somebody always wants to touch"],
    ["fumes", "Air the room, and tell people about the smell before you start", "Some are sensitive to vapors and would rather leave"],
    ["cables", "Tape down hoses and cables", "People look at you, not at the floor"],
    ["say", "Say out loud: this takes a rated chamber, never a homemade lid", "People copy what they see"],
  ],
};

export const defaults: readonly Item[] = Object.entries(rows).flatMap(([stage, items]) =>
  items.map(([id, text, why]) => ({ id, stage: stage as Stage, text, why, done: false })),
);

export const defaultOf = (id: string): Item | undefined => defaults.find((item) => item.id === id);
