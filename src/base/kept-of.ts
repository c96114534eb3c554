/**
 * The same function, which works out once what it makes of a part or a list of the document, for as
 * long as that is the same object. What may still be changed in place is looked at anew each time.
 */
export function keptOf<T extends object, R>(make: (of: T) => R): (of: T) => R {
  const known = new WeakMap<T, R>();
  return (of) => {
    if (known.has(of)) return known.get(of) as R;
    const made = make(of);
    if (Object.isFrozen(of)) known.set(of, made);
    return made;
  };
}
