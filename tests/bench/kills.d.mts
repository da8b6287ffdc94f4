export function killBuilds(
  times: number,
  workspace?: { readonly from: string; readonly entry: string },
  say?: (text: string) => void,
): Promise<{
  readonly killed: number;
  readonly finished: number;
  readonly whole: number;
  readonly aside: number;
  readonly broken: number;
  readonly recovered: boolean;
  readonly left: readonly string[];
  readonly beside: readonly string[];
}>;
