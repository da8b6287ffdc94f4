export const ENTRIES_OF_DOSSIER: number;
export function madeWorkspace(entries: number): ReadonlyMap<string, string>;
export function writeWorkspace(folder: string, files: ReadonlyMap<string, string>): Promise<void>;
