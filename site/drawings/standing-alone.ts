/** The colours of a drawing that stands alone: those of the light page. */
const ALONE: Readonly<Record<string, string>> = {
  '--ink': '#1f1c18',
  '--second': '#5d564d',
  '--paper': '#ffffff',
  '--hair': '#d8d2c6',
  '--tint': '#b9ae9c',
  '--accent': '#8a3b24',
  '--sans': '"Source Sans 3", "Liberation Sans", Arial, sans-serif',
};

/** A style sheet of drawings without the variables of the page. */
export function standingAlone(style: string): string {
  return style.replace(/var\((--\w+)\)/g, (_, name: string) => ALONE[name] ?? 'inherit');
}
