import { respelled } from "../../sheet/quotes";

describe("text literals, spelt for the engine", () => {
  it.each([
    { typed: '="1 1/2"""', spelt: '=("1 1/2"&CHAR(34)&"")' },
    { typed: '=PORE.FILL(6,"5""",104)', spelt: '=PORE.FILL(6,("5"&CHAR(34)&""),104)' },
    { typed: '="say ""yes"""', spelt: '=("say "&CHAR(34)&"yes"&CHAR(34)&"")' },
    { typed: '="C:\\"', spelt: '=("C:"&CHAR(92)&"")' },
  ])("$typed becomes $spelt", ({ typed, spelt }) => expect(respelled(typed)).toBe(spelt));

  it.each(['=""', '="a"&"b"', '=\'a "" sheet\'!A1&"x"', '={"cover",0.5;"gap",0.1}'])("%s stays", (typed) =>
    expect(respelled(typed)).toBe(typed),
  );
});
