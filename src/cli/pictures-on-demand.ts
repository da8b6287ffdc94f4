import { mkdir, stat } from 'node:fs/promises';
import path from 'node:path';
import type { MakePicture, PictureStore } from './picture-store.ts';

/** A picture that can be made. */
interface Promised {
  readonly key: string;
  readonly make: MakePicture;
}

/** Pictures of a preview: each is made when somebody looks at a page that shows it, and kept as long as it stays the same. */
export class PicturesOnDemand {
  readonly #folder: string;
  #promised: ReadonlyMap<string, Promised> = new Map();
  /** By address and key, so that two requests wait for one making. */
  readonly #made = new Map<string, Promise<string>>();

  /** @param folder a folder of its own */
  constructor(folder: string) {
    this.#folder = folder;
  }

  /** Takes in the pictures of a changed file in place of those of before; where that fails, these stay. */
  async replace<Told>(putAll: (store: PictureStore) => Promise<Told>): Promise<Told> {
    const fresh = new Map<string, Promised>();
    const told = await putAll({
      put: async (address, key, make) => {
        fresh.set(address, { key, make });
      },
    });
    this.#promised = fresh;
    return told;
  }

  /** The file at an address, made where it was not yet; null where no picture stands there. */
  async find(address: string): Promise<string | null> {
    const own = this.#promised.has(address) ? address : [...this.#promised.keys()].find((one) => isBelow(address, one));
    if (own === undefined) return null;
    const file = path.join(await this.#fileOf(own), path.relative(own, address));
    return (await stat(file).catch(() => null))?.isFile() ? file : null;
  }

  #fileOf(address: string): Promise<string> {
    const { key, make } = this.#promised.get(address) as Promised;
    const name = `${key} ${address}`;
    const known = this.#made.get(name);
    if (known) return known;
    const making = this.#make(path.join(this.#folder, key, address), make);
    this.#made.set(name, making);
    // What failed once, on a full disk say, is tried again when somebody looks again.
    making.catch(() => this.#made.delete(name));
    return making;
  }

  async #make(to: string, make: MakePicture): Promise<string> {
    await mkdir(path.dirname(to), { recursive: true });
    await make(to, (address) => this.#fileOf(address));
    return to;
  }
}

/** True for an address inside a folder of tiles. */
function isBelow(address: string, folder: string): boolean {
  return address.startsWith(`${folder}/`) && path.posix.normalize(address) === address;
}
