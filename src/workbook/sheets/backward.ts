import { type Formula, formula, given } from "../formula";
import type { Ref } from "../place";

/** Open hours, and attended work that must lie within them. All in built-in syntax: moments are days (serials). */
export interface Hours {
  readonly opens: Ref | Formula;
  readonly closes: Ref | Formula;
}

/** The hour of the day of a moment. */
const hour = (moment: Ref): Formula => formula`MOD(${moment},1)*24`;
/** The last moment not after a limit at which so many attended hours may end. */
export const endBy = (limit: Ref, hours: Ref, { opens, closes }: Hours): Formula =>
  given(
    [limit, hours],
    formula`IF(${hour(limit)}>${closes}+0.000001,INT(${limit})+${closes}/24,IF(${hour(limit)}-${hours}>=${opens}-0.000001,${limit},INT(${limit})-1+${closes}/24))`,
  );

/** The first moment not before a limit at which so many attended hours may begin. */
export const startFrom = (limit: Ref, hours: Ref, { opens, closes }: Hours): Formula =>
  given(
    [limit, hours],
    formula`IF(${hour(limit)}<${opens}-0.000001,INT(${limit})+${opens}/24,IF(${hour(limit)}+${hours}<=${closes}+0.000001,${limit},INT(${limit})+1+${opens}/24))`,
  );

/** So many hours after a moment, or before it. */
export const later = (moment: Ref, hours: Ref): Formula => given([moment, hours], formula`${moment}+${hours}/24`);
export const earlier = (moment: Ref, hours: Ref): Formula => given([moment, hours], formula`${moment}-${hours}/24`);

/** Closing time of the day before a moment. */
export const eveningBefore = (moment: Ref, { closes }: Hours): Formula => given([moment], formula`INT(${moment})-1+${closes}/24`);

/** When work that takes so many attended hours, over several days if need be, must begin to end at a closing time. */
export const spreadBack = (end: Ref, hours: Ref, { opens, closes }: Hours): Formula => {
  const full = formula`(ROUNDUP(${hours}/(${closes}-${opens}),0)-1)`;
  return given([end, hours], formula`${end}-${full}-(${hours}-${full}*(${closes}-${opens}))/24`);
};
