/** True for equal plain data, with its properties in the same order. */
export function isSamePlainData(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  const others = Object.keys(other);
  if (keys.length !== others.length) return false;
  for (let at = 0; at < keys.length; at++) {
    const key = keys[at]!;
    if (key !== others[at]) return false;
    if (!isSamePlainData((one as Plain)[key], (other as Plain)[key])) return false;
  }
  return true;
}

type Plain = Readonly<Record<string, unknown>>;
