import type { OfficeJs } from "./officeJs";

/**
 * Has every property noticed that an object of the client does not have, whether it is read, called or set: by itself
 * JavaScript gives undefined, or takes the value and nothing comes of it.
 */
export function watchProperties({ OfficeExtension }: OfficeJs, complain: (about: string) => void): void {
  const known = OfficeExtension.ClientObject.prototype;
  // The last place where a property is looked for.
  let root = known;
  for (let next = root; next !== Object.prototype; next = Object.getPrototypeOf(next)) root = next;
  const complainOf = (name: string | symbol): void => {
    if (isOurs(name)) complain(`The client's objects have no ${String(name)}.`);
  };
  const last = new Proxy(Object.prototype, {
    get: (target, name, receiver) => (name in target ? Reflect.get(target, name, receiver) : complainOf(name)),
    set: (_, name, value, receiver) => {
      complainOf(name);
      return Reflect.defineProperty(receiver, name, { value, writable: true, enumerable: true, configurable: true });
    },
  });
  Object.setPrototypeOf(root, last);
}

/** Whether an adapter uses the name: the client keeps its own things under others, and any value is asked for `then`. */
const isOurs = (name: string | symbol): boolean => typeof name === "string" && !/^(_|m_|then$|toJSON$|\$)/.test(name);
