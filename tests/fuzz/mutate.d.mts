export function seeded(seed: number): () => number;
export function mutate(text: string, seed: number): string;
