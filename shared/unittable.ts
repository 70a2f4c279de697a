/** The units that may be typed, as data. Factors are exact by NIST SP 811 unless a comment says otherwise. */

const inch = 0.0254;
const gallon = 231 * inch ** 3;
const ounce = 0.028349523125;
const mmHg = 133.322387415;
const psi = (ounce * 16 * 9.80665) / inch ** 2;

export type UnitRow = readonly [name: string, factor: number, spellings?: string, shift?: number];

/** Each dimension's units. The first is the internal one; spellings are parted by "|" and matched without case, points or spaces. */
export const unitTable = {
  length: [
    ["m", 1, "meter|meters|metre|metres"],
    ["mm", 0.001, "millimeter|millimeters|millimetre|millimetres"],
    ["cm", 0.01, "centimeter|centimeters|centimetre|centimetres"],
    ["in", inch, "inch|inches|\"|''"],
    ["ft", inch * 12, "foot|feet|'"],
  ],
  volume: [
    ["m³", 1, "m3|m^3"],
    ["L", 0.001, "liter|liters|litre|litres|ltr"],
    ["mL", 1e-6, "milliliter|milliliters|millilitre|millilitres|cc"],
    ["cm³", 1e-6, "cm3|cm^3|cucm"],
    ["in³", inch ** 3, "in3|in^3|cuin|cubicinch|cubicinches"],
    ["ft³", (inch * 12) ** 3, "ft3|ft^3|cuft|cubicfoot|cubicfeet"],
    ["gal", gallon, "gallon|gallons|gals"],
    ["qt", gallon / 4, "quart|quarts|qts"],
    ["pt", gallon / 8, "pint|pints|pts"],
    ["cup", gallon / 16, "cups"],
    ["fl oz", gallon / 128, "floz|fluidounce|fluidounces"],
    ["tbsp", gallon / 256, "tbsps|tablespoon|tablespoons"],
    ["tsp", gallon / 768, "tsps|teaspoon|teaspoons"],
  ],
  area: [
    ["m²", 1, "m2"],
    ["cm²", 1e-4, "cm2"],
    ["in²", inch ** 2, "in2|sqin"],
    ["ft²", (inch * 12) ** 2, "ft2|sqft"],
  ],
  mass: [
    ["kg", 1, "kilo|kilos|kilogram|kilograms"],
    ["g", 0.001, "gram|grams|gm|gms"],
    ["oz", ounce, "ounce|ounces"],
    ["lb", ounce * 16, "lbs|pound|pounds"],
  ],
  temperature: [
    ["°C", 1, "c|degc|celsius|centigrade"],
    ["°F", 5 / 9, "f|degf|fahrenheit", -32],
    ["K", 1, "kelvin", -273.15],
  ],
  difference: [
    ["K", 1, "°c|c|degc|kelvin|celsius"],
    ["°F", 5 / 9, "f|degf|fahrenheit"],
  ],
  pressure: [
    ["Pa", 1, "pascal|pascals"],
    ["kPa", 1000, "kilopascal|kilopascals"],
    ["hPa", 100, "hectopascal|hectopascals"],
    ["mbar", 100, "millibar|millibars"],
    ["bar", 1e5, "bars"],
    ["atm", 101325],
    ["inHg", mmHg * 25.4, "inchhg|inchesofmercury"],
    ["mmHg", mmHg, "mmofmercury"],
    ["torr", 101325 / 760],
    ["psi", psi],
  ],
  flow: [
    ["m³/s", 1, "m3/s"],
    ["ft³/min", (inch * 12) ** 3 / 60, "cfm|ft3/min|cuft/min"],
    ["L/min", 0.001 / 60, "lpm|l/min"],
    ["m³/h", 1 / 3600, "m3/h|m3/hr"],
  ],
  time: [
    ["s", 1, "sec|secs|second|seconds"],
    ["min", 60, "mins|minute|minutes"],
    ["h", 3600, "hr|hrs|hour|hours"],
    ["day", 86400, "d|days"],
  ],
  months: [
    ["months", 1, "month|mo"],
    ["years", 12, "year|yr|yrs"],
  ],
  share: [
    ["", 1],
    ["%", 0.01, "percent|pct"],
  ],
  density: [
    ["kg/m³", 1, "kg/m3"],
    ["g/mL", 1000, "g/ml|g/cm3|g/cm³|g/cc|kg/l"],
    ["lb/ft³", (ounce * 16) / (inch * 12) ** 3, "lb/ft3|lb/cuft|pcf"],
    ["lb/gal", (ounce * 16) / gallon],
  ],
  leakage: [
    ["Pa/s", 1, "pa/sec|pascal/s"],
    ["inHg per min", (mmHg * 25.4) / 60, "inhg/min|inhgperminute"],
    ["kPa per min", 1000 / 60, "kpa/min|kpaperminute"],
    ["mbar per min", 100 / 60, "mbar/min|mbarperminute"],
  ],
  heat: [
    ["J/kg", 1, "joule/kg|joules/kg"],
    ["J/g", 1000, "joule/g|joules/g|kj/kg|joulespergram"],
  ],
  coefficient: [["W/m²K", 1, "w/m2k|w/(m2k)|w/(m²k)|w/m²·k"]],
  strength: [
    ["", 1],
    ["tsp per qt", 1 / 192, "tsp/qt|tspperquart|teaspoonperquart"],
    ["mL per L", 0.001, "ml/l|mlperl"],
    ["tsp per gal", 1 / 768, "tsp/gal"],
  ],
  number: [["", 1]],
} satisfies Record<string, readonly UnitRow[]>;

export type Dimension = keyof typeof unitTable;

/** Kinds of quantities: the dimension, and the unit of a plain number under US and under SI. */
export const kindTable = {
  length: ["length", "in", "mm"],
  film: ["length", "mm", "mm"],
  altitude: ["length", "ft", "m"],
  area: ["area", "in²", "cm²"],
  foil: ["area", "ft²", "m²"],
  volume: ["volume", "in³", "cm³"],
  fluid: ["volume", "qt", "L"],
  powder: ["volume", "tsp", "mL"],
  weight: ["mass", "oz", "g"],
  step: ["mass", "g", "g"],
  temperature: ["temperature", "°F", "°C"],
  rise: ["difference", "°F", "K"],
  pressure: ["pressure", "inHg", "kPa"],
  leakage: ["leakage", "inHg per min", "kPa per min"],
  heat: ["heat", "J/g", "J/g"],
  flow: ["flow", "ft³/min", "L/min"],
  minutes: ["time", "min", "min"],
  hours: ["time", "h", "h"],
  months: ["months", "months", "months"],
  share: ["share", "", ""],
  density: ["density", "g/mL", "g/mL"],
  coefficient: ["coefficient", "W/m²K", "W/m²K"],
  strength: ["strength", "tsp per qt", "mL per L"],
  gravity: ["number", "", ""],
  number: ["number", "", ""],
  count: ["number", "", ""],
  date: ["number", "", ""],
  money: ["number", "", ""],
} as const satisfies Record<string, readonly [Dimension, string, string]>;

export type Kind = keyof typeof kindTable;
export type System = "US" | "SI";
