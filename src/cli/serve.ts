import { existsSync, watch } from 'node:fs';
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import path from 'node:path';
import { inRow, phrase } from '../base/said.ts';
import type { Sayer } from '../language/sayer.ts';
import { OLD_SENT_FOLDER } from '../model/sent-file.ts';
import { compute } from '../pipeline.ts';
import { audienceOf, folderOf, languageOf, type Options, type RunCommand } from './commands.ts';
import { type Effects, progressOf } from './effects.ts';
import { Fault } from './fault.ts';
import { countWords, formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { PreviewSite } from './preview-site.ts';
import { Session } from './session.ts';
import { answerTrace } from './trace-requests.ts';

export const serve: RunCommand = async (options, effects) => {
  const port = Number(options.flags.port ?? 8040);
  if (!Number.isInteger(port) || port < 0 || port > 65535)
    throw new Fault(phrase('"{0}" is no port. Write a number such as 8040.', String(options.flags.port)));
  const preview = await startPreview(options, effects, port);
  const stopped = new Promise<void>((resolve) => {
    process.once('SIGINT', resolve);
    process.once('SIGTERM', resolve);
  });
  effects.out(
    phrase('\nThe site is shown at  {0}\nOnly this computer can see it. Stop with Ctrl+C.\n', preview.address),
  );
  await stopped;
  preview.close();
  return 0;
};

/** A running preview. */
export interface Preview {
  readonly address: string;
  close(): void;
}

/** Builds, serves on loopback, and rebuilds on every change below `entries/`, deletions included. */
export async function startPreview(options: Options, effects: Effects, port: number): Promise<Preview> {
  const folder = folderOf(options, effects);
  const audience = audienceOf(options);
  const listeners = new Set<ServerResponse>();
  const site = await PreviewSite.open();
  const session = new Session();
  let fault: string | null = null;
  let shown = 0;
  const rebuild = async (): Promise<void> => {
    try {
      effects.progress?.({ what: phrase('Reading and computing') });
      const computed = compute(await loadWorkspace(folder, session), audience, {
        language: languageOf(options),
        languages: effects.languages,
        session,
      });
      const pages = await site.update({
        computed,
        folder,
        built: effects.today(),
        session,
        preview: true,
        ...progressOf(effects),
      });
      fault = null;
      shown += 1;
      const { errors } = computed;
      effects.out(
        inRow(
          [
            errors.length > 0
              ? formatProblems(effects.sayer, errors, 'text', computed.problems)
              : inRow([countWords(computed.problems), ' '], ''),
            shown === 1 ? phrase('{0} pages.', pages) : phrase('The change is shown.'),
            '\n',
          ],
          '',
        ),
      );
    } catch (error) {
      fault = (error as Error).message;
      if (shown > 0) effects.err(phrase('{0}\nThe last good site is still shown.\n', fault));
    }
    for (const listener of listeners) listener.write('data: changed\n\n');
  };
  // Watched from the first moment on: what is saved while the first site is made comes after it.
  const first = rebuild();
  const watcher = watchFolders([path.join(folder, 'entries'), path.join(folder, OLD_SENT_FOLDER)], rebuild, first);
  await first;
  if (fault !== null) {
    watcher.close();
    site.close();
    throw new Fault(fault);
  }
  const server = createServer((request, response) => {
    answer({ site, folder, listeners, sayer: effects.sayer, fault: () => fault }, request, response).catch(
      (error: Error) => {
        // One page that cannot be read never ends the preview.
        if (!response.headersSent) response.writeHead(500, { 'content-type': 'text/plain; charset=utf-8' });
        response.end(effects.sayer.words('This page could not be read: {0}', error.message));
      },
    );
  });
  const used = await listen(server, port);
  return {
    address: `http://127.0.0.1:${used}/`,
    close: () => {
      watcher.close();
      site.close();
      for (const listener of listeners) listener.end();
      server.close();
      server.closeAllConnections();
    },
  };
}

/** Listens on loopback; moves to the next port where one is taken (port 0: any free one). */
async function listen(server: Server, port: number): Promise<number> {
  for (let attempt = port; attempt < port + 20; attempt += 1) {
    const used = await new Promise<number | null>((resolve, reject) => {
      server.once('error', (error: NodeJS.ErrnoException) =>
        error.code === 'EADDRINUSE' ? resolve(null) : reject(error),
      );
      server.listen(attempt, '127.0.0.1', () => resolve((server.address() as { port: number }).port));
    });
    if (used !== null) return used;
    server.removeAllListeners('error');
  }
  throw new Fault(phrase('The ports {0} to {1} are all in use. Try another with --port.', port, port + 19));
}

/** How long a folder has to be at rest, in ms: an editor saves in two or three steps that follow at once. */
const REST_MS = 20;

/** Calls back, once changes have come to rest and `before` is over, when something in one of the folders changes; those that are not there are left out. */
function watchFolders(
  folders: readonly string[],
  changed: () => Promise<void>,
  before: Promise<void>,
): { close(): void } {
  let timer: NodeJS.Timeout | null = null;
  let running = before;
  const soon = (): void => {
    if (timer) clearTimeout(timer);
    timer = setTimeout(() => {
      running = running.then(changed);
    }, REST_MS);
  };
  const watchers = folders
    .filter((folder) => existsSync(folder))
    .map((folder) => watch(folder, { recursive: true }, soon));
  for (const watcher of watchers) watcher.on('error', () => soon());
  return {
    close: () => {
      if (timer) clearTimeout(timer);
      for (const watcher of watchers) watcher.close();
    },
  };
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.jpg': 'image/jpeg',
  '.woff2': 'font/woff2',
};

/** The script of every page of a preview: loads it anew after a change, but never over what somebody has not saved. */
function reloadScript({ words }: Sayer): string {
  return `const source = new EventSource('/_preview/changes');
source.onmessage = () => {
  if (!('unsaved' in document.documentElement.dataset)) return location.reload();
  if (document.querySelector('.changed-meanwhile')) return;
  const box = document.createElement('aside');
  box.className = 'banner changed-meanwhile';
  box.setAttribute('role', 'status');
  box.textContent = ${JSON.stringify(words('The file has changed. This page holds what is not saved, so it is not loaded anew; load it yourself once it is saved.'))};
  document.querySelector('main')?.before(box);
};
fetch('/_preview/fault').then((answer) => answer.text()).then((fault) => {
  if (fault === '') return;
  const box = document.createElement('aside');
  box.className = 'banner';
  box.setAttribute('role', 'alert');
  box.textContent = fault;
  document.querySelector('main')?.before(box);
});
`;
}

interface Shown {
  readonly site: PreviewSite;
  readonly folder: string;
  readonly listeners: Set<ServerResponse>;
  readonly sayer: Sayer;
  fault(): string | null;
}

async function answer(
  { site, folder, listeners, sayer, fault }: Shown,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const send = (status: number, type: string, body: string | Buffer): void => {
    response.writeHead(status, {
      'content-type': type,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
      'x-frame-options': 'DENY',
    });
    response.end(request.method === 'HEAD' ? undefined : body);
  };
  const faultWords = (): string => {
    const words = fault();
    return words === null ? '' : sayer.words('The last build failed, so this is the last good site. {0}', words);
  };
  const host = (request.headers.host ?? '').replace(/:\d+$/, '');
  if (host !== '127.0.0.1' && host !== 'localhost')
    return send(403, 'text/plain', sayer.words('This preview answers to this computer only.'));
  const address = decodeAddress(request.url ?? '/');
  if (address === '/_preview/changes') {
    response.writeHead(200, { 'content-type': 'text/event-stream', 'cache-control': 'no-store' });
    listeners.add(response);
    request.on('close', () => listeners.delete(response));
    return;
  }
  if (address === '/_preview/trace') {
    const { status, body } = await answerTrace(sayer, folder, request);
    return send(status, TYPES['.json'] as string, JSON.stringify(body));
  }
  if (address === '/_preview/fault') return send(200, 'text/plain; charset=utf-8', faultWords());
  if (address === '/_preview/reload.js') return send(200, TYPES['.js'] as string, reloadScript(sayer));
  const wanted = address.endsWith('/') ? `${address}index.html` : address;
  const page = await site.find(wanted.slice(1));
  if (page === null) {
    return send(404, TYPES['.html'] as string, withReload(notFoundPage(sayer)));
  }
  const type =
    TYPES[path.extname(address)] ?? (address.endsWith('/') ? (TYPES['.html'] as string) : 'application/octet-stream');
  return send(200, type, type.startsWith('text/html') ? withReload(page.toString()) : page);
}

function notFoundPage({ words, language }: Sayer): string {
  const [title, text, link] = [
    words('Not found'),
    words('There is no such page in this site.'),
    words('The opening page'),
  ];
  return `<!doctype html><html lang="${language.tag}"><head><title>${title}</title></head><body><main><p>${text} <a href="/">${link}</a></p></main></body></html>`;
}

function withReload(html: string): string {
  return html.replace('</head>', '<script src="/_preview/reload.js" defer></script></head>');
}

function decodeAddress(url: string): string {
  try {
    return decodeURIComponent(url.split('?')[0] as string);
  } catch {
    return '/';
  }
}
