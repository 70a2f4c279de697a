import { catalogue } from "../../../src/catalogue";
import { asked } from "../../../src/help/asked";
import { found } from "../../../src/help/search";

/** Questions as people ask them at the bench, and the functions of which one must come among the first three. */
const questions: readonly (readonly [question: string, ...answers: string[]])[] = [
  ["how long do I bake a pen blank", "BAKE"],
  ["how much resin do I need", "FILL", "UPTAKE"],
  ["teaspoons", "SPOONS"],
  ["shelf life", "EXPIRY"],
  ["float", "BALLAST"],
  ["weights", "BALLAST"],
  ["foil", "SHOPPINGLIST"],
  ["expire", "EXPIRY"],
  ["is my wood dry enough", "ISDRY"],
  ["is it dry yet", "ISDRY"],
  ["how wet is this piece of wood", "MOISTURE"],
  ["moisture content", "MOISTURE"],
  ["what should it weigh when dry", "DRYWEIGHT"],
  ["when can I stop drying", "STOPWEIGHT"],
  ["how humid is my basement for wood", "EMC"],
  ["how heavy is maple", "GRAVITY"],
  ["density of box elder", "GRAVITY"],
  ["density of a punky burl", "PIECEGRAVITY"],
  ["how porous is it", "VOIDS"],
  ["is spalted maple worth treating", "SUITABILITY"],
  ["which wood should I choose", "SUITABILITY"],
  ["can I stabilize oily wood", "SUITABILITY"],
  ["how do I stack the blanks in the pot", "ARRANGE"],
  ["how many blanks fit in my pot", "PERLOAD"],
  ["how many pen blanks per batch", "PERLOAD"],
  ["how much do I pour into the tub", "FILL"],
  ["resin to cover the pieces", "FILL"],
  ["how high does the resin rise", "FLUIDLEVEL"],
  ["will it foam over", "HEADROOM"],
  ["my wood keeps floating", "BALLAST"],
  ["hold the pieces under", "BALLAST"],
  ["what should my vacuum gauge read", "FULLVACUUM"],
  ["vacuum at 5000 feet elevation", "FULLVACUUM", "BAROMETER"],
  ["is 25 inches of vacuum good enough", "AIROUT"],
  ["it won't stop bubbling", "WATERBOILS"],
  ["how long does my pump need", "PUMPDOWN"],
  ["is my lid strong enough", "LIDLOAD"],
  ["acrylic lid thickness", "LIDLOAD"],
  ["my chamber leaks", "LEAK"],
  ["gauge drops when the pump is off", "LEAK"],
  ["how much resin will a blank soak up", "UPTAKE"],
  ["how much heavier did it get", "WEIGHTGAIN"],
  ["did the resin get all the way in", "FULLNESS"],
  ["resin bled out in the oven", "BAKELOSS"],
  ["how much dye", "DYE"],
  ["blue color powder", "DYE"],
  ["dye for topping up old resin", "DYETOPUP"],
  ["how much resin is left in the jar", "INTUB"],
  ["how many packets of catalyst", "MIX"],
  ["how much should I mix", "MIX"],
  ["does mixed resin go bad", "EXPIRY"],
  ["how long does the resin keep", "EXPIRY", "OLDESTUSEBY"],
  ["I topped up old resin, is it still good", "OLDESTUSEBY"],
  ["keep track of my resin", "RESINBOOK"],
  ["oven time", "BAKE"],
  ["cure time for a bowl", "BAKE"],
  ["is the center hot enough", "CORETEMP"],
  ["how long to let it cool", "COOLDOWN"],
  ["my piece smoked in the oven", "SELFHEAT"],
  ["exotherm", "SELFHEAT"],
  ["test my toaster oven", "OVENFIT"],
  ["what does a run cost me", "RUNCOST"],
  ["cost of one blank", "PIECECOST"],
  ["split the cost in our club", "SPLITCOST"],
  ["what can I charge for a pen blank", "PRICETAG"],
  ["margin", "PRICETAG"],
  ["gallon or quarts cheaper", "WHATTOBUY"],
  ["plan a hundred blanks", "PLAN"],
  ["schedule for the weekend", "PLAN"],
  ["shopping list", "SHOPPINGLIST"],
  ["when do I throw the resin out", "EXPIRY"],
  ["is this maple dry enough for the pot", "ISDRY"],
  ["how many packets for two gallons", "MIX"],
  ["how long in the oven", "BAKE"],
  ["when can I weigh it", "COOLDOWN"],
  ["my gauge only gets to 26", "FULLVACUUM"],
  ["the gauge creeps back up when I shut the valve", "LEAK"],
  ["do I have enough resin left", "INTUB"],
  ["blanks keep popping up", "BALLAST"],
  ["how heavy a weight do I put on top", "BALLAST"],
  ["what should I charge for a bowl blank", "PRICETAG"],
  ["is the resin still good", "EXPIRY"],
  ["is my resin too old", "EXPIRY"],
  ["how thick should the lid be", "LIDLOAD"],
  ["still bubbling after an hour", "WATERBOILS"],
  ["wood won't take any resin", "SUITABILITY"],
  ["is osage worth doing", "SUITABILITY"],
  ["how much dye for three quarts", "DYE"],
  ["my second batch came out lighter", "DYETOPUP"],
  ["how many blanks fit in the pot", "PERLOAD"],
  ["is the middle cured", "CORETEMP"],
  ["still sticky after baking", "BAKE"],
  ["it started smoking in the oven", "SELFHEAT"],
  ["how long do I run the pump", "PUMPDOWN"],
  ["what do I need to buy for saturday", "SHOPPINGLIST"],
  ["split the bill between members", "SPLITCOST"],
  ["how much did it soak up", "WEIGHTGAIN", "FULLNESS", "UPTAKE"],
  ["oven runs cold", "OVENFIT"],
  ["how many quarts for this pot", "FILL"],
  ["we are at 7000 feet", "BAROMETER"],
  ["when can I take it out of the oven", "BAKE"],
  ["when to stop drying", "STOPWEIGHT"],
  ["how wet is my wood", "MOISTURE"],
  ["how long does it soak", "PLAN"],
  ["what does one pen blank cost me", "PIECECOST"],
  ["half a quarter teaspoon", "SPOONS"],
  ["old and new resin mixed together how long good", "OLDESTUSEBY"],
  ["how deep does the resin go", "FULLNESS"],
  ["how heavy a brick do I put on top", "BALLAST"],
  ["did the resin reach the middle", "FULLNESS"],
  ["resin is thick and gooey", "EXPIRY"],
  ["am I making money", "PRICETAG"],
  ["cherry burl any good", "SUITABILITY"],
  ["buckeye", "SUITABILITY", "GRAVITY"],
  ["cactus", "SUITABILITY"],
  ["sugar maple weight per cubic foot", "GRAVITY"],
  ["foam came up into the vacuum line", "HEADROOM"],
  ["is 25 inches of mercury enough", "AIROUT"],
  ["can I use a venturi off my compressor", "PUMPDOWN"],
  ["how many days will 200 blanks take", "PLAN"],
];

describe("a question finds its function", () => {
  const known = new Set<string>(catalogue.map(({ name }) => name));
  it.each(
    questions
      .map(([question, ...answers]) => ({ question, answers: answers.filter((name) => known.has(name)) }))
      .filter(({ answers }) => answers.length),
  )("$question", ({ question, answers }) => {
    const names = found(question)
      .hits.slice(0, 3)
      .map(({ name }) => name as string);
    expect({ names, meets: answers.some((name) => names.includes(name)) }).toEqual({ names, meets: true });
  });

  it("has at least sixty of them", () => expect(questions.length).toBeGreaterThanOrEqual(60));

  it("forgives a slip of the finger", () => expect(found("bakng").hits[0].name).toBe("BAKE"));

  it("offers the nearest where nothing fits, and nothing for words of no wood", () => {
    expect(found("zzzz qqqq").hits).toEqual([]);
    expect(found("ovne").near.length + found("ovne").hits.length).toBeGreaterThan(0);
  });

  it("has words for every function", () => expect(catalogue.filter(({ name }) => !asked[name]).map(({ name }) => name)).toEqual([]));
});
