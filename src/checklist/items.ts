import type { Item, Stage } from "./schema";

type Row = readonly [id: string, text: string, why: string];

/** Common practice, no source; the makers' instructions, safety data sheets and local codes come first. */
// biome-ignore format: an item reads best as text and reason
const rows: Readonly<Record<Stage, readonly Row[]>> = {
  before: [
    ["papers", "Makers' instructions and safety data sheets of resin, catalyst and dye are read and at hand", "They come first: they know the product, this list does not"],
    ["rated", "The chamber is made and rated for vacuum; no crack, chip or clouding in wall, lid or seal", "A chamber that fails bursts inward, and its pieces fly"],
    ["gauge", "The gauge moves, and the valve lets air in by hand", "You must be able to let air in at once"],
    ["dry", "Pieces are dried in the oven, cooled, and bagged since", "Water keeps resin out and turns to steam; a warm piece can set the resin"],
    ["extract", "Dust mask on and extraction running while cutting spalted wood", "Spores and fine dust harm the lungs"],
    ["fire", "A fire extinguisher stands within reach, and the way out is clear", "Resin vapour and oven heat are a poor mix"],
  ],
  mixing: [
    ["gloves", "Gloves of the kind the safety data sheet names, eye protection, long sleeves", "Uncured resin can make skin allergic for life"],
    ["air", "Windows open or extraction running", "The vapour harms, and it can catch fire"],
    ["catalyst", "Catalyst measured as the label says, never by eye", "Too much can run hot, too little never cures"],
    ["metals", "Only stainless steel, glass, polyethylene or polypropylene touches the resin", "Copper, zinc and rust may upset the catalyst; the resin attacks acrylic, polystyrene and polycarbonate"],
    ["mark", "The tub is marked with its contents and the day it was mixed", "Mixed resin has a use-by date, topped up or not"],
    ["food", "No food or drink at the bench; rags go into a closed metal bin", "Resin on hands ends up in mouths, and wet rags can heat up"],
  ],
  vacuum: [
    ["shield", "A shield stands between the chamber and every face", "It catches what flies if the lid or wall gives way"],
    ["exhaust", "The pump blows outdoors, and a trap stands before it", "Vapour harms people, and it ruins the pump's oil"],
    ["foam", "The foam room above the fluid is empty", "It foams up as the air comes out of the wood"],
    ["ballast", "Ballast of stainless steel or glass holds every piece under and cannot tip", "A piece that floats up takes air instead of resin"],
    ["slow", "Pump drawn down slowly, a hand on the valve", "Foam climbs faster than you can read the gauge"],
    ["alone", "The chamber is never left alone under vacuum", "Seals creep, pumps stop and oil runs back"],
  ],
  soaking: [
    ["release", "Air is let in fully before the soak begins", "It is air pressure that pushes the resin into the wood"],
    ["breathe", "Air stands above the resin, under a loose lid, never vacuum", "Some mixed resins set without air"],
    ["cool", "The tub stands cool, out of the sun and out of children's reach", "Warmth shortens its life and can set it"],
    ["look", "Resin looked at: thick, stringy or warm resin is finished", "It can set hot: dispose of it as its safety data sheet says"],
  ],
  oven: [
    ["kitchen", "The oven is never used for food again", "What bakes out of the wood stays in the oven"],
    ["drained", "Pieces are drained and stand on foil, none drips", "Drips smoke, and they can catch fire"],
    ["outdoors", "The oven stands outdoors or under extraction, no flame or spark near", "The vapour can catch fire"],
    ["thermometer", "A thermometer of its own lies in the oven", "The dial of a small oven may be far off"],
    ["bundles", "Thick pieces stand apart, and none is thicker than the shop's thickest", "Thick or bundled pieces can run hot and smoke"],
    ["stay", "Somebody stays with the oven until it is off and cool", "A run that goes wrong does so quickly"],
  ],
  after: [
    ["rest", "Pieces cool in the open before they are unwrapped or weighed", "A hot core burns hands and sets resin it touches"],
    ["sticky", "A sticky piece goes back into the oven, not onto the lathe", "Uncured resin harms skin and lungs"],
    ["store", "Resin left over is strained and stored cool, with air above it, under its old date", "Its oldest part decides how long it keeps"],
    ["waste", "Waste resin, rags and gloves are disposed of as the safety data sheet says", "Never down the drain, never in the household bin uncured"],
    ["sanding", "Dust mask and extraction for turning and sanding cured pieces", "The dust of cured resin is fine and stays in the air"],
    ["wash", "Gloves off inside out, hands washed with soap, never with solvent", "Solvent carries resin into the skin"],
  ],
  audience: [
    ["behind", "Everybody stands behind the shield, and the front row wears eye protection", "They came to watch, not to take your risk"],
    ["reach", "No open resin, catalyst or hot piece within reach of the audience", "Somebody always wants to touch"],
    ["fumes", "The room is aired, and people were told about the smell before you start", "Some are sensitive to vapours and would rather leave"],
    ["cables", "Hoses and cables are taped down", "People look at you, not at the floor"],
    ["say", "Say aloud that a rated chamber is part of it, and a home-made lid is not", "People copy what they see"],
  ],
};

export const defaults: readonly Item[] = Object.entries(rows).flatMap(([stage, items]) =>
  items.map(([id, text, why]) => ({ id, stage: stage as Stage, text, why, done: false })),
);

export const defaultOf = (id: string): Item | undefined => defaults.find((item) => item.id === id);
