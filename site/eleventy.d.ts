declare module '@11ty/eleventy' {
  interface Configuration {
    setUseGitIgnore(use: boolean): void;
    setTemplateFormats(formats: readonly string[]): void;
    addGlobalData(name: string, value: unknown): void;
    addTemplate(
      path: string,
      template: {
        readonly data: Readonly<Record<string, unknown>>;
        readonly render: (data: { readonly path: string }) => string;
      },
    ): void;
  }
  export default class Eleventy {
    constructor(
      input: string,
      output: string,
      options: {
        readonly configPath: false;
        readonly loader: 'esm';
        readonly quietMode: boolean;
        readonly source: 'cli';
        readonly config: (configuration: Configuration) => void;
      },
    );
    disableLogger(): void;
    write(): Promise<unknown>;
  }
}
