import { days, recent, toForget } from "../../../../sheet/page/kept/versions";

const hour = 3_600_000;
const dayOf = (moment: number) => String(Math.floor(moment / (24 * hour)));
const stays = (moments: readonly number[]) => {
  const gone = new Set(toForget(moments, dayOf));
  return moments.filter((moment) => !gone.has(moment)).sort((a, b) => b - a);
};

describe("versions that stay", () => {
  it("are the newest ten of one day", () => {
    const moments = Array.from({ length: 30 }, (_, i) => i * 1000);
    expect(stays(moments)).toEqual(moments.slice(-recent).reverse());
  });

  it("and the last of each day, for fourteen days", () => {
    const moments = Array.from({ length: 24 * 20 }, (_, i) => i * hour);
    const newest = moments.slice(-recent);
    const lasts = moments.filter((_, i) => i % 24 === 23).slice(-days);
    expect(stays(moments)).toEqual([...new Set([...newest, ...lasts])].sort((a, b) => b - a));
  });

  it("reach back over spells of work, however fast the last changes came", () => {
    const spell = 5 * 60_000;
    const moments = Array.from({ length: 8 }, (_, i) => [0, 1000, 2000].map((more) => i * spell + more)).flat();
    const fast = Array.from({ length: 30 }, (_, i) => 8 * spell + i * 1000);
    const lasts = Array.from({ length: 8 }, (_, i) => i * spell + 2000);
    expect(stays([...moments, ...fast])).toEqual([...fast.slice(-recent).reverse(), ...lasts.reverse()]);
  });

  it("count days on which something was kept, not those between", () => {
    const everyWeek = Array.from({ length: 40 }, (_, i) => i * 7 * 24 * hour);
    expect(stays(everyWeek)).toHaveLength(days);
  });

  it("are all of them while there are few, in whatever order they come", () => {
    expect(toForget([5, 1, 9], dayOf)).toEqual([]);
    const many = Array.from({ length: 12 }, (_, i) => i);
    expect(toForget(many, dayOf)).toEqual(toForget([...many].reverse(), dayOf));
  });
});
