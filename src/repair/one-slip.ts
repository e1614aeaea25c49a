/** A letter more, less, other, or two neighbours swapped. */
export function isOneSlip(one: string, other: string): boolean {
  let same = 0;
  while (same < one.length && same < other.length && one[same] === other[same]) same += 1;
  const [restOne, restOther] = [one.slice(same), other.slice(same)];
  if (restOne === '' && restOther === '') return false;
  if (restOne.length === restOther.length) return restOne.slice(1) === restOther.slice(1) || swapped(restOne, restOther);
  return restOne.slice(1) === restOther || restOne === restOther.slice(1);
}

const swapped = (one: string, other: string): boolean => one.length > 1 && one[0] === other[1] && one[1] === other[0] && one.slice(2) === other.slice(2);
