/**
 * The same object, made when somebody first looks at it. The worker's start would otherwise make some twelve hundred shapes, of
 * which a request reads a few. Calling it does nothing by itself, so that the app's bundler leaves out what no page uses.
 */
/* @__NO_SIDE_EFFECTS__ */
export function later<T extends object>(make: () => T): T {
  let made: T | undefined;
  const real = (): T => {
    made ??= make();
    return made;
  };
  return new Proxy({} as T, {
    get: (_, name) => Reflect.get(real(), name),
    set: (_, name, value) => Reflect.set(real(), name, value),
    has: (_, name) => Reflect.has(real(), name),
    getPrototypeOf: () => Reflect.getPrototypeOf(real()),
    ownKeys: () => Reflect.ownKeys(real()),
    getOwnPropertyDescriptor: (_, name) => {
      const found = Reflect.getOwnPropertyDescriptor(real(), name);
      // of an object that is not the real one nothing may be called fixed
      return found && { ...found, configurable: true };
    },
  });
}
