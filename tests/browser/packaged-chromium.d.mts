export const FLAGS: string[];
export function packagedChromium(): Promise<{
  readonly executablePath: string;
  readonly env: Record<string, string>;
}>;
