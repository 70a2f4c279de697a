import { portOf } from "../../tool/port";

it.each([
  { args: [], variable: undefined, port: 3000 },
  { args: [], variable: "", port: 3000 },
  { args: [], variable: "4000", port: 4000 },
  { args: ["--port", "5000"], variable: "4000", port: 5000 },
  { args: ["--port=0"], variable: undefined, port: 0 },
])("$args with PORT=$variable is $port", ({ args, variable, port }) => expect(portOf(args, variable)).toBe(port));

it.each([
  { args: ["--port", "3000abc"], words: "--port takes a number from 0 to 65535: “3000abc” is none." },
  { args: ["--port"], words: "--port takes a number from 0 to 65535: “” is none." },
  { args: ["--port=70000"], words: "--port takes a number from 0 to 65535: “70000” is none." },
  { args: ["--port=-1"], words: "--port takes a number from 0 to 65535: “-1” is none." },
  { args: ["--port=3.5"], words: "--port takes a number from 0 to 65535: “3.5” is none." },
])("$args is refused in words", ({ args, words }) => expect(() => portOf(args, undefined)).toThrow(words));

it("refuses a PORT that is none", () => expect(() => portOf([], "web")).toThrow("PORT takes a number from 0 to 65535: “web” is none."));
